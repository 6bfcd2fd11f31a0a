// Squares that are cut into the setting triangles of an on-point top: quartered for the sides, halved for the corners, so
// that the edge of the top lies along the cloth.
import type { WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import { finishedBlock } from './wedge';

export interface SettingSquares {
  /** Quartered on both diagonals: four side triangles. */
  readonly side: Inches;
  /** Halved on one diagonal: two corner triangles. */
  readonly corner: Inches;
  /** A plain square between the blocks. */
  readonly plain: Inches;
}

/**
 * Cut sizes for the square block of the wedge plan, rounded up to eighths. Allowances follow from the seam: so (2 + 2√2)
 * for the sides and so (2 + √2) for the corners (plane geometry), which with 1/4 makes the usual 1 1/4 and 7/8.
 */
export function settingSquares(wedge: WedgePlan): SettingSquares {
  const block = finishedBlock(wedge).width;
  return { ...trianglesFor(block, wedge.outerSeam), plain: block + 2 * wedge.outerSeam };
}

/** The same for any finished block, inches. */
export function trianglesFor(block: Inches, seam: Inches): { side: Inches; corner: Inches } {
  return {
    side: upToEighth(Math.SQRT2 * block + upToEighth(seam * (2 + 2 * Math.SQRT2))),
    corner: upToEighth(Math.SQRT1_2 * block + upToEighth(seam * (2 + Math.SQRT2))),
  };
}

/** A fourhundredth over an eighth is let go: rounding the allowances up has already left more than that to spare. */
function upToEighth(inches: Inches): Inches {
  return Math.ceil((inches - 1 / 400) * 8) / 8;
}
