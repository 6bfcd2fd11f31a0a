// Lengths of cloth as shops sell them: yards by eighths, metres by ten centimetres, and what has to be bought for a length
// that has to be cut.
import { type SellingUnit, sellingUnit } from '../../model/buying';
import { roundedHalfUp } from '../../model/decimals';
import { downToStep, upToStep } from '../../model/lengths';
import { type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { CENTIMETRES_PER_INCH, formatFraction, type Inches } from '../../model/units';
import type { Figure } from '../../model/words/figure';
import { onRuler } from './neededPiece';

/** Inches in the unit prices are for: 36 to the yard (exact), 100/2.54 to the metre (exact). */
export const INCHES_IN: Readonly<Record<SellingUnit, Inches>> = {
  yard: 36,
  metre: 100 / CENTIMETRES_PER_INCH,
};
/** Shops cut eighths of a yard (4 1/2") or 10 cm. Common practice, no source. */
const STEP: Readonly<Record<SellingUnit, Inches>> = { yard: 36 / 8, metre: 10 / CENTIMETRES_PER_INCH };

/** The least step cloth is sold in, inches. */
export function soldStep(unit: SellingUnit): Inches {
  return STEP[unit];
}

/** Up to the next eighth of a yard or the next 10 cm, inches; 0 stays 0. */
export function roundedUp(inches: Inches, unit: SellingUnit): Inches {
  return upToStep(inches, STEP[unit]);
}

/** Down to a whole eighth of a yard or ten centimetres, inches: what can still be sold of a length. */
export function roundedDown(inches: Inches, unit: SellingUnit): Inches {
  return downToStep(inches, STEP[unit]);
}

/** A length of cloth in words: 1 5/8 yd (to the sixteenth), 1.6 m (to the centimetre). */
export function clothText(inches: Inches, unit: SellingUnit): Figure {
  const amount = inches / INCHES_IN[unit];
  return { figure: unit === 'yard' ? `${formatFraction(amount)} yd` : `${roundedHalfUp(amount, 2)} m` };
}

export interface ClothToBuy {
  /** Before rounding: cut, straightened, and longer by what washing takes. */
  readonly needed: Inches;
  /** Rounded up as the shop sells it. */
  readonly inches: Inches;
}

/**
 * What to buy for `cut` inches of cloth. Washing takes `shrinkage` in the hundred of the length bought, so that is divided
 * by what stays; the width the cut was laid out on is measured after washing. Nothing to cut needs nothing, not even straightening.
 */
export function toBuy(
  cut: Inches,
  { straighten, shrinkage }: { straighten: Inches; shrinkage: number },
  unit: SellingUnit,
): ClothToBuy {
  if (cut <= 0) return { needed: 0, inches: 0 };
  const needed = (cut + straighten) / (1 - shrinkage / 100);
  return { needed, inches: roundedUp(needed, unit) };
}

/** How what is bought for `cut` inches comes about. What is cut is rounded up, so that the sum comes out as it is printed. */
export function buyWords(cut: Inches, { needed, inches }: ClothToBuy, project: Project): Phrase[] {
  if (cut <= 0) return [];
  const { straighten, shrinkage } = project.buying;
  const unit = sellingUnit(project);
  const shown = onRuler(cut, project.preferences.unit);
  const why = [phrase('Together that is {cut} of fabric.', { cut: { inches: shown } })];
  if (straighten > 0) {
    const values = { straighten: { inches: straighten }, sum: { inches: shown + straighten } };
    why.push(phrase('With {straighten} to straighten the edge: {sum}.', values));
  }
  if (shrinkage > 0) {
    const say =
      'With {shrinkage}% of the length lost in the wash: {sum} before washing. The width is measured after washing.';
    why.push(phrase(say, { shrinkage, sum: { inches: needed } }));
  }
  const say =
    unit === 'yard'
      ? 'Up to the next eighth of a yard: {cloth}.'
      : 'Up to the next ten centimetres: {cloth}.';
  return [...why, phrase(say, { cloth: clothText(inches, unit) })];
}
