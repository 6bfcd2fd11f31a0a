// Over a set: which way each seam is pressed, and from which end it is sewn (from left and right in turn).
import { stripPlaces } from '../../../geometry/stripSet';
import type { StripSet } from '../../../model/project';
import type { Inches } from '../../../model/units';

export function SewingArrows({ set, seam }: { set: StripSet; seam: Inches }) {
  const seams = stripPlaces(set.strips, seam).slice(1);
  const up = set.pressing === 'last';
  const middle = [0.34, 0.66].map((part) => part * set.length);
  const pressing = seams.flatMap(({ bottom }) => middle.map((x) => arrowHead(x, bottom, 0, up ? -1 : 1)));
  const sewing = seams.map(({ bottom }, index) => {
    const fromLeft = index % 2 === 0;
    const way = fromLeft ? 1 : -1;
    const start = fromLeft ? 0.5 : set.length - 0.5;
    return `M${start} ${bottom}h${way * 3.4}${arrowHead(start + way * 4, bottom, way, 0)}`;
  });
  const d = [...pressing, ...sewing].join('');
  return (
    <g className="set-arrows">
      <path d={d} className="set-arrows-edge" />
      <path d={d} className="set-arrows-heart" />
    </g>
  );
}

/** A small filled triangle with its point at (x, y) moved on by its length in the direction given. */
function arrowHead(x: Inches, y: Inches, across: -1 | 0 | 1, down: -1 | 0 | 1): string {
  const long = 0.4;
  const half = 0.3;
  if (down !== 0) return `M${x - half} ${y}l${half} ${down * long}l${half} ${-down * long}z`;
  return `M${x} ${y}l${-across * long} ${-half}v${2 * half}z`;
}
