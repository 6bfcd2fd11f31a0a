// Arrows over a set: the direction in which each seam is pressed, and the end from which it is sewn (left and right in turn).
import { seamOrder } from '../../../cutting/sets/seamOrder';
import type { StripSet } from '../../../model/project';
import type { Inches } from '../../../model/units';

export function SewingArrows({ set, seam }: { set: StripSet; seam: Inches }) {
  const seams = seamOrder(set, seam);
  const middle = [0.34, 0.66].map((part) => part * set.length);
  const pressing = seams.flatMap(({ at, pressed }) =>
    middle.map((x) => arrowHead(x, at, 0, pressed === 'up' ? -1 : 1)),
  );
  const sewing = seams.map(({ at, from }) => {
    const way = from === 'left' ? 1 : -1;
    const start = from === 'left' ? 0.5 : set.length - 0.5;
    return `M${start} ${at}h${way * 3.4}${arrowHead(start + way * 4, at, way, 0)}`;
  });
  const d = [...pressing, ...sewing].join('');
  return (
    <g
      className="set-arrows"
      data-sewing={seams.map(({ from }) => from).join(' ')}
      data-pressed={seams[0]?.pressed}
    >
      <path d={d} className="set-arrows-edge" />
      <path d={d} className="set-arrows-heart" />
    </g>
  );
}

/** The path of a small triangle; its point lies at (x, y), moved on by the triangle's length in the given direction. */
function arrowHead(x: Inches, y: Inches, across: -1 | 0 | 1, down: -1 | 0 | 1): string {
  const long = 0.4;
  const half = 0.3;
  if (down !== 0) return `M${x - half} ${y}l${half} ${down * long}l${half} ${-down * long}z`;
  return `M${x} ${y}l${-across * long} ${-half}v${2 * half}z`;
}
