// Marks on the wall: a light and dark line along each seam that clashes, wider for a longer clash; a chalk outline round a pool of
// value. SpotMarks.tsx has those that only come for a row of a list.

import { type CSSProperties, memo } from 'react';
import type { Mark } from '../../../balance/finding';
import { outlinePoints } from '../../../drawing/number';

/** Width of a seam mark for a clash of this length, inches. */
function weight(inches: number): number {
  return Math.min(0.34, 0.14 + inches * 0.03);
}

/**
 * A width of so many inches, but so many pixels of the screen at least: a mark of a large wall on a phone can still be seen. `--px` is
 * the inches of a pixel (WallView); a picture that does not say so has its marks as wide as they are.
 */
function atLeast(inches: number, pixels: number): CSSProperties {
  return { strokeWidth: `max(${inches}px, calc(var(--px, 0) * ${pixels}px))` };
}

export const SeamMarks = memo(function SeamMarks({
  marks,
  strong,
}: {
  marks: readonly Mark[];
  strong: boolean;
}) {
  const seams = marks.flatMap((mark) => (mark.kind === 'seam' ? [mark] : []));
  if (seams.length === 0) return null;
  return (
    <g className={strong ? 'mark strong' : 'mark'} aria-hidden>
      {seams.map(({ from, to, inches }) => {
        const line = { x1: from.x, y1: from.y, x2: to.x, y2: to.y };
        const wide = weight(inches) * (strong ? 1.6 : 1);
        return (
          <g key={`${from.x} ${from.y} ${to.x} ${to.y}`} strokeLinecap="butt">
            <line {...line} stroke="#000" style={atLeast(wide + 0.16, strong ? 7 : 5)} />
            <line {...line} stroke="#fff" style={atLeast(wide, strong ? 5 : 3)} />
            <line
              {...line}
              stroke="#000"
              style={atLeast(wide * 0.34, 1)}
              strokeDasharray={`${wide * 1.2} ${wide * 1.5}`}
            />
          </g>
        );
      })}
    </g>
  );
});

export const PoolMarks = memo(function PoolMarks({
  marks,
  strong,
}: {
  marks: readonly Mark[];
  strong: boolean;
}) {
  const pools = marks.flatMap((mark) => (mark.kind === 'pool' ? [mark] : []));
  if (pools.length === 0) return null;
  return (
    <g className={strong ? 'mark strong' : 'mark'} aria-hidden>
      {pools.map(({ outline }) => {
        const points = outlinePoints(outline);
        return (
          <g key={points} fill="none" strokeLinejoin="round" strokeLinecap="round">
            <polygon
              points={points}
              stroke="#000"
              strokeOpacity={0.45}
              style={atLeast(strong ? 0.5 : 0.3, strong ? 5 : 4)}
            />
            <polygon
              points={points}
              stroke="#fff"
              style={atLeast(strong ? 0.36 : 0.2, strong ? 3 : 2)}
              strokeDasharray={strong ? '0.01 0.52' : '0.01 0.4'}
            />
          </g>
        );
      })}
    </g>
  );
});
