// Eigenvalues and eigenvectors of small symmetric matrices, by Jacobi's rotations (C. G. J. Jacobi 1846; the cyclic form of
// Golub and Van Loan, Matrix Computations, 4th edition 2013, section 8.5).

export interface Eigenpairs {
  /** In ascending order. */
  readonly values: Float64Array;
  /** Column k belongs to value k: row × size + k. */
  readonly vectors: Float64Array;
}

/** Sweeps after which no matrix has been seen to be unfinished; ten are usual. */
const SWEEPS = 40;

/** `matrix` is size × size and symmetric; it is left as it is. O(size³). */
export function eigenpairsOf(matrix: Float64Array, size: number): Eigenpairs {
  const a = matrix.slice();
  const vectors = new Float64Array(size * size);
  for (let at = 0; at < size; at++) vectors[at * size + at] = 1;
  const nothing = Number.EPSILON ** 2 * a.reduce((sum, one) => sum + one * one, 0);
  for (let sweep = 0; sweep < SWEEPS && besideDiagonal(a, size) > nothing; sweep++) {
    for (let p = 0; p < size; p++) {
      for (let q = p + 1; q < size; q++) rotate(a, vectors, size, p, q);
    }
  }
  const order = Array.from({ length: size }, (_, at) => at).sort(
    (one, other) => a[one * size + one]! - a[other * size + other]!,
  );
  return {
    values: Float64Array.from(order, (at) => a[at * size + at]!),
    vectors: vectors.map((_, at) => vectors[at - (at % size) + order[at % size]!]!),
  };
}

function besideDiagonal(a: Float64Array, size: number): number {
  let sum = 0;
  for (let row = 1; row < size; row++) {
    for (let column = 0; column < row; column++) sum += a[row * size + column]! ** 2;
  }
  return sum;
}

/** Turns p and q so that their common entry becomes 0. */
function rotate(a: Float64Array, vectors: Float64Array, size: number, p: number, q: number): void {
  const common = a[p * size + q]!;
  if (common === 0) return;
  const tau = (a[q * size + q]! - a[p * size + p]!) / (2 * common);
  const tangent = (tau < 0 ? -1 : 1) / (Math.abs(tau) + Math.sqrt(1 + tau * tau));
  const cosine = 1 / Math.sqrt(1 + tangent * tangent);
  const sine = tangent * cosine;
  for (let k = 0; k < size; k++) turn(a, k * size + p, k * size + q, cosine, sine);
  for (let k = 0; k < size; k++) turn(a, p * size + k, q * size + k, cosine, sine);
  for (let k = 0; k < size; k++) turn(vectors, k * size + p, k * size + q, cosine, sine);
}

function turn(table: Float64Array, one: number, other: number, cosine: number, sine: number): void {
  const x = table[one]!;
  const y = table[other]!;
  table[one] = cosine * x - sine * y;
  table[other] = sine * x + cosine * y;
}
