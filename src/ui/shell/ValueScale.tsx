// A ten-step value scale, dark to light, with a mark at each fabric of the top and a larger one at the fabric pointed at. In three tones it
// has three steps, which end where those of the quilt do.
import { greyOf, TONE_GREYS, type ToneLimits } from '../../colour/tone';
import type { FabricShare } from '../../drawing/shares';
import type { FabricId } from '../../model/project';
import { useTones } from '../seeing/SeeingFilter';

const STEPS = 10;
const WIDTH = 200;
const at = (value: number) => (Math.max(0, Math.min(100, value)) / 100) * WIDTH;

interface Step {
  readonly from: number;
  readonly to: number;
  readonly grey: string;
}

const TEN: readonly Step[] = Array.from({ length: STEPS }, (_, step) => ({
  from: (step * 100) / STEPS,
  to: ((step + 1) * 100) / STEPS,
  grey: greyOf((step * 100) / (STEPS - 1)),
}));

function threeSteps({ medium, light }: ToneLimits): readonly Step[] {
  return [
    { from: 0, to: medium, grey: TONE_GREYS.dark },
    { from: medium, to: light, grey: TONE_GREYS.medium },
    { from: light, to: 100, grey: TONE_GREYS.light },
  ];
}

interface Props {
  shares: readonly FabricShare[];
  lit: FabricId | null;
}

/** The scale in three tones; apart, because only for it the top has to be measured. */
export function ToneScale(props: Props) {
  const tones = useTones();
  return <Scale {...props} steps={tones ? threeSteps(tones.limits) : TEN} />;
}

export function ValueScale(props: Props) {
  return <Scale {...props} steps={TEN} />;
}

function Scale({ shares, lit, steps }: Props & { steps: readonly Step[] }) {
  return (
    <svg className="value-scale" width={WIDTH + 2} height={18} viewBox={`-1 0 ${WIDTH + 2} 18`} aria-hidden>
      {steps.map(({ from, to, grey }) => (
        <rect key={grey} x={at(from)} y={9} width={at(to) - at(from)} height={8} fill={grey} />
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
