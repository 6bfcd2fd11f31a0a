// Cutting a convex outline off at the edges of a rectangle (Sutherland and Hodgman, 'Reentrant polygon clipping', 1974).
import type { Inches } from '../model/units';
import type { Outline, Point } from './point';

/** What of a convex outline lies inside the rectangle from 0, 0; empty where nothing does. Keeps its direction. */
export function clippedTo(outline: Outline, width: Inches, height: Inches): Outline {
  const inside: ((point: Point) => number)[] = [
    (point) => point.x,
    (point) => width - point.x,
    (point) => point.y,
    (point) => height - point.y,
  ];
  return inside.reduce<Outline>(clippedBy, outline);
}

/** Keeps the part where `depth` is not below 0; points within a billionth of the edge count as on it. */
function clippedBy(outline: Outline, depth: (point: Point) => number): Outline {
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
