// Rules for all lengths: when two are the same, rounding to a step, how many pieces a length gives, and when a strip is too
// narrow. units.ts owns units and their words, geometry/stripSet.ts the sewn strips.
import type { Inches } from './units';

/** Lengths that differ by no more than this are equal: adding and halving fractions leaves rounding errors of this order. */
export const HAIR: Inches = 1e-9;

/** A length that misses a step by no more than this part of the step counts as on it. */
const PART_OF_STEP = 1e-6;

/** The length rounded up to a whole step, inches; a length on a step does not change. */
export function upToStep(inches: Inches, step: Inches): Inches {
  return Math.ceil(inches / step - PART_OF_STEP) * step;
}

/** The length rounded down to a whole step, inches; a length on a step does not change. */
export function downToStep(inches: Inches, step: Inches): Inches {
  return Math.floor(inches / step + PART_OF_STEP) * step;
}

/** How many pieces of `size` (above 0) a length gives; negative for a negative length. */
export function piecesIn(length: Inches, size: Inches): number {
  return Math.floor((length + HAIR) / size);
}

/** The least n with n·length − (n − 1)·loss ≥ run: pieces that span a run when each join takes `loss` (less than `length`). */
export function joinedPieces(run: Inches, length: Inches, loss: Inches): number {
  return run <= length + HAIR ? 1 : Math.ceil((run - loss) / (length - loss) - HAIR);
}

/** Whether a strip or piece of this cut width vanishes in its two seams: w ≤ 2s. */
export function isTooNarrow(width: Inches, seam: Inches): boolean {
  return width <= 2 * seam + HAIR;
}

/** The least finished width of a piece in a pieced border: strips are cut in 64ths. */
const LEAST_SHOWN: Inches = 1 / 64;

/** The least cut width of a piece in a pieced border sewn with this seam. */
export function leastKeyWidth(seam: Inches): Inches {
  return 2 * seam + LEAST_SHOWN;
}

/** Whether a piece of this cut width is too narrow for a pieced border: less than 1/64" of it would show. */
export function isKeyTooNarrow(width: Inches, seam: Inches): boolean {
  return width < leastKeyWidth(seam) - HAIR;
}
