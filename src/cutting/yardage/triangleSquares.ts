// Squares that are cut into triangles, as every step, list and template gives them: what is needed, rounded up to a step of
// the ruler and never below the need. And the least rectangle any piece with seams is cut from. Plane geometry, seams s on
// every side.
import { cutOutline } from '../../geometry/allowance';
import { cornerLeg } from '../../geometry/block';
import { extentAlong } from '../../geometry/point';
import type { SettingPart, SettingPiece } from '../../geometry/settingPiece';
import { finishedBlock } from '../../geometry/wedge';
import { USUAL, upToStep } from '../../model/lengths';
import type { WedgePlan } from '../../model/project';
import type { Inches, LengthUnit } from '../../model/units';
import { squareOnRuler } from './neededPiece';

/** What a square to halve needs for two right triangles of this finished leg: leg + s(2 + √2). */
function halvedNeed(leg: Inches, seam: Inches): Inches {
  return leg + seam * (2 + Math.SQRT2);
}

/** Square to halve for two right triangles of this finished leg. */
export function halvedSquare(leg: Inches, seam: Inches, unit: LengthUnit): Inches {
  return charted(leg, halvedNeed(0, seam), unit);
}

/** Square to cut twice for four right triangles with this finished long side: side + s(2 + 2√2). */
export function quarteredSquare(longSide: Inches, seam: Inches, unit: LengthUnit): Inches {
  return charted(longSide, seam * (2 + 2 * Math.SQRT2), unit);
}

/** Charts take √2 as 1.414; what that leaves out of a 20" block is no reason to cut an eighth more. */
const OVERLOOKED: Inches = 0.005;

/** As the charts do it the allowance is rounded up first (to 7/8 and 1 1/4 with a 1/4" seam), which is the ease. */
function charted(side: Inches, allowance: Inches, unit: LengthUnit): Inches {
  const eased = squareOnRuler(side + squareOnRuler(allowance, unit) - OVERLOOKED, unit);
  return Math.max(eased, squareOnRuler(side + allowance, unit));
}

/** Parts of an on-point setting that are triangles. */
export type SettingTriangle = Extract<SettingPart, 'side' | 'setting-corner'>;

/** Square for setting triangles: cut twice for sides, halved for corners. `length` is finished, along the edge of the top. */
export function settingSquare(part: SettingTriangle, length: Inches, seam: Inches, unit: LengthUnit): Inches {
  return part === 'side' ? quarteredSquare(length, seam, unit) : halvedSquare(length, seam, unit);
}

/** Squares for the triangles round this block on point: a side is as long as the block's diagonal, a corner half of that. */
export function settingSquares(wedge: WedgePlan, unit: LengthUnit): { side: Inches; corner: Inches } {
  const diagonal = Math.SQRT2 * finishedBlock(wedge).width;
  return {
    side: settingSquare('side', diagonal, wedge.outerSeam, unit),
    corner: settingSquare('setting-corner', diagonal / 2, wedge.outerSeam, unit),
  };
}

export interface CornerSquare {
  /** Finished leg of the corner triangle. */
  readonly leg: Inches;
  /** What is needed, rounded up to the ruler: no ease but that. */
  readonly fits: Inches;
  /** At least half an inch (1 cm) larger, to the next half inch (1 cm), trimmed after sewing (common practice, no source). */
  readonly comfortable: Inches;
}

/** The square that is halved for two corner triangles of an octagon's block (N = 8). */
export function cornerSquare(wedge: WedgePlan, unit: LengthUnit): CornerSquare {
  const leg = cornerLeg(wedge);
  const need = halvedNeed(leg, wedge.outerSeam);
  return {
    leg,
    fits: squareOnRuler(need, unit),
    comfortable: upToStep(need + USUAL[unit].comfort.room, USUAL[unit].comfort.step),
  };
}

/** Length along the grain and width across it of a piece with its seams on. */
export function withSeams(
  { outline, grain }: Pick<SettingPiece, 'outline' | 'grain'>,
  seam: Inches,
): { length: Inches; width: Inches } {
  return extentAlong(cutOutline(outline, seam), grain);
}
