// The part of a symmetric matrix above 0: of all matrices without a negative eigenvalue the nearest. For bounds by semidefinite
// relaxations.
import { findingFewer } from './eigenvalues';

/** The nearest matrix without negative eigenvalues. `matrix` is used up. */
export function* positivePartOf(matrix: Float64Array, size: number): Generator<void, Float64Array> {
  const whole = matrix.slice();
  // The fewer of the two are summed: what is above 0, or the whole less what is below.
  const { above, values, vectors, turnBack } = yield* findingFewer(matrix, size);
  const result = above ? new Float64Array(size * size) : whole;
  for (let k = 0; k < values.length; k++) {
    if (values[k] === 0) continue;
    turnBack(k);
    const root = Math.sqrt(Math.abs(values[k]!));
    for (let at = k * size; at < (k + 1) * size; at++) vectors[at]! *= root;
  }
  // Rows of 0 stand for what is missing to four, as four at a time are added.
  const wanted = Array.from(values.keys()).filter((k) => values[k] !== 0);
  const nothing = new Float64Array(size);
  const row = (at: number) =>
    at < wanted.length ? vectors.subarray(wanted[at]! * size, (wanted[at]! + 1) * size) : nothing;
  for (let at = 0; at < wanted.length; at += 4)
    addSquares(result, row(at), row(at + 1), row(at + 2), row(at + 3));
  for (let row = 0; row < size; row++)
    for (let column = 0; column < row; column++) result[column * size + row] = result[row * size + column]!;
  return result;
}

/** Adds v vᵀ of four vectors, on the diagonal and left of it. */
function addSquares(
  table: Float64Array,
  a: Float64Array,
  b: Float64Array,
  c: Float64Array,
  d: Float64Array,
): void {
  const size = a.length;
  for (let row = 0; row < size; row++) {
    const [ofA, ofB, ofC, ofD] = [a[row]!, b[row]!, c[row]!, d[row]!];
    for (let column = 0, at = row * size; column <= row; column++, at++)
      table[at]! += ofA * a[column]! + ofB * b[column]! + ofC * c[column]! + ofD * d[column]!;
  }
}
