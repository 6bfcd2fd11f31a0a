// Finds weights for the cells of a wall so that the spread of any layout is at least the weighted sum of what each block is off
// the average by itself. Corners of the wall get most: they are in groups of their own.

/** Rounds of the ascent; the barrier shrinks by `SHRINK` in each. */
const ROUNDS = 80;
const SHRINK = 0.82;
/** Kept back of each weight, for rounding. */
const KEPT_BACK = 1e-6;

/**
 * Weights d ≥ 0 with xᵀKx ≥ Σ d x² for every x, their sum near the largest there is: ascent on Σ d + μ log det(K − diag d), one
 * weight after the other, μ → 0 (a barrier method). K must be positive definite. O(n³) a round; yields after each.
 */
export function* diagonalUnder(kernel: Float64Array, size: number): Generator<void, Float64Array> {
  const weights = new Float64Array(size);
  const inverse = inverseOf(kernel, size);
  let barrier = 0.5;
  for (let round = 0; round < ROUNDS; round++) {
    for (let cell = 0; cell < size; cell++) {
      const own = inverse[cell * size + cell]!;
      const more = Math.max(-weights[cell]!, 1 / own - barrier);
      weights[cell]! += more;
      lessen(inverse, size, cell, more);
    }
    barrier *= SHRINK;
    yield;
  }
  return weights.map((weight) => weight * (1 - KEPT_BACK));
}

/** The inverse of A − more · e eᵀ from that of A (Sherman and Morrison 1950), in place. */
function lessen(inverse: Float64Array, size: number, cell: number, more: number): void {
  const column = inverse.slice(cell * size, (cell + 1) * size);
  const factor = more / (1 - more * column[cell]!);
  for (let row = 0; row < size; row++) {
    const by = factor * column[row]!;
    for (let at = 0; at < size; at++) inverse[row * size + at]! += by * column[at]!;
  }
}

/** The inverse of a positive definite table (Gauss–Jordan; needs no exchanging of rows). */
function inverseOf(table: Float64Array, size: number): Float64Array {
  const inverse = table.slice();
  for (let pivot = 0; pivot < size; pivot++) {
    const from = pivot * size;
    const by = 1 / inverse[from + pivot]!;
    inverse[from + pivot] = 1;
    for (let at = 0; at < size; at++) inverse[from + at]! *= by;
    for (let row = 0; row < size; row++) {
      if (row === pivot) continue;
      const factor = inverse[row * size + pivot]!;
      inverse[row * size + pivot] = 0;
      for (let at = 0; at < size; at++) inverse[row * size + at]! -= factor * inverse[from + at]!;
    }
  }
  return inverse;
}
