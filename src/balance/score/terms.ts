// The score of a top: six named terms, each about 1 for an arrangement by chance and lower the better, so that weights mean
// the same on 6 and on 400 blocks. The arranger follows the same sums step by step; a full evaluation here is the judge.

import { clashSums } from '../clashes/clashSums';
import { quadratic } from '../wall/kernel';
import { filled, type WallModel } from '../wall/wallModel';
import { squares, type TermScales } from './termScales';
import type { Terms } from './weights';

/**
 * All six terms of a model against a scales made from the same project, or from one with the same blocks hung otherwise
 * (`{...model, blockIn, cellOf, orientationOf}`), or with wedges traded. Only what hangs counts. Formulas: see each part.
 */
export function evaluateTerms(scales: TermScales, model: WallModel): Terms {
  return { ...clashTerms(scales, model), ...spreadTerms(scales, model) };
}

/** The two terms that depend on which sides meet. */
export function clashTerms(scales: TermScales, model: WallModel): Pick<Terms, 'clashLength' | 'lookAlikes'> {
  const clash = clashSums(model);
  return { clashLength: clash.same / scales.clashScale, lookAlikes: clash.alike / scales.alikeScale };
}

/** The four terms that depend only on which block hangs where, not on its turn. */
export function spreadTerms(scales: TermScales, model: WallModel): Omit<Terms, 'clashLength' | 'lookAlikes'> {
  const residuals = valueResiduals(scales, model);
  const value = quadratic(scales.kernel, residuals) + scales.ownValue * squares(residuals);
  return {
    valueSpread: value / scales.valueScale,
    colourSpread: colourForm(scales, model) / scales.colourScale,
    fabricSpread: fabricForm(scales, model) / scales.fabricScale,
    wholeTopWeight: topWeight(scales, model),
  };
}

/** r_c = L*(block in c) − mean − target(c); 0 where nothing hangs. valueSpread is Σ K r r over its expectation, with Σ r² where an order is wanted. */
function valueResiduals(scales: TermScales, model: WallModel): Float64Array {
  return cellValues(model, model.lightness, scales.meanLightness).map((value, cell) =>
    filled(model, cell) ? value - scales.target[cell]! : 0,
  );
}

/** A figure of the blocks, less its mean, by cell. */
function cellValues(model: WallModel, figures: Float64Array, mean: number): Float64Array {
  return Float64Array.from(model.blockIn, (block, cell) =>
    filled(model, cell) ? figures[block]! - mean : 0,
  );
}

/** Scattered: Σ K (a a + b b). Families together: Σ K ((a_c − a_d)² + (b_c − b_d)²), c ≠ d, both filled (Geary). */
function colourForm(scales: TermScales, model: WallModel): number {
  const a = cellValues(model, model.a, scales.meanA);
  const b = cellValues(model, model.b, scales.meanB);
  if (scales.intent.colour === 'scattered') return quadratic(scales.kernel, a) + quadratic(scales.kernel, b);
  const { near } = scales.kernel;
  let sum = 0;
  for (let cell = 0; cell < near.size; cell++) {
    if (!filled(model, cell)) continue;
    for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) {
      const other = near.to[at]!;
      if (filled(model, other)) {
        sum += near.weight[at]! * ((a[cell]! - a[other]!) ** 2 + (b[cell]! - b[other]!) ** 2);
      }
    }
  }
  return sum;
}

/** Σ_f strength_f Σ K (y_f − mean)(y_f − mean), y_f the square inches of fabric f in a block. */
function fabricForm(scales: TermScales, model: WallModel): number {
  const { fabricCount } = model;
  let sum = 0;
  const values = new Float64Array(model.blockIn.length);
  for (let fabric = 0; fabric < fabricCount; fabric++) {
    const strength = scales.strength[fabric]!;
    if (strength === 0) continue;
    model.blockIn.forEach((block, cell) => {
      values[cell] = filled(model, cell)
        ? model.fabricArea[block * fabricCount + fabric]! - scales.meanFabric[fabric]!
        : 0;
    });
    sum += strength * quadratic(scales.kernel, values);
  }
  return sum;
}

/**
 * Half the squared first moment of the value residuals about the middle over its expectation, and half that of warmth; with
 * colour families together, value alone.
 */
function topWeight(scales: TermScales, model: WallModel): number {
  const value = squaredMoment(scales, valueResiduals(scales, model)) / scales.momentScale;
  if (scales.intent.colour !== 'scattered') return value;
  const warmth = cellValues(model, model.warmth, scales.meanWarmth);
  return (value + squaredMoment(scales, warmth) / scales.warmthScale) / 2;
}

function squaredMoment(scales: TermScales, values: Float64Array): number {
  let across = 0;
  let down = 0;
  values.forEach((value, cell) => {
    across += value * scales.fromMiddleX[cell]!;
    down += value * scales.fromMiddleY[cell]!;
  });
  return across * across + down * down;
}
