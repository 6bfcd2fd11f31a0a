// Eigenvectors of three diagonals for some of their eigenvalues, by inverse iteration (Wilkinson 1958): where few are wanted this is
// several times quicker than to turn all of them along.
import { PART } from '../../model/work/parts';

/** Rounds for a vector; two are usual. */
const ROUNDS = 6;
/** How far a vector may be from its equation, as a part of the largest entry. */
const NEAR_ENOUGH = 1e-13;

/**
 * A row for each of `values`, of length 1 and beside each other. `beside`[i] lies between diagonal i and i + 1. Null where one does
 * not settle. Yields every few milliseconds.
 */
export function* vectorsFor(
  values: Float64Array,
  diagonal: Float64Array,
  beside: Float64Array,
): Generator<void, Float64Array | null> {
  const size = diagonal.length;
  const rows = new Float64Array(values.length * size);
  const scale = largest(diagonal) + 2 * largest(beside);
  const solver = new Solver(diagonal, beside, Number.EPSILON * scale);
  let done = 0;
  for (let row = 0; row < values.length; row++) {
    done += 8 * size * (row + 8);
    if (done > PART) {
      done = 0;
      yield;
    }
    const vector = rows.subarray(row * size, (row + 1) * size);
    // Any start that is beside no vector; the same every time.
    for (let at = 0; at < size; at++) vector[at] = 1 + (((at + 1) * (2 * row + 3) * 7) % 11) / 11;
    solver.set(values[row]!);
    let settled = false;
    for (let round = 0; round < ROUNDS && !settled; round++) {
      solver.solve(vector);
      normalise(vector);
      for (let other = 0; other < row; other++) removeFrom(vector, rows, other * size);
      normalise(vector);
      settled = round > 0 && residual(vector, values[row]!, diagonal, beside) <= NEAR_ENOUGH * size * scale;
    }
    if (!settled) return null;
  }
  return rows;
}

function largest(entries: Float64Array): number {
  return entries.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
}

function normalise(vector: Float64Array): void {
  let square = 0;
  for (const one of vector) square += one * one;
  const root = Math.sqrt(square);
  for (let at = 0; at < vector.length; at++) vector[at]! /= root;
}

/** Takes out of a vector what lies along the row that starts at `from`. */
function removeFrom(vector: Float64Array, rows: Float64Array, from: number): void {
  const size = vector.length;
  let inner = 0;
  for (let at = 0; at < size; at++) inner += vector[at]! * rows[from + at]!;
  for (let at = 0; at < size; at++) vector[at]! -= inner * rows[from + at]!;
}

/** The largest entry of T v − value v. */
function residual(vector: Float64Array, value: number, diagonal: Float64Array, beside: Float64Array): number {
  const size = vector.length;
  let most = 0;
  for (let at = 0; at < size; at++) {
    let sum = (diagonal[at]! - value) * vector[at]!;
    if (at > 0) sum += beside[at - 1]! * vector[at - 1]!;
    if (at < size - 1) sum += beside[at]! * vector[at + 1]!;
    // Written so that what is no number is not near enough.
    if (!(Math.abs(sum) <= most)) most = Math.abs(sum);
  }
  return most;
}

/** Solves (T − value) x = b by elimination with exchange of rows; a pivot of 0 counts as `least`. */
class Solver {
  private readonly pivot: Float64Array;
  private readonly next: Float64Array;
  private readonly after: Float64Array;
  private readonly factor: Float64Array;
  private readonly exchanged: Uint8Array;

  constructor(
    private readonly diagonal: Float64Array,
    private readonly beside: Float64Array,
    private readonly least: number,
  ) {
    const size = diagonal.length;
    this.pivot = new Float64Array(size);
    this.next = new Float64Array(size);
    this.after = new Float64Array(size);
    this.factor = new Float64Array(size);
    this.exchanged = new Uint8Array(size);
  }

  set(value: number): void {
    const { diagonal, beside, pivot, next, after, factor, exchanged, least } = this;
    const size = diagonal.length;
    let own = diagonal[0]! - value;
    let right = size > 1 ? beside[0]! : 0;
    for (let at = 0; at < size - 1; at++) {
      const below = beside[at]!;
      const under = diagonal[at + 1]! - value;
      const far = at < size - 2 ? beside[at + 1]! : 0;
      if (Math.abs(own) >= Math.abs(below)) {
        pivot[at] = Math.abs(own) < least ? least : own;
        next[at] = right;
        after[at] = 0;
        exchanged[at] = 0;
        factor[at] = below / pivot[at]!;
        own = under - factor[at]! * right;
        right = far;
      } else {
        pivot[at] = below;
        next[at] = under;
        after[at] = far;
        exchanged[at] = 1;
        factor[at] = own / below;
        own = right - factor[at]! * under;
        right = -factor[at]! * far;
      }
    }
    pivot[size - 1] = Math.abs(own) < least ? least : own;
    next[size - 1] = 0;
    after[size - 1] = 0;
  }

  solve(vector: Float64Array): void {
    const { pivot, next, after, factor, exchanged } = this;
    const size = vector.length;
    for (let at = 0; at < size - 1; at++) {
      if (exchanged[at]) {
        const one = vector[at]!;
        vector[at] = vector[at + 1]!;
        vector[at + 1] = one - factor[at]! * vector[at]!;
      } else vector[at + 1]! -= factor[at]! * vector[at]!;
    }
    for (let at = size - 1; at >= 0; at--) {
      let sum = vector[at]!;
      if (at < size - 1) sum -= next[at]! * vector[at + 1]!;
      if (at < size - 2) sum -= after[at]! * vector[at + 2]!;
      vector[at] = sum / pivot[at]!;
    }
  }
}
