// Eigenvalues of a symmetric matrix, for bounds: Householder's reduction to three diagonals, then QL steps with implicit
// shifts (Wilkinson and Reinsch, Handbook for Automatic Computation II, 1971: tred and imtql, values only).

import { atOnce, PART } from '../../model/work/parts';

/** Eigenvalues in ascending order. `matrix` is size × size, row by row, and is left as it is. O(n³). */
export function eigenvaluesOf(matrix: Float64Array, size: number): Float64Array {
  return atOnce(findingEigenvalues(matrix, size));
}

/** The same, yielding every few milliseconds. */
export function* findingEigenvalues(matrix: Float64Array, size: number): Generator<void, Float64Array> {
  // Entries this small are nothing beside the whole, and would only underflow.
  const norm = Math.sqrt(matrix.reduce((sum, one) => sum + one * one, 0));
  const nothing = Math.max(SMALLEST, (Number.EPSILON * norm) / size);
  const { diagonal, beside } = yield* threeDiagonals(matrix.slice(), size, nothing);
  for (let value = 0; value < size; value++) findValue(diagonal, beside, value, nothing);
  return diagonal.sort();
}

/** The square of less than this loses digits or is 0. */
const SMALLEST = 1e-140;

interface Diagonals {
  readonly diagonal: Float64Array;
  /** beside[i] lies between diagonal i and i + 1; the last is 0. */
  readonly beside: Float64Array;
}

function* threeDiagonals(a: Float64Array, size: number, nothing: number): Generator<void, Diagonals> {
  const beside = new Float64Array(size);
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
    if (norm > 0) reflect(a, size, step + 1, vector, norm, product);
  }
  if (size > 1) beside[size - 2] = a[(size - 1) * size + size - 2]!;
  return { diagonal: Float64Array.from({ length: size }, (_, at) => a[at * size + at]!), beside };
}

/** a ← H a H on rows and columns from `from` on: a − v wᵀ − w vᵀ with w = 2/(vᵀv) (a v − (vᵀ a v/(vᵀv)) v). */
function reflect(
  a: Float64Array,
  size: number,
  from: number,
  vector: Float64Array,
  norm: number,
  product: Float64Array,
): void {
  let inner = 0;
  for (let row = from; row < size; row++) {
    let sum = 0;
    for (let column = from; column < size; column++) sum += a[row * size + column]! * vector[column]!;
    product[row] = (2 * sum) / norm;
    inner += product[row]! * vector[row]!;
  }
  for (let row = from; row < size; row++) product[row]! -= (inner / norm) * vector[row]!;
  for (let row = from; row < size; row++) {
    const one = vector[row]!;
    const other = product[row]!;
    for (let column = from; column < size; column++) {
      a[row * size + column]! -= one * product[column]! + other * vector[column]!;
    }
  }
}

/** QL steps until the entry beside diagonal `value` vanishes. */
function findValue(diagonal: Float64Array, beside: Float64Array, value: number, nothing: number): void {
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
    }
    if (r === 0 && at >= value) continue;
    diagonal[value]! -= p;
    beside[value] = g;
    beside[end] = 0;
  }
}
