// Bounds the spread from below by the blocks that cannot change, whatever hangs in the other cells.
import { kernelTable, residual, type Spread } from './spreadAssignment';

/**
 * The figures of the cells that may change are set free. Over all real numbers x, the form of (r, x) is least at
 * x = −K_xx⁻¹ K_xr r, where it is rᵀ K_rr r − bᵀ K_xx⁻¹ b with b = K_xr r (Schur complement; K is positive definite). No
 * figures that can be had come below it. Likeness wanted and moments count as 0. O(n³) in cells.
 */
export function settledSpread(spread: Spread, settled: (cell: number) => boolean): number {
  const { tables, cells } = spread;
  const fixed = cells.filter((cell) => settled(cell));
  const open = cells.filter((cell) => !settled(cell));
  if (fixed.length === 0) return 0;
  const order = Int32Array.from([...open, ...fixed]);
  const kernel = kernelTable(tables, order);
  const size = order.length;
  const at = (row: number, column: number) => kernel[row * size + column]!;
  const factor = choleskyOf(open.length, at);
  let bound = 0;
  for (let channel = 0; channel < tables.channels; channel++) {
    if (tables.sign[channel]! < 0) continue;
    const figures = Float64Array.from(fixed, (cell) =>
      residual(spread, tables.model.blockIn[cell]!, cell, channel),
    );
    for (let row = 0; row < fixed.length; row++) {
      for (let column = 0; column < fixed.length; column++) {
        bound += figures[row]! * figures[column]! * at(open.length + row, open.length + column);
      }
    }
    const pull = Float64Array.from(open.keys(), (row) =>
      figures.reduce((sum, one, column) => sum + one * at(row, open.length + column), 0),
    );
    bound -= squareUnder(factor, pull);
  }
  return Math.max(0, bound);
}

/** L with L Lᵀ = K, row by row. */
function choleskyOf(size: number, at: (row: number, column: number) => number): Float64Array {
  const factor = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      let sum = at(row, column);
      for (let k = 0; k < column; k++) sum -= factor[row * size + k]! * factor[column * size + k]!;
      factor[row * size + column] =
        row === column ? Math.sqrt(Math.max(1e-12, sum)) : sum / factor[column * size + column]!;
    }
  }
  return factor;
}

/** bᵀ K⁻¹ b = |L⁻¹ b|². */
function squareUnder(factor: Float64Array, pull: Float64Array): number {
  const size = pull.length;
  const solved = new Float64Array(size);
  let square = 0;
  for (let row = 0; row < size; row++) {
    let sum = pull[row]!;
    for (let k = 0; k < row; k++) sum -= factor[row * size + k]! * solved[k]!;
    solved[row] = sum / factor[row * size + row]!;
    square += solved[row]! ** 2;
  }
  return square;
}
