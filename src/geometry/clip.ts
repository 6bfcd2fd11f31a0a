// Clips a convex outline to a rectangle (Sutherland and Hodgman, 'Reentrant polygon clipping', 1974).
import type { Inches } from '../model/units';
import type { Outline, Point } from './point';

/** The part of a convex outline inside the rectangle from (0, 0) to (width, height), in the same direction; empty for none. */
export function clippedTo(outline: Outline, width: Inches, height: Inches): Outline {
  const inside: ((point: Point) => number)[] = [
    (point) => point.x,
    (point) => width - point.x,
    (point) => point.y,
    (point) => height - point.y,
  ];
  return inside.reduce<Outline>(clippedBy, outline);
}

/** The part of the outline where `depth` is at least 0; points within 1e-9 of the edge count as on it. */
function clippedBy(outline: Outline, depth: (point: Point) => number): Outline {
  if (outline.every((point) => snapped(depth(point)) >= 0)) return outline;
  return outline.flatMap((point, at) => {
    const next = outline[(at + 1) % outline.length]!;
    const here = snapped(depth(point));
    const there = snapped(depth(next));
    const kept = here >= 0 ? [point] : [];
    if (here * there >= 0) return kept;
    const part = here / (here - there);
    return [...kept, { x: point.x + part * (next.x - point.x), y: point.y + part * (next.y - point.y) }];
  });
}

function snapped(depth: number): number {
  return Math.abs(depth) < 1e-9 ? 0 : depth;
}
