// The rules for all lengths: when two are equal, how they round to a step, how many pieces a length gives, and when a strip is too
// narrow. units.ts has units and their words, geometry/stripSet.ts sewn strips.
import type { Inches } from './units';

/** Lengths that differ by no more than this are equal; adding and halving fractions leaves such differences. */
export const HAIR: Inches = 1e-9;

/** A length that is off a step by no more than this share of the step counts as on it. */
const PART_OF_STEP = 1e-6;

/** Rounds up to a whole step, inches; a length on a step stays there. */
export function upToStep(inches: Inches, step: Inches): Inches {
  return Math.ceil(inches / step - PART_OF_STEP) * step;
}

/** Rounds down to a whole step, inches; a length on a step stays there. */
export function downToStep(inches: Inches, step: Inches): Inches {
  return Math.floor(inches / step + PART_OF_STEP) * step;
}

/** How many pieces of a size above 0 a length gives; below 0 for a length below 0. */
export function piecesIn(length: Inches, size: Inches): number {
  return Math.floor((length + HAIR) / size);
}

/** Pieces that reach over a run when each join takes `loss`, less than the piece: n·length − (n − 1)·loss ≥ run. */
export function joinedPieces(run: Inches, length: Inches, loss: Inches): number {
  return run <= length + HAIR ? 1 : Math.ceil((run - loss) / (length - loss) - HAIR);
}

/** Whether a strip or piece cut so wide vanishes in its two seams: w ≤ 2s. */
export function isTooNarrow(width: Inches, seam: Inches): boolean {
  return width <= 2 * seam + HAIR;
}
