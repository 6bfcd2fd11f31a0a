// Adds seam allowances: the cut outline of a piece from its finished outline, and sizes with their seams.
import type { Inches } from '../model/units';
import type { Outline, Point } from './point';

/**
 * The outline moved outwards by `seam` on every side, corners mitred. The outline may run either way round and may be
 * concave; repeated points are left out. Plane geometry: a corner moves by s(n1 + n2)/(1 + n1·n2), where n1 and n2 are the
 * outward normals of its sides.
 */
export function cutOutline(outline: Outline, seam: Inches): Outline {
  const way = Math.sign(signedArea(outline));
  const corners = outline.filter((point, at) => {
    const before = outline.at(at - 1)!;
    return Math.hypot(point.x - before.x, point.y - before.y) > 1e-9;
  });
  return corners.map((point, at) => {
    const before = along(corners.at(at - 1)!, point);
    const after = along(point, corners[(at + 1) % corners.length]!);
    const sum = { x: (before.y + after.y) * way, y: -(before.x + after.x) * way };
    const part = seam / (1 + before.x * after.x + before.y * after.y);
    return { x: point.x + sum.x * part, y: point.y + sum.y * part };
  });
}

/** The unfinished size of a piece of this finished size: one seam more on every side, inches. */
export function sizeWithSeams(
  { width, height }: { readonly width: Inches; readonly height: Inches },
  seam: Inches,
): { width: Inches; height: Inches } {
  return { width: width + 2 * seam, height: height + 2 * seam };
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
