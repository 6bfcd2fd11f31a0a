// Finds weights for the cells of a wall, and for cells side by side, so that the spread of any layout is at least the weighted sum
// of what each block is off the average by itself and of what each two are together. Corners of the wall get most.

/** Rounds of the ascent; the barrier shrinks by `SHRINK` in each. */
const ROUNDS = 80;
const SHRINK = 0.82;
/** Kept back of each weight, for rounding. */
const KEPT_BACK = 1e-6;

/** A sum of squares over one cell or two, and the least it can be: x² of one; own · (x² + y²) + (x + y)² of two. */
export interface Form {
  readonly cells: readonly [number] | readonly [number, number];
  /** How much the squares of two cells count beside that of their sum; nothing for one. */
  readonly own: number;
  readonly least: number;
}

/**
 * Weights w ≥ 0 of the forms F with xᵀKx ≥ Σ w F(x) for every x, Σ w · least near the largest there is: ascent on Σ w · least +
 * μ log det(K − Σ w F), one weight after the other, μ → 0 (a barrier method). K must be positive definite. O(forms · n²) a round;
 * yields after each.
 */
export function* weightsUnder(
  kernel: Float64Array,
  size: number,
  forms: readonly Form[],
): Generator<void, Float64Array> {
  const weights = new Float64Array(forms.length);
  const inverse = inverseOf(kernel, size);
  let barrier = 0.5 * forms.reduce((most, { least }) => Math.max(most, least), 0);
  for (let round = 0; round < ROUNDS; round++) {
    forms.forEach((form, at) => {
      const more = Math.max(-weights[at]!, bestStep(inverse, size, form, barrier));
      weights[at]! += more;
      lessen(inverse, size, form.cells, more);
      if (form.cells.length === 2)
        for (const cell of form.cells) lessen(inverse, size, [cell], more * form.own);
    });
    barrier *= SHRINK;
    yield;
  }
  return weights.map((weight) => weight * (1 - KEPT_BACK));
}

/**
 * The x at which x · least + μ log det(1 − x F K⁻¹) is most. The determinant is 1 − S x + P x², S and P the trace and determinant
 * of F K⁻¹ over the cells of the form, so that x is the smaller root of a quadratic equation.
 */
function bestStep(
  inverse: Float64Array,
  size: number,
  { cells: [one, other], own, least }: Form,
  barrier: number,
): number {
  const first = inverse[one * size + one]!;
  let trace = first;
  let determinant = 0;
  if (other !== undefined) {
    const second = inverse[other * size + other]!;
    const between = inverse[one * size + other]!;
    trace = (1 + own) * (first + second) + 2 * between;
    determinant = ((1 + own) ** 2 - 1) * (first * second - between ** 2);
  }
  const apart = least ** 2 * Math.max(0, trace ** 2 - 4 * determinant) + (2 * barrier * determinant) ** 2;
  return (2 * (least - barrier * trace)) / (least * trace - 2 * barrier * determinant + Math.sqrt(apart));
}

/** The inverse of A − more · e eᵀ from that of A (Sherman and Morrison 1950), in place; e is 1 in the cells, else 0. */
function lessen(inverse: Float64Array, size: number, cells: readonly number[], more: number): void {
  const column = new Float64Array(size);
  for (const cell of cells) for (let at = 0; at < size; at++) column[at]! += inverse[cell * size + at]!;
  const own = cells.reduce((sum, cell) => sum + column[cell]!, 0);
  const factor = more / (1 - more * own);
  for (let row = 0; row < size; row++) {
    const by = factor * column[row]!;
    for (let at = 0; at < size; at++) inverse[row * size + at]! += by * column[at]!;
  }
}

/** The inverse of a positive definite table (Gauss–Jordan; needs no exchanging of rows). */
export function inverseOf(table: Float64Array, size: number): Float64Array {
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
