// A piece as it is cut: its finished outline with the seam allowance all round, mitred at the corners.
import type { Inches } from '../model/units';
import type { Outline, Point } from './point';

/**
 * The outline moved outwards by `seam` on every side, corners mitred. The outline runs either way round and may bend inwards;
 * it has no side of no length. Plane geometry: at a corner the new point lies seam / cos(turn / 2) out along the bisector.
 */
export function cutOutline(outline: Outline, seam: Inches): Outline {
  const way = Math.sign(signedArea(outline));
  return outline.map((point, at) => {
    const before = along(outline.at(at - 1)!, point);
    const after = along(point, outline[(at + 1) % outline.length]!);
    // Outward normals of both sides; their sum points along the bisector.
    const sum = { x: (before.y + after.y) * way, y: -(before.x + after.x) * way };
    const part = seam / (1 + before.x * after.x + before.y * after.y);
    return { x: point.x + sum.x * part, y: point.y + sum.y * part };
  });
}

/** Lengths of the sides of an outline, in order, inches. */
export function sideLengths(outline: Outline): Inches[] {
  return outline.map((point, at) => {
    const next = outline[(at + 1) % outline.length]!;
    return Math.hypot(next.x - point.x, next.y - point.y);
  });
}

function along(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

function signedArea(outline: Outline): number {
  return outline.reduce((sum, point, at) => {
    const next = outline[(at + 1) % outline.length]!;
    return sum + (point.x * next.y - next.x * point.y) / 2;
  }, 0);
}
