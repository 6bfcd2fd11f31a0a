// Finds the pairs of vectors, one of each list, whose sums are shortest: a choice of tip-up and one of tip-down wedges, whose block
// comes near the average.
import { eigenpairsOf } from '../branch/eigenvalues';

/** Vectors of the first list looked at between two pauses. */
const PAUSE = 16;
/** The first list is gone through in so many strides, so that a short sum is found early. */
const STRIDES = 32;
const BINS = 64;

export interface Pair {
  readonly one: number;
  readonly other: number;
  /** The square of the length of the sum. */
  readonly square: number;
}

/**
 * The `most` pairs with the shortest sums, ascending; fewer where there are not so many. Exact: both lists are turned to the axes
 * along which `others` differ most; the other list is put into bins along the first and sorted along the second in each.
 * Vectors have two coordinates or more. Yields every few milliseconds.
 */
export function* nearestPairs(
  ones: Float64Array,
  others: Float64Array,
  width: number,
  most: number,
): Generator<void, Pair[]> {
  const axes = axesOf(others, width);
  const from = turned(ones, axes, width);
  const to = binned(turned(others, axes, width), width);
  const kept = new ShortestPairs(most);
  for (let stride = 0; stride < STRIDES; stride++) {
    for (let one = stride; one * width < from.length; one += STRIDES) {
      if ((one - stride) % (STRIDES * PAUSE) === 0) yield;
      lookFrom(from, one, to, width, kept);
    }
  }
  return kept.pairs();
}

/** A list in bins along its first coordinate. */
interface Bins {
  readonly vectors: Float64Array;
  /** Second coordinates, ascending in each bin. */
  readonly along: Float64Array;
  /** Index of each vector in the list it comes from. */
  readonly order: Int32Array;
  /** Where each bin begins, and one more. */
  readonly start: Int32Array;
  /** First coordinate at which the first bin begins, and how wide they are. */
  readonly least: number;
  readonly step: number;
}

/** Looks at all vectors of the other list whose first two coordinates alone are not too much. */
function lookFrom(
  from: Float64Array,
  one: number,
  { vectors, along, order, start, least, step }: Bins,
  width: number,
  kept: ShortestPairs,
): void {
  const own = one * width;
  // A little more, for rounding.
  const reach = Math.sqrt(kept.limit) * (1 + 1e-9);
  const middle = -from[own]! - least;
  const wanted = -from[own + 1]!;
  const last = Math.min(BINS - 1, Math.floor((middle + reach) / step));
  for (let bin = Math.max(0, Math.floor((middle - reach) / step)); bin <= last; bin++) {
    const end = start[bin + 1]!;
    for (let at = firstFrom(along, wanted - reach, start[bin]!, end); at < end; at++) {
      if (along[at]! > wanted + reach) break;
      const other = at * width;
      const { limit } = kept;
      let square = 0;
      for (let k = 0; k < width && square < limit; k++) square += (from[own + k]! + vectors[other + k]!) ** 2;
      if (square < limit) kept.add(one, order[at]!, square);
    }
  }
}

/** Keeps the shortest of the pairs it is given: finds the limit anew once there are twice as many as are wanted. */
class ShortestPairs {
  /** Pairs from this square on are not wanted. */
  limit = Number.POSITIVE_INFINITY;
  private count = 0;
  private readonly squares: Float64Array;
  private readonly ones: Int32Array;
  private readonly others: Int32Array;

  constructor(private readonly most: number) {
    this.squares = new Float64Array(2 * most);
    this.ones = new Int32Array(2 * most);
    this.others = new Int32Array(2 * most);
  }

  add(one: number, other: number, square: number): void {
    const at = this.count++;
    this.squares[at] = square;
    this.ones[at] = one;
    this.others[at] = other;
    if (this.count === this.squares.length) this.dropLongest();
  }

  private dropLongest(): void {
    const { most, ones, others } = this;
    const squares = this.squares.subarray(0, this.count);
    this.limit = squares.toSorted()[most - 1]!;
    let below = squares.reduce((sum, square) => (square < this.limit ? sum + 1 : sum), 0);
    this.count = 0;
    for (let at = 0; at < squares.length; at++) {
      // Of those as long as the limit, so many as there is room for.
      if (squares[at]! > this.limit || (squares[at] === this.limit && below++ >= most)) continue;
      squares[this.count] = squares[at]!;
      ones[this.count] = ones[at]!;
      others[this.count] = others[at]!;
      this.count += 1;
    }
  }

  pairs(): Pair[] {
    if (this.count > this.most) this.dropLongest();
    return Array.from({ length: this.count }, (_, at) => ({
      one: this.ones[at]!,
      other: this.others[at]!,
      square: this.squares[at]!,
    })).sort((one, other) => one.square - other.square);
  }
}

/** Axes of length 1 at right angles, row by row: along the first the vectors differ most, and so on. */
export function axesOf(vectors: Float64Array, width: number): Float64Array {
  const count = vectors.length / width;
  const mean = new Float64Array(width);
  vectors.forEach((one, at) => {
    mean[at % width]! += one / count;
  });
  const apart = new Float64Array(width * width);
  for (let from = 0; from < vectors.length; from += width) {
    for (let row = 0; row < width; row++) {
      const by = vectors[from + row]! - mean[row]!;
      for (let column = 0; column < width; column++)
        apart[row * width + column]! += by * (vectors[from + column]! - mean[column]!);
    }
  }
  const { vectors: axes } = eigenpairsOf(apart, width);
  const first = new Float64Array(width * width);
  for (let row = 0; row < width; row++)
    first.set(axes.subarray((width - 1 - row) * width, (width - row) * width), row * width);
  return first;
}

export function turned(vectors: Float64Array, axes: Float64Array, width: number): Float64Array {
  const result = new Float64Array(vectors.length);
  for (let from = 0; from < vectors.length; from += width) {
    for (let row = 0; row < width; row++) {
      let sum = 0;
      for (let k = 0; k < width; k++) sum += axes[row * width + k]! * vectors[from + k]!;
      result[from + row] = sum;
    }
  }
  return result;
}

function binned(vectors: Float64Array, width: number): Bins {
  const count = vectors.length / width;
  const first = Float64Array.from({ length: count }, (_, at) => vectors[at * width]!);
  const least = first.reduce((low, one) => Math.min(low, one), Number.POSITIVE_INFINITY);
  const high = first.reduce((top, one) => Math.max(top, one), least);
  const step = Math.max(1e-12, (high - least) / BINS);
  const bin = Int32Array.from(first, (one) => Math.min(BINS - 1, Math.floor((one - least) / step)));
  const order = Int32Array.from(first.keys()).sort(
    (one, other) => bin[one]! - bin[other]! || vectors[one * width + 1]! - vectors[other * width + 1]!,
  );
  const sorted = new Float64Array(vectors.length);
  const start = new Int32Array(BINS + 1);
  order.forEach((from, to) => {
    sorted.set(vectors.subarray(from * width, (from + 1) * width), to * width);
    start[bin[from]! + 1] = to + 1;
  });
  for (let at = 1; at <= BINS; at++) start[at] = Math.max(start[at]!, start[at - 1]!);
  return {
    vectors: sorted,
    along: Float64Array.from(order, (at) => vectors[at * width + 1]!),
    order,
    start,
    least,
    step,
  };
}

/** The first place from `from` on and before `to` in an ascending list that is not below `wanted`; `to` where there is none. */
function firstFrom(ascending: Float64Array, wanted: number, from: number, to: number): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ascending[middle]! < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}
