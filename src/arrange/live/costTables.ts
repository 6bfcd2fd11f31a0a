// Takes the weighted score apart into tables: the cost of two rims, the cost of a seam, and the figures of each block whose
// evenness counts. balance/score/terms.ts defines the terms; liveWall.ts adds them up step by step.
import { clashSums } from '../../balance/clashes/clashSums';
import { radialClash } from '../../balance/clashes/wedgeSeams';
import type { TermScales } from '../../balance/score/termScales';
import type { Terms } from '../../balance/score/weights';
import { filled, type WallModel } from '../../balance/wall/wallModel';

/**
 * Channels are the figures whose evenness counts: value, a, b, then each fabric with any contrast. A figure is scaled by the
 * root of its weight, so that the spread part of the score is Σ_channel sign · Σ_cd K(c, d) f_c f_d.
 */
export interface CostTables {
  readonly model: WallModel;
  readonly scales: TermScales;
  readonly weights: Terms;
  /** Fabrics and one more: the index `none` costs nothing against anything. */
  readonly stride: number;
  readonly none: number;
  /** Rim against rim, or against what lies beside it, where they touch: fabric × fabric, with the stride. */
  readonly touching: Float64Array;
  /** Weighted cost of an inch of one fabric meeting itself, and of an inch of look-alike. */
  readonly perSameInch: number;
  readonly perAlikeInch: number;

  readonly channels: number;
  /** Fabric of each channel from 3 on. */
  readonly fabrics: Int32Array;
  readonly scale: Float64Array;
  /** −1 where likeness is wanted (colour families together). */
  readonly sign: Float64Array;
  /** Factor of a channel's own square: K(c, c) for spread, 0 for likeness. */
  readonly own: Float64Array;
  /** Cost of a block's squared a and b in a cell (families together): factor by cell; null where colours are scattered. */
  readonly likenessRow: Float64Array | null;
  /** Cost of value in a cell, per L*; the target of the intent multiplied out. */
  readonly valueLinear: Float64Array;
  readonly valueConstant: number;
  /** Factors of the squared moments of value and of warmth. */
  readonly valueMoment: number;
  readonly warmthMoment: number;
}

/** The first channel of a fabric. */
export const FIRST_FABRIC = 3;

/** So many types have a table; later ones are mostly wedges of pictures, one of a kind. */
export const MOST_TABLED = 1024;

export function costTables(model: WallModel, scales: TermScales, weights: Terms): CostTables {
  const { fabricCount } = model;
  const stride = fabricCount + 1;
  const perSameInch = weights.clashLength / scales.clashScale;
  const perAlikeInch = weights.lookAlikes / scales.alikeScale;
  const touching = new Float64Array(stride * stride);
  for (let one = 0; one < fabricCount; one++) {
    for (let other = 0; other < fabricCount; other++) {
      const inches = model.rim * model.cloths.likeness[one * fabricCount + other]!;
      touching[one * stride + other] = inches * (one === other ? perSameInch : perAlikeInch);
    }
  }
  const scattered = scales.intent.colour === 'scattered';
  const fabrics = Int32Array.from(scales.strength.keys()).filter((fabric) => scales.strength[fabric]! > 0);
  const kept = weights.fabricSpread > 0 ? fabrics : new Int32Array(0);
  const colour = weights.colourSpread / scales.colourScale;
  const factors = [
    weights.valueSpread / scales.valueScale,
    scattered ? colour : -2 * colour,
    scattered ? colour : -2 * colour,
    ...Array.from(kept, (fabric) => (weights.fabricSpread * scales.strength[fabric]!) / scales.fabricScale),
  ];
  const lag = targetLag(scales);
  return {
    model,
    scales,
    weights,
    stride,
    none: fabricCount,
    touching,
    perSameInch,
    perAlikeInch,
    channels: factors.length,
    fabrics: kept,
    scale: Float64Array.from(factors, (factor) => Math.sqrt(Math.abs(factor))),
    sign: Float64Array.from(factors, (factor) => (factor < 0 ? -1 : 1)),
    own: Float64Array.from(factors, (factor, channel) =>
      factor < 0 ? 0 : scales.kernel.own + (channel === 0 ? scales.ownValue : 0),
    ),
    likenessRow: scattered ? null : rowSums(model, scales).map((sum) => 2 * colour * sum),
    valueLinear: lag.map((one) => -2 * factors[0]! * one),
    valueConstant: factors[0]! * lag.reduce((sum, one, cell) => sum + one * scales.target[cell]!, 0),
    valueMoment: (weights.wholeTopWeight / scales.momentScale) * (scattered ? 0.5 : 1),
    warmthMoment: scattered ? (0.5 * weights.wholeTopWeight) / scales.warmthScale : 0,
  };
}

/** K · target by cell, each cell's own square included. */
function targetLag(scales: TermScales): Float64Array {
  const { near, own } = scales.kernel;
  return scales.target.map((target, cell) => {
    let sum = (own + scales.ownValue) * target;
    for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) {
      sum += near.weight[at]! * scales.target[near.to[at]!]!;
    }
    return sum;
  });
}

/** Σ K(c, d) over the filled cells d ≠ c. */
function rowSums(model: WallModel, scales: TermScales): Float64Array {
  const { near } = scales.kernel;
  return Float64Array.from(model.blockIn, (_, cell) => {
    let sum = 0;
    for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) {
      if (filled(model, near.to[at]!)) sum += near.weight[at]!;
    }
    return sum;
  });
}

/** Cost of the radial seam between two wedge types. Kept in the model's own memo. */
export function seamCost(tables: CostTables, type: number, next: number): number {
  const clash = radialClash(tables.model, type, next);
  return tables.perSameInch * clash.same + tables.perAlikeInch * clash.alike;
}

/** Cost of all clashes as the model stands. */
export function clashCost(tables: CostTables): number {
  const sums = clashSums(tables.model);
  return tables.perSameInch * sums.same + tables.perAlikeInch * sums.alike;
}

/** Writes the scaled figures of a block into `into` at `from`, from its means and its fabric areas. */
export function writeFigures(
  tables: CostTables,
  lightness: number,
  a: number,
  b: number,
  areaOf: (fabric: number) => number,
  into: Float64Array,
  from: number,
): void {
  const { scales, scale, fabrics } = tables;
  into[from] = (lightness - scales.meanLightness) * scale[0]!;
  into[from + 1] = (a - scales.meanA) * scale[1]!;
  into[from + 2] = (b - scales.meanB) * scale[2]!;
  for (let at = 0; at < fabrics.length; at++) {
    const fabric = fabrics[at]!;
    into[from + FIRST_FABRIC + at] =
      (areaOf(fabric) - scales.meanFabric[fabric]!) * scale[FIRST_FABRIC + at]!;
  }
}
