// Looks at the top in groups: every group of 2 × 2 and of 3 × 3 cells (also those that stick out over the edge) should average
// like the whole. The sum of the squared group means is a quadratic form over the cells; this file makes its table.
import type { ContactGraph } from './contactGraph';
import { contactGraph } from './contactGraph';

/** Side lengths of the groups, in cells. */
const GROUPS = [2, 3] as const;
/** The most rows or columns apart that two cells of a group can be. */
export const REACH = Math.max(...GROUPS) - 1;

/**
 * The table K of the form Σ_c Σ_d K(c, d) r_c r_d, for rows × columns cells: K(c, d) = Σ_m max(0, 1 − |Δrow|/m) ·
 * max(0, 1 − |Δcolumn|/m) over m = 2, 3: the sum over all m × m groups of their squared sum over m². K(c, c) is
 * `own`; all others are the weights of `near`, at most 24 a cell. Positive definite: no arrangement is below 0.
 */
export interface Kernel {
  readonly own: number;
  readonly near: ContactGraph;
}

const kernels = new Map<string, Kernel>();

/** The kernel of a wall; kept, since it depends on rows and columns alone. */
export function kernelOf(rows: number, columns: number): Kernel {
  const key = `${rows}x${columns}`;
  let kernel = kernels.get(key);
  if (!kernel) {
    kernel = { own: GROUPS.length, near: contactGraph(neighbourLists(rows, columns)) };
    kernels.set(key, kernel);
  }
  return kernel;
}

/** The kernel of cells that lie on a grid with gaps: the same weights, by the places of the cells. */
export function kernelOn(rowOf: Int32Array, columnOf: Int32Array): Kernel {
  const lists = Array.from(rowOf, (row, cell): [number, number][] =>
    Array.from(rowOf.keys()).flatMap((other): [number, number][] => {
      const down = rowOf[other]! - row;
      const across = columnOf[other]! - columnOf[cell]!;
      const near = other !== cell && Math.abs(down) <= REACH && Math.abs(across) <= REACH;
      return near ? [[other, tents(down, across)]] : [];
    }),
  );
  return { own: GROUPS.length, near: contactGraph(lists) };
}

/** The groups whose squared sums the kernel adds up: cells, ascending, and weight. Groups of the same cells are one. */
export function groupsOn(
  rowOf: ArrayLike<number>,
  columnOf: ArrayLike<number>,
): { readonly cells: readonly number[]; readonly weight: number }[] {
  const cells = Array.from({ length: rowOf.length }, (_, cell) => cell);
  const found = new Map<string, { cells: number[]; weight: number }>();
  for (const side of GROUPS) {
    for (let row = 1 - side; row <= Math.max(...cells.map((cell) => rowOf[cell]!)); row++) {
      for (let column = 1 - side; column <= Math.max(...cells.map((cell) => columnOf[cell]!)); column++) {
        const within = (at: number, from: number) => at >= from && at < from + side;
        const group = cells.filter((cell) => within(rowOf[cell]!, row) && within(columnOf[cell]!, column));
        if (group.length === 0) continue;
        const known = found.get(group.join()) ?? { cells: group, weight: 0 };
        known.weight += 1 / side ** 2;
        found.set(group.join(), known);
      }
    }
  }
  return [...found.values()];
}

function neighbourLists(rows: number, columns: number): [number, number][][] {
  return Array.from({ length: rows * columns }, (_, cell) => {
    const row = Math.floor(cell / columns);
    const column = cell % columns;
    const list: [number, number][] = [];
    for (let r = Math.max(0, row - REACH); r <= Math.min(rows - 1, row + REACH); r++) {
      for (let c = Math.max(0, column - REACH); c <= Math.min(columns - 1, column + REACH); c++) {
        if (r !== row || c !== column) list.push([r * columns + c, tents(r - row, c - column)]);
      }
    }
    return list;
  });
}

/** K of two cells so many rows and columns apart; 0 from `REACH` + 1 on. */
export function tents(down: number, across: number): number {
  return GROUPS.reduce(
    (sum, side) => sum + Math.max(0, 1 - Math.abs(down) / side) * Math.max(0, 1 - Math.abs(across) / side),
    0,
  );
}

/** The quadratic form of one value a cell; cells without a block hold 0. */
export function quadratic(kernel: Kernel, values: Float64Array): number {
  const { near, own } = kernel;
  let sum = 0;
  for (let cell = 0; cell < near.size; cell++) {
    const value = values[cell]!;
    if (value === 0) continue;
    let lag = own * value;
    for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) {
      lag += near.weight[at]! * values[near.to[at]!]!;
    }
    sum += value * lag;
  }
  return sum;
}

/** Σ K(c, c) and Σ K(c, d), c ≠ d, over the cells that are filled. */
export function kernelSums(kernel: Kernel, filled: ArrayLike<number>): { own: number; pairs: number } {
  const { near } = kernel;
  let own = 0;
  let pairs = 0;
  for (let cell = 0; cell < near.size; cell++) {
    if (!filled[cell]) continue;
    own += kernel.own;
    for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) {
      if (filled[near.to[at]!]) pairs += near.weight[at]!;
    }
  }
  return { own, pairs };
}
