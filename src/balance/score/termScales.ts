// Computes the scales of the terms: means, targets, strengths of fabrics, and the sum of each term in a random layout, so that a
// random layout scores 1. Scales stay fixed while blocks are turned, exchanged or given other wedges.
import { clashByChance } from '../clashes/clashByChance';
import { type Kernel, kernelOf, kernelOn, kernelSums, quadratic } from '../wall/kernel';
import type { WallModel } from '../wall/wallModel';
import { type Intent, SCATTERED, valueTarget } from './intent';

export interface TermScales {
  readonly intent: Intent;
  readonly kernel: Kernel;
  /** Means over the hung blocks. */
  readonly meanLightness: number;
  readonly meanA: number;
  readonly meanB: number;
  readonly meanWarmth: number;
  /** Square inches of each fabric in a hung block, on average. */
  readonly meanFabric: Float64Array;
  /** Squared contrast of each fabric with the mean of all wedges, in OKLab; 0 for background cloth. */
  readonly strength: Float64Array;
  /** Wanted deviation of value of each cell, L*. */
  readonly target: Float64Array;
  /** How much the squared residuals of value count by themselves, beside those of groups: above 0 where an order is wanted. */
  readonly ownValue: number;
  /** Offsets of each cell from the middle of the filled cells, inches. */
  readonly fromMiddleX: Float64Array;
  readonly fromMiddleY: Float64Array;
  /** What chance gives of each sum, with a floor where a top hardly varies; see the functions below. */
  readonly clashScale: number;
  readonly alikeScale: number;
  readonly valueScale: number;
  readonly colourScale: number;
  readonly fabricScale: number;
  readonly momentScale: number;
  readonly warmthScale: number;
}

/**
 * A group is even where a cell too light lies beside one too dark, which is as wanted for scattered values and against an order. So
 * with an order every cell counts for itself, twice as much as in the groups (our choice: it can then be seen in grey on six blocks).
 */
const OWN_VALUE = 4;

/** Below these standard deviations between blocks nothing is seen: L*, OKLab, warmth, and part of a block's area. */
const LEAST = { lightness: 1, oklab: 0.003, warmth: 0.02, area: 0.005 } as const;

export function termScales(model: WallModel, intent: Intent = SCATTERED): TermScales {
  // In the order of the document: exchanging two blocks must not change the last digit of a sum.
  const hung = model.blocks
    .map((_, block) => block)
    .filter((block) => model.cellOf[block]! >= 0 && model.area[block]! > 0);
  const filled = Uint8Array.from(model.blockIn, (block) => (block >= 0 && model.area[block]! > 0 ? 1 : 0));
  const whole = model.rows * model.columns === model.blockIn.length;
  const kernel = whole ? kernelOf(model.rows, model.columns) : kernelOn(model.rowOf, model.columnOf);
  const spread = (figures: Float64Array, least: number) => moments(hung, figures, least);
  const lightness = spread(model.lightness, LEAST.lightness);
  const a = spread(model.a, LEAST.oklab);
  const b = spread(model.b, LEAST.oklab);
  const warmth = spread(model.warmth, LEAST.warmth);
  const target = valueTarget(
    intent,
    { x: model.cellX, y: model.cellY, filled },
    hung.map((block) => model.lightness[block]! - lightness.mean),
  );
  const ownValue = intent.value === 'scattered' ? 0 : OWN_VALUE;
  const middle = fromMiddle(model, filled);
  const sums = kernelSums(kernel, filled);
  const chance = chanceOfForm(sums, hung.length);
  const fabrics = fabricFigures(model, hung);
  const clash = clashByChance(model, hung);
  return {
    intent,
    kernel,
    meanLightness: lightness.mean,
    meanA: a.mean,
    meanB: b.mean,
    meanWarmth: warmth.mean,
    meanFabric: fabrics.mean,
    strength: fabrics.strength,
    target,
    ownValue,
    fromMiddleX: middle.x,
    fromMiddleY: middle.y,
    clashScale: clash.same,
    alikeScale: clash.alike,
    valueScale:
      lightness.m2 * (chance + ownValue * hung.length) +
      quadratic(kernel, target) +
      ownValue * squares(target),
    colourScale:
      (a.m2 + b.m2) *
      (intent.colour === 'scattered'
        ? chance
        : Math.max(1e-9, (2 * sums.pairs * hung.length) / Math.max(1, hung.length - 1))),
    fabricScale: fabrics.power * chance,
    momentScale: lightness.m2 * middle.chance + momentOf(middle, target),
    warmthScale: warmth.m2 * middle.chance,
  };
}

/** Σ v². */
export function squares(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}

/** Mean and m2 = Σz²/n over the hung blocks, m2 not below the square of what is seen. */
function moments(
  hung: readonly number[],
  figures: Float64Array,
  least: number,
): { mean: number; m2: number } {
  let mean = 0;
  for (const block of hung) mean += figures[block]! / hung.length;
  let m2 = 0;
  for (const block of hung) m2 += (figures[block]! - mean) ** 2 / hung.length;
  return { mean, m2: Math.max(m2, least * least) };
}

/** E[Σ K z z]/m2 when n values of sum 0 are dealt at random: E[z_c²] = m2, E[z_c z_d] = −m2/(n − 1). 1 for n < 2. */
function chanceOfForm(sums: { own: number; pairs: number }, n: number): number {
  return n < 2 ? 1 : sums.own - sums.pairs / (n - 1);
}

/** Offsets from the middle and E[|Σ z x|²]/m2 = n/(n − 1) Σ(x² + y²) when the values are dealt at random. */
function fromMiddle(model: WallModel, filled: Uint8Array) {
  const n = filled.reduce((sum, one) => sum + one, 0);
  const offsets = (places: Float64Array) => {
    const mean = places.reduce((sum, place, cell) => sum + (filled[cell] ? place : 0), 0) / Math.max(1, n);
    return places.map((place, cell) => (filled[cell] ? place - mean : 0));
  };
  const x = offsets(model.cellX);
  const y = offsets(model.cellY);
  const square = x.reduce((sum, one, cell) => sum + one * one + y[cell]! ** 2, 0);
  return { x, y, chance: n < 2 ? 1 : (square * n) / (n - 1) };
}

function momentOf(middle: { x: Float64Array; y: Float64Array }, values: Float64Array): number {
  let across = 0;
  let down = 0;
  values.forEach((value, cell) => {
    across += value * middle.x[cell]!;
    down += value * middle.y[cell]!;
  });
  return across * across + down * down;
}

/** Mean area, squared contrast, and Σ strength · m2 over the fabrics. */
function fabricFigures(model: WallModel, hung: readonly number[]) {
  const { fabricCount, cloths } = model;
  const mean = new Float64Array(fabricCount);
  const square = new Float64Array(fabricCount);
  for (const block of hung) {
    for (let f = 0; f < fabricCount; f++) {
      const size = model.fabricArea[block * fabricCount + f]!;
      mean[f]! += size / hung.length;
      square[f]! += (size * size) / hung.length;
    }
  }
  const total = mean.reduce((sum, size) => sum + size, 0);
  const middle = [cloths.oklabL, cloths.a, cloths.b].map((axis) =>
    total > 0 ? axis.reduce((sum, value, f) => sum + (value * mean[f]!) / total, 0) : 0,
  );
  const strength = Float64Array.from(mean, (size, f) =>
    cloths.background[f] || size === 0
      ? 0
      : (cloths.oklabL[f]! - middle[0]!) ** 2 +
        (cloths.a[f]! - middle[1]!) ** 2 +
        (cloths.b[f]! - middle[2]!) ** 2,
  );
  const least = (LEAST.area * model.blockSize.width * model.blockSize.height) ** 2;
  let power = 1e-9;
  strength.forEach((one, f) => {
    power += one * Math.max(least, square[f]! - mean[f]! ** 2);
  });
  return { mean, strength, power };
}
