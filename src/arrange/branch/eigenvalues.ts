// Eigenvalues and eigenvectors of a symmetric matrix, for bounds: Householder's reduction to three diagonals, then QL steps with
// implicit shifts (Wilkinson and Reinsch, Handbook for Automatic Computation II, 1971: tred and imtql).

import { atOnce, PART } from '../../model/work/parts';
import { vectorsFor } from './inverseIteration';

export interface Eigenpairs {
  /** In no order. */
  readonly values: Float64Array;
  /** Row k belongs to value k, of length 1, but is given only as the three diagonals have it: `turnBack` makes it whole. */
  readonly vectors: Float64Array;
  /** Turns row k of `vectors` back, so that it is an eigenvector of the matrix. Once for each row. */
  readonly turnBack: (row: number) => void;
}

/** Those on one side of 0. */
export interface FewerPairs extends Eigenpairs {
  readonly above: boolean;
}

/** Eigenvalues in ascending order. `matrix` is size × size, row by row, and is left as it is. O(n³). */
export function eigenvaluesOf(matrix: Float64Array, size: number): Float64Array {
  return atOnce(findingEigenvalues(matrix, size));
}

/** The same, yielding every few milliseconds. */
export function* findingEigenvalues(matrix: Float64Array, size: number): Generator<void, Float64Array> {
  const nothing = nothingBeside(matrix, size);
  const { diagonal, beside } = yield* threeDiagonals(matrix.slice(), size, nothing);
  for (let value = 0; value < size; value++) findValue(diagonal, beside, value, nothing, null);
  return diagonal.sort();
}

/** Eigenvalues, ascending, with their vectors: row k belongs to value k. `matrix` is left as it is. O(n³). */
export function eigenpairsOf(
  matrix: Float64Array,
  size: number,
): { values: Float64Array; vectors: Float64Array } {
  const found = atOnce(findingEigenpairs(matrix.slice(), size));
  const order = Array.from({ length: size }, (_, at) => at).sort(
    (one, other) => found.values[one]! - found.values[other]!,
  );
  for (let row = 0; row < size; row++) found.turnBack(row);
  const vectors = new Float64Array(size * size);
  order.forEach((from, to) => {
    vectors.set(found.vectors.subarray(from * size, (from + 1) * size), to * size);
  });
  return { values: Float64Array.from(order, (at) => found.values[at]!), vectors };
}

/** The same in no order and with vectors made whole one by one, yielding every few milliseconds. `matrix` is used up. */
function* findingEigenpairs(matrix: Float64Array, size: number): Generator<void, Eigenpairs> {
  const nothing = nothingBeside(matrix, size);
  return yield* turningAll(yield* threeDiagonals(matrix, size, nothing), nothing);
}

/** Only those above 0 or only those below, whichever are fewer; the others are left out or 0. `matrix` is used up. */
export function* findingFewer(matrix: Float64Array, size: number): Generator<void, FewerPairs> {
  const nothing = nothingBeside(matrix, size);
  const three = yield* threeDiagonals(matrix, size, nothing);
  const { mirrors } = three;
  const all = three.diagonal.slice();
  const beside = three.beside.slice();
  for (let value = 0; value < size; value++) findValue(all, beside, value, nothing, null);
  const above = 2 * all.filter((one) => one > 0).length <= size;
  const sign = above ? 1 : -1;
  const values = all.filter((one) => sign * one > 0);
  const vectors = yield* vectorsFor(values, three.diagonal, three.beside);
  if (vectors) return { above, values, vectors, turnBack: (row) => turnBack(vectors, row, mirrors, size) };
  // Where one does not settle all of them are turned along, and the others left out.
  const whole = yield* turningAll(three, nothing);
  for (let row = 0; row < size; row++) if (sign * whole.values[row]! <= 0) whole.values[row] = 0;
  return { above, ...whole };
}

/** Eigenpairs of three diagonals, which are used up. */
function* turningAll({ diagonal, beside, mirrors }: Diagonals, nothing: number): Generator<void, Eigenpairs> {
  const size = diagonal.length;
  const vectors = new Float64Array(size * size);
  for (let at = 0; at < size; at++) vectors[at * size + at] = 1;
  let done = 0;
  for (let value = 0; value < size; value++) {
    done += 4 * size * (size - value);
    if (done > PART) {
      done = 0;
      yield;
    }
    findValue(diagonal, beside, value, nothing, vectors);
  }
  return { values: diagonal, vectors, turnBack: (row) => turnBack(vectors, row, mirrors, size) };
}

/** Makes a row of `vectors` whole: by all mirrors, the last one first. */
function turnBack(vectors: Float64Array, row: number, mirrors: Float64Array, size: number): void {
  const vector = vectors.subarray(row * size, (row + 1) * size);
  for (let step = size - 3; step >= 0; step--) mirror(vector, mirrors, step, size);
}

/** vector − v (vᵀ vector), v of length √2 the mirror of a step: 0 up to the entry of the step. */
function mirror(vector: Float64Array, mirrors: Float64Array, step: number, size: number): void {
  const from = step * size;
  let inner = 0;
  for (let at = step + 1; at < size; at++) inner += mirrors[from + at]! * vector[at]!;
  for (let at = step + 1; at < size; at++) vector[at]! -= inner * mirrors[from + at]!;
}

/** Entries this small are nothing beside the whole, and would only underflow. */
function nothingBeside(matrix: Float64Array, size: number): number {
  let square = 0;
  for (const one of matrix) square += one * one;
  return Math.max(SMALLEST, (Number.EPSILON * Math.sqrt(square)) / size);
}

/** The square of less than this loses digits or is 0. */
const SMALLEST = 1e-140;

interface Diagonals {
  readonly diagonal: Float64Array;
  /** beside[i] lies between diagonal i and i + 1; the last is 0. */
  readonly beside: Float64Array;
  /** Of each step the vector that it mirrored along, of length √2; row × size. */
  readonly mirrors: Float64Array;
}

function* threeDiagonals(a: Float64Array, size: number, nothing: number): Generator<void, Diagonals> {
  const beside = new Float64Array(size);
  const mirrors = new Float64Array(size * size);
  const vector = new Float64Array(size);
  const product = new Float64Array(size);
  let done = 0;
  for (let step = 0; step < size - 2; step++) {
    done += 2 * (size - step) ** 2;
    if (done > PART) {
      done = 0;
      yield;
    }
    let square = 0;
    for (let row = step + 1; row < size; row++) {
      vector[row] = a[row * size + step]!;
      square += vector[row]! ** 2;
    }
    const length = Math.sqrt(square);
    if (length <= nothing) continue;
    const first = vector[step + 1]!;
    beside[step] = first > 0 ? -length : length;
    // v = x ± |x| e, H = 1 − 2 v vᵀ/(vᵀ v): the column becomes ∓|x| e.
    vector[step + 1] = first - beside[step]!;
    const norm = square - first * first + vector[step + 1]! ** 2;
    if (norm <= 0) continue;
    reflect(a, size, step + 1, vector, norm, product);
    const root = Math.sqrt(2 / norm);
    for (let row = step + 1; row < size; row++) mirrors[step * size + row] = root * vector[row]!;
  }
  if (size > 1) beside[size - 2] = a[(size - 1) * size + size - 2]!;
  const diagonal = Float64Array.from({ length: size }, (_, at) => a[at * size + at]!);
  return { diagonal, beside, mirrors };
}

/**
 * a ← H a H on rows and columns from `from` on: a − v wᵀ − w vᵀ with w = 2/(vᵀv) (a v − (vᵀ a v/(vᵀv)) v). Only the entries on the
 * diagonal and left of it are read and written.
 */
function reflect(
  a: Float64Array,
  size: number,
  from: number,
  vector: Float64Array,
  norm: number,
  product: Float64Array,
): void {
  multiplyFrom(a, size, from, vector, product);
  let inner = 0;
  for (let row = from; row < size; row++) {
    product[row]! *= 2 / norm;
    inner += product[row]! * vector[row]!;
  }
  for (let row = from; row < size; row++) product[row]! -= (inner / norm) * vector[row]!;
  for (let row = from; row < size; row++) {
    const one = vector[row]!;
    const other = product[row]!;
    for (let column = from, at = row * size + from; column <= row; column++, at++)
      a[at]! -= one * product[column]! + other * vector[column]!;
  }
}

/** product ← a · vector from `from` on, a given by its diagonal and what is left of it. */
function multiplyFrom(
  a: Float64Array,
  size: number,
  from: number,
  vector: Float64Array,
  product: Float64Array,
): void {
  for (let row = from; row < size; row++) {
    const own = vector[row]!;
    let sum = 0;
    let at = row * size + from;
    for (let column = from; column < row; column++, at++) {
      sum += a[at]! * vector[column]!;
      product[column]! += a[at]! * own;
    }
    product[row] = sum + a[at]! * own;
  }
}

/** QL steps until the entry beside diagonal `value` vanishes; the rows of `vectors` turn with them. */
function findValue(
  diagonal: Float64Array,
  beside: Float64Array,
  value: number,
  nothing: number,
  vectors: Float64Array | null,
): void {
  const size = diagonal.length;
  for (let round = 0; ; round++) {
    let end = value;
    while (end < size - 1) {
      const scale = Math.abs(diagonal[end]!) + Math.abs(diagonal[end + 1]!);
      if (Math.abs(beside[end]!) <= Math.max(nothing, Number.EPSILON * scale)) break;
      end += 1;
    }
    if (end === value) return;
    if (round === 60) throw new Error('eigenvaluesOf: did not settle');
    let g = (diagonal[value + 1]! - diagonal[value]!) / (2 * beside[value]!);
    let r = Math.hypot(g, 1);
    g = diagonal[end]! - diagonal[value]! + beside[value]! / (g + (g < 0 ? -r : r));
    let sine = 1;
    let cosine = 1;
    let p = 0;
    let at = end - 1;
    for (; at >= value; at--) {
      const f = sine * beside[at]!;
      const b = cosine * beside[at]!;
      r = Math.hypot(f, g);
      beside[at + 1] = r;
      if (r === 0) {
        diagonal[at + 1]! -= p;
        beside[end] = 0;
        break;
      }
      sine = f / r;
      cosine = g / r;
      g = diagonal[at + 1]! - p;
      r = (diagonal[at]! - g) * sine + 2 * cosine * b;
      p = sine * r;
      diagonal[at + 1] = g + p;
      g = cosine * r - b;
      if (vectors) turnRows(vectors, size, at, cosine, sine);
    }
    if (r === 0 && at >= value) continue;
    diagonal[value]! -= p;
    beside[value] = g;
    beside[end] = 0;
  }
}

/** Turns row `at` and the next one. */
function turnRows(vectors: Float64Array, size: number, at: number, cosine: number, sine: number): void {
  const end = (at + 1) * size;
  for (let one = at * size; one < end; one++) {
    const x = vectors[one]!;
    const y = vectors[one + size]!;
    vectors[one] = cosine * x - sine * y;
    vectors[one + size] = sine * x + cosine * y;
  }
}
