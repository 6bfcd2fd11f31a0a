// Squares for triangles, and the least rectangle a piece with seams is cut from. Plane geometry, seams s on every side;
// makers round the allowance itself up to an eighth (7/8 and 1 1/4 with a 1/4" seam).
import { cutOutline } from '../../geometry/allowance';
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
  const outer = cutOutline(piece.outline, seam);
  const along = outer.map(({ x, y }) => x * Math.cos(angle) + y * Math.sin(angle));
  const across = outer.map(({ x, y }) => y * Math.cos(angle) - x * Math.sin(angle));
  return {
    length: Math.max(...along) - Math.min(...along),
    width: Math.max(...across) - Math.min(...across),
  };
}
