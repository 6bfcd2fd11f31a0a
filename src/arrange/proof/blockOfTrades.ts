// Finds how near the fabrics of one block can come to the average block when its wedges may be traded: a block holds a few whole
// wedges, and no choice of them holds a little of every fabric.
import type { CostTables } from '../live/costTables';

/** The most sums of one tip that are listed; pairs of them are looked through in a second or two. */
const MOST_SUMS = 20_000;
/** Sums looked at between two pauses. */
const PAUSE = 64;

export interface WedgesOfTip {
  /** Wedge types of one tip, and how many there are of each. */
  readonly types: readonly number[];
  readonly stock: Int32Array;
  /** How many of them lie in the block. */
  readonly places: number;
}

/**
 * The least Σ (area of fabric − its mean)², scaled as in the score, over every choice of wedges for a block that holds
 * `base` besides (scaled areas less the means). Exact: the nearest pair of a sum of tip-up and a sum of tip-down wedges, those
 * of one tip sorted along one fabric. 0 where there are too many sums to look through. Yields every few milliseconds.
 */
export function* leastFromMean(
  tables: CostTables,
  [up, down]: readonly [WedgesOfTip, WedgesOfTip],
  base: Float64Array,
): Generator<void, number> {
  const ups = sumsOf(tables, up, base);
  const downs = sumsOf(tables, down, new Float64Array(base.length));
  if (!ups || !downs) return 0;
  return yield* nearestToZero(ups, downs, base.length);
}

/** Scaled areas of the fabrics of a block less their means, without the wedges at some of its places. */
export function areasWithout(
  { model, scales, fabrics, scale, channels }: CostTables,
  block: number,
  free: ReadonlySet<number>,
): Float64Array {
  const first = channels - fabrics.length;
  return Float64Array.from(fabrics, (fabric, at) => {
    let area = -scales.meanFabric[fabric]!;
    for (let place = block * model.perBlock; place < (block + 1) * model.perBlock; place++) {
      const type = model.typeAt[place]!;
      if (type >= 0 && !free.has(place)) area += model.typeFabricArea[type * model.fabricCount + fabric]!;
    }
    return area * scale[first + at]!;
  });
}

/** The scaled areas of every choice of wedges of a tip, one after the other; null where there are too many or none. */
function sumsOf(
  { model, fabrics, scale, channels }: CostTables,
  { types, stock, places }: WedgesOfTip,
  base: Float64Array,
): Float64Array | null {
  const first = channels - fabrics.length;
  const width = base.length;
  const sums: number[] = [];
  const sum = base.slice();
  const add = (type: number, times: number) => {
    for (let at = 0; at < width; at++)
      sum[at]! += times * model.typeFabricArea[type * model.fabricCount + fabrics[at]!]! * scale[first + at]!;
  };
  /** False once there are too many. */
  const choose = (from: number, left: number): boolean => {
    if (left === 0) {
      for (const one of sum) sums.push(one);
      return sums.length <= MOST_SUMS * width;
    }
    if (from === types.length) return true;
    const type = types[from]!;
    const most = Math.min(left, stock[type]!);
    for (let times = 0; times <= most; times++) {
      add(type, times);
      const goesOn = choose(from + 1, left - times);
      add(type, -times);
      if (!goesOn) return false;
    }
    return true;
  };
  return choose(0, places) && sums.length > 0 ? Float64Array.from(sums) : null;
}

/** The least square of the length of a sum of two vectors, one of each list. */
function* nearestToZero(ones: Float64Array, others: Float64Array, width: number): Generator<void, number> {
  const axis = widestAxis(others, width);
  const order = Array.from({ length: others.length / width }, (_, at) => at).sort(
    (a, b) => others[a * width + axis]! - others[b * width + axis]!,
  );
  const along = Float64Array.from(order, (at) => others[at * width + axis]!);
  let least = Number.POSITIVE_INFINITY;
  const look = (one: number, at: number) => {
    let square = 0;
    const other = order[at]! * width;
    for (let k = 0; k < width && square < least; k++) square += (ones[one + k]! + others[other + k]!) ** 2;
    least = Math.min(least, square);
  };
  for (let one = 0; one < ones.length; one += width) {
    if ((one / width) % PAUSE === 0) yield;
    const wanted = -ones[one + axis]!;
    const middle = firstFrom(along, wanted);
    for (let at = middle; at < along.length && (along[at]! - wanted) ** 2 < least; at++) look(one, at);
    for (let at = middle - 1; at >= 0 && (along[at]! - wanted) ** 2 < least; at--) look(one, at);
  }
  return least;
}

/** The coordinate that differs most. */
function widestAxis(vectors: Float64Array, width: number): number {
  let best = 0;
  let widest = -1;
  for (let axis = 0; axis < width; axis++) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let at = axis; at < vectors.length; at += width) {
      low = Math.min(low, vectors[at]!);
      high = Math.max(high, vectors[at]!);
    }
    if (high - low > widest) {
      widest = high - low;
      best = axis;
    }
  }
  return best;
}

/** The first place in an ascending list that is not below `wanted`. */
function firstFrom(ascending: Float64Array, wanted: number): number {
  let from = 0;
  let to = ascending.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (ascending[middle]! < wanted) from = middle + 1;
    else to = middle;
  }
  return from;
}
