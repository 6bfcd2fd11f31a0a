// Linear equations of least squares.

/** Solves symmetric positive equations by Cholesky's method. */
export function solved(matrix: Float64Array, right: Float64Array): Float64Array {
  const n = right.length;
  const l = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i * n + j]!;
      for (let k = 0; k < j; k += 1) sum -= l[i * n + k]! * l[j * n + k]!;
      l[i * n + j] = i === j ? Math.sqrt(Math.max(1e-12, sum)) : sum / l[j * n + j]!;
    }
  }
  const x = Float64Array.from(right);
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k < i; k += 1) x[i]! -= l[i * n + k]! * x[k]!;
    x[i]! /= l[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < n; k += 1) x[i]! -= l[k * n + i]! * x[k]!;
    x[i]! /= l[i * n + i]!;
  }
  return x;
}
