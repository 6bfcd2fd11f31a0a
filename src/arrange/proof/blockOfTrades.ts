// Finds how near the figures of one block can come to the average block when its wedges may be traded: a block holds a few whole
// wedges, and no choice of them holds a little of every fabric.
import { type CostTables, FIRST_FABRIC, writeFigures } from '../live/costTables';
import { wedgeFigures } from '../live/tradePrices';

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

/** What a block holds besides the wedges that may be traded, less the average block. */
export interface Rest {
  /** Scaled figures from channel `first` on, which add up; 0 before it. */
  readonly figures: Float64Array;
  readonly first: number;
  readonly area: number;
}

/**
 * The least Σ figure² (scaled, less the average) over every choice of wedges for a block that holds the rest besides. Exact: the
 * nearest pair of a sum of tip-up and a sum of tip-down wedges, those of one tip sorted along one figure. 0 where there are too many
 * sums to look through. Yields every few milliseconds.
 */
export function* leastFromMean(
  tables: CostTables,
  [up, down]: readonly [WedgesOfTip, WedgesOfTip],
  rest: Rest,
): Generator<void, number> {
  const ups = sumsOf(tables, up, rest, rest.figures);
  const downs = sumsOf(tables, down, rest, new Float64Array(rest.figures.length));
  if (!ups || !downs) return 0;
  return yield* nearestToZero(ups, downs, rest.figures.length);
}

/** A block without the wedges at some of its places. */
export function restOf(tables: CostTables, block: number, free: ReadonlySet<number>, first: number): Rest {
  const { model, channels } = tables;
  const figures = new Float64Array(channels);
  const area = model.area[block]!;
  const areaOf = (fabric: number) => model.fabricArea[block * model.fabricCount + fabric]!;
  writeFigures(tables, model.lightness[block]!, model.a[block]!, model.b[block]!, areaOf, figures, 0);
  if (first === FIRST_FABRIC) figures.fill(0, 0, first);
  for (let place = block * model.perBlock; place < (block + 1) * model.perBlock; place++) {
    const type = model.typeAt[place]!;
    if (type < 0 || !free.has(place)) continue;
    wedgeFigures(tables, type, first, area).forEach((figure, at) => {
      figures[at]! -= figure;
    });
  }
  return { figures, first, area };
}

/** The scaled figures of every choice of wedges of a tip, one after the other; null where there are too many or none. */
function sumsOf(
  tables: CostTables,
  { types, stock, places }: WedgesOfTip,
  { first, area }: Rest,
  base: Float64Array,
): Float64Array | null {
  const width = base.length;
  const figures = types.map((type) => wedgeFigures(tables, type, first, area));
  const sums: number[] = [];
  const sum = base.slice();
  const add = (at: number, times: number) => {
    for (let channel = 0; channel < width; channel++) sum[channel]! += times * figures[at]![channel]!;
  };
  /** False once there are too many. */
  const choose = (from: number, left: number): boolean => {
    if (left === 0) {
      for (const one of sum) sums.push(one);
      return sums.length <= MOST_SUMS * width;
    }
    if (from === types.length) return true;
    const most = Math.min(left, stock[types[from]!]!);
    for (let times = 0; times <= most; times++) {
      add(from, times);
      const goesOn = choose(from + 1, left - times);
      add(from, -times);
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
