// Squares for triangles, and the least rectangle a piece with seams is cut from. Plane geometry, seams s on every side;
// makers round the allowance itself up to an eighth (7/8 and 1 1/4 with a 1/4" seam).
import type { Point } from '../../geometry/point';
import type { SettingPiece } from '../../geometry/settingPiece';
import type { Inches, LengthUnit } from '../../model/units';
import { squareOnRuler } from './neededPiece';

/** Square to halve for two right triangles of this finished leg: leg + s(2 + √2). */
export function halvedSquare(leg: Inches, seam: Inches, unit: LengthUnit): Inches {
  return withAllowance(leg, seam * (2 + Math.SQRT2), unit);
}

/** Square to cut twice for four right triangles with this finished long side: side + s(2 + 2√2). */
export function quarteredSquare(longSide: Inches, seam: Inches, unit: LengthUnit): Inches {
  return withAllowance(longSide, seam * (2 + 2 * Math.SQRT2), unit);
}

/** Charts take √2 as 1.414; what that leaves out of a 20" block is no reason to cut an eighth more. */
const OVERLOOKED: Inches = 0.005;

/** Never less than side and allowance; the allowance is rounded up before, as the charts do it. */
function withAllowance(side: Inches, allowance: Inches, unit: LengthUnit): Inches {
  const charted = squareOnRuler(side + squareOnRuler(allowance, unit) - OVERLOOKED, unit);
  return Math.max(charted, squareOnRuler(side + allowance, unit));
}

/** Length along the grain and width across it of a convex piece with its seams on. */
export function withSeams(piece: SettingPiece, seam: Inches): { length: Inches; width: Inches } {
  const angle = (piece.grain * Math.PI) / 180;
  const outer = outset(piece.outline, seam);
  const along = outer.map(({ x, y }) => x * Math.cos(angle) + y * Math.sin(angle));
  const across = outer.map(({ x, y }) => y * Math.cos(angle) - x * Math.sin(angle));
  return {
    length: Math.max(...along) - Math.min(...along),
    width: Math.max(...across) - Math.min(...across),
  };
}

/** Corners of a convex outline a seam further out: each moves by s(n1 + n2)/(1 + n1·n2), n the outward normals of its sides. */
function outset(outline: readonly Point[], seam: Inches): Point[] {
  const corners = outline.filter((point, index) => {
    const before = outline.at(index - 1)!;
    return Math.hypot(point.x - before.x, point.y - before.y) > 1e-9;
  });
  return corners.map((corner, index) => {
    const one = normal(corners.at(index - 1)!, corner);
    const other = normal(corner, corners[(index + 1) % corners.length]!);
    const reach = seam / (1 + one.x * other.x + one.y * other.y);
    return { x: corner.x + (one.x + other.x) * reach, y: corner.y + (one.y + other.y) * reach };
  });
}

/** Normal of a side, outward because outlines run clockwise on screen. */
function normal(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.y - from.y) / length, y: -(to.x - from.x) / length };
}
