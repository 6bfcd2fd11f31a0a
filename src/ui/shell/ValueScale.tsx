// A ten-step value scale, dark to light, with a mark at each fabric of the top and a larger one at the fabric pointed at.
import { greyOfValue } from '../../colour/grey';
import type { FabricShare } from '../../drawing/shares';
import type { FabricId } from '../../model/project';

const STEPS = 10;
const WIDTH = 200;
const greys = Array.from({ length: STEPS }, (_, step) => greyOfValue((100 * step) / (STEPS - 1)));
const at = (value: number) => (value / 100) * WIDTH;

export function ValueScale({ shares, lit }: { shares: readonly FabricShare[]; lit: FabricId | null }) {
  return (
    <svg className="value-scale" width={WIDTH + 2} height={18} viewBox={`-1 0 ${WIDTH + 2} 18`} aria-hidden>
      {greys.map((grey, step) => (
        <rect key={grey} x={at((step * 100) / STEPS)} y={9} width={WIDTH / STEPS} height={8} fill={grey} />
      ))}
      <rect x={0} y={9} width={WIDTH} height={8} fill="none" stroke="currentColor" strokeWidth={0.6} />
      {shares.map(({ fabric, value }) => (
        <line key={fabric.id} x1={at(value)} x2={at(value)} y1={4} y2={8} stroke="currentColor" />
      ))}
      {shares
        .filter(({ fabric }) => fabric.id === lit)
        .map(({ fabric, value }) => (
          <path key={fabric.id} d={`M${at(value) - 4} 0h8l-4 8z`} fill="currentColor" />
        ))}
    </svg>
  );
}
