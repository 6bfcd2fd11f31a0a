// States an assignment whose cost is a sum of squares: linear costs, forms (items that are alike, in cells that are near) and
// moments. The branch and bound of this folder solves it to the end; what items and cells are is no matter here.

/** Σ cells(c, d) · items(i, j) over all pairs of items i, j in their cells c, d, each with itself too. Both symmetric, size × size. */
export interface Form {
  readonly cells: Float64Array;
  readonly items: Float64Array;
}

/** (Σ cells(c) · items(i))² over the items i in their cells c. */
export interface Moment {
  readonly cells: Float64Array;
  readonly items: Float64Array;
}

export interface ConvexAssignment {
  /** As many items as cells; 30 at most, because sets of them are bits of a number. */
  readonly size: number;
  readonly constant: number;
  /** Cost of an item in a cell: item × size + cell. */
  readonly linear: Float64Array;
  readonly forms: readonly Form[];
  readonly moments: readonly Moment[];
  /** Further cost of two items in two cells, 0 or above: (item × size + cell) × size² + other item × size + other cell. Symmetric. */
  readonly beside: Float64Array;
}

/** More items than this are not taken. */
export const MOST_ITEMS = 30;

/** What an item adds in a cell by its own squares: item × size + cell. */
export function ownSquares({
  size,
  forms,
  moments,
}: Pick<ConvexAssignment, 'size' | 'forms' | 'moments'>): Float64Array {
  return Float64Array.from({ length: size * size }, (_, at) => {
    const item = Math.floor(at / size);
    const cell = at % size;
    let sum = 0;
    for (const { cells, items } of forms) sum += cells[cell * size + cell]! * items[item * size + item]!;
    for (const { cells, items } of moments) sum += (cells[cell]! * items[item]!) ** 2;
    return sum;
  });
}

/** The cost of every two items in two cells, in the order of `beside`. */
export function pairCosts({ size, forms, moments, beside }: ConvexAssignment): Float64Array {
  const places = size * size;
  const table = beside.slice();
  for (let one = 0; one < places; one++) {
    const item = Math.floor(one / size);
    const cell = one % size;
    for (let two = 0; two < places; two++) {
      const other = Math.floor(two / size);
      const there = two % size;
      if (other === item || there === cell) continue;
      let sum = 0;
      for (const { cells, items } of forms) sum += cells[cell * size + there]! * items[item * size + other]!;
      for (const { cells, items } of moments) {
        sum += cells[cell]! * cells[there]! * items[item]! * items[other]!;
      }
      table[one * places + two]! += 2 * sum;
    }
  }
  return table;
}

/** How much of the differences on the diagonals is moved: measured on twelve blocks, a third fewer nodes than without. */
const ITEMS_MOVED = 0.5;
const CELLS_MOVED = -0.1;

/**
 * The same problem with other diagonals: an item's own square costs the same in a cell whether a form or the linear cost has
 * it, but the bound of a form is higher where its diagonals suit it. Chosen by trial, on walls.
 */
export function withDiagonalsMoved(problem: ConvexAssignment): ConvexAssignment {
  const { size } = problem;
  const forms = problem.forms.map(({ cells, items }) => ({
    cells: moved(cells, size, CELLS_MOVED, (row) => {
      let sum = 0;
      for (let at = 0; at < size; at++) sum += cells[row * size + at]!;
      return sum;
    }),
    items: moved(items, size, ITEMS_MOVED, (row) => items[row * size + row]!),
  }));
  const before = ownSquares(problem);
  const after = ownSquares({ ...problem, forms });
  return { ...problem, forms, linear: problem.linear.map((one, at) => one + before[at]! - after[at]!) };
}

/** The table with its diagonal less a part of what each row's figure is above their mean. */
function moved(
  table: Float64Array,
  size: number,
  part: number,
  figureOf: (row: number) => number,
): Float64Array {
  const figures = Array.from({ length: size }, (_, row) => figureOf(row));
  const mean = figures.reduce((sum, one) => sum + one, 0) / size;
  const result = table.slice();
  figures.forEach((one, row) => {
    result[row * size + row]! -= part * (one - mean);
  });
  return result;
}
