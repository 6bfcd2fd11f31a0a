// Owns the linear assignment problem: every row to a column of its own, at least cost, by shortest augmenting paths
// (Kuhn 1955; Munkres 1957; in the O(n³) form of Jonker and Volgenant, Computing 38 (1987) 325–340). Knows nothing of quilts.

import { atOnce, PART } from '../../model/work/parts';

export interface LinearAssignment {
  readonly columnOf: Int32Array;
  readonly cost: number;
  /** rowPrice + columnPrice ≤ cost everywhere, equal where assigned: the proof that it cannot be cheaper. */
  readonly rowPrice: Float64Array;
  readonly columnPrice: Float64Array;
}

/** The cheapest assignment of a size × size table (row by row; any finite numbers). Size 0 costs 0. */
export function solveLinear(table: Float64Array, size: number): LinearAssignment {
  return atOnce(solvingLinear(table, size));
}

/** The same, yielding every few milliseconds. */
export function* solvingLinear(table: Float64Array, size: number): Generator<void, LinearAssignment> {
  if (table.length !== size * size) {
    throw new RangeError(`solveLinear: ${table.length} entries, not ${size * size}`);
  }
  const rowOf = new Int32Array(size).fill(-1);
  const columnOf = new Int32Array(size).fill(-1);
  const rowPrice = new Float64Array(size);
  const columnPrice = cheapestOfColumns(table, size);
  const search = new PathSearch(table, rowPrice, columnPrice, rowOf, columnOf, size);
  for (let row = 0; row < size; row++) {
    if (search.looked > PART) {
      search.looked = 0;
      yield;
    }
    search.assign(row, size);
  }
  let cost = 0;
  for (let row = 0; row < size; row++) cost += table[row * size + columnOf[row]!]!;
  return { columnOf, cost, rowPrice, columnPrice };
}

function cheapestOfColumns(table: Float64Array, size: number): Float64Array {
  const cheapest = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  for (let at = 0; at < table.length; at++) {
    const column = at % size;
    if (table[at]! < cheapest[column]!) cheapest[column] = table[at]!;
  }
  return cheapest;
}

/**
 * Dijkstra's search from a free row to the nearest free column over reduced costs, prices mended on the way out. It allocates once, for
 * `most` rows, and may be used for many tables of that size or smaller, row by row in `table`.
 */
export class PathSearch {
  /** Entries of the table looked at; whoever pauses sets it back. */
  looked = 0;
  /** The row before each column on the path found. */
  private readonly cameFrom: Int32Array;
  private readonly distance: Float64Array;
  private readonly settled: Uint8Array;
  private readonly order: Int32Array;

  constructor(
    private readonly table: Float64Array,
    private readonly rowPrice: Float64Array,
    private readonly columnPrice: Float64Array,
    private readonly rowOf: Int32Array,
    private readonly columnOf: Int32Array,
    most: number,
  ) {
    this.cameFrom = new Int32Array(most);
    this.distance = new Float64Array(most);
    this.settled = new Uint8Array(most);
    this.order = new Int32Array(most);
  }

  /** Gives a free row a column in a table of this size; others may change theirs. */
  assign(start: number, size: number): void {
    const { cameFrom, rowOf, columnOf } = this;
    let column = this.shortestFrom(start, size);
    while (column >= 0) {
      const from = cameFrom[column]!;
      const before = columnOf[from]!;
      rowOf[column] = from;
      columnOf[from] = column;
      column = from === start ? -1 : before;
    }
  }

  private shortestFrom(start: number, size: number): number {
    const { distance, settled, order, rowOf } = this;
    distance.fill(Number.POSITIVE_INFINITY, 0, size);
    settled.fill(0, 0, size);
    let row = start;
    let reached = 0;
    for (let count = 0; ; count++) {
      const column = this.relax(row, reached, size);
      reached = distance[column]!;
      if (rowOf[column]! < 0) {
        this.mendPrices(start, reached, count);
        this.looked += (count + 1) * size;
        return column;
      }
      settled[column] = 1;
      order[count] = column;
      row = rowOf[column]!;
    }
  }

  /** Looks along one row and returns the nearest column not yet settled. */
  private relax(row: number, reached: number, size: number): number {
    const { table, rowPrice, columnPrice, distance, settled, cameFrom } = this;
    const base = reached - rowPrice[row]!;
    let nearest = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let column = 0; column < size; column++) {
      if (settled[column]) continue;
      const length = base + table[row * size + column]! - columnPrice[column]!;
      if (length < distance[column]!) {
        distance[column] = length;
        cameFrom[column] = row;
      }
      if (distance[column]! < least) {
        least = distance[column]!;
        nearest = column;
      }
    }
    return nearest;
  }

  private mendPrices(start: number, reached: number, count: number): void {
    const { distance, order, rowOf, rowPrice, columnPrice } = this;
    rowPrice[start]! += reached;
    for (let at = 0; at < count; at++) {
      const column = order[at]!;
      const less = reached - distance[column]!;
      rowPrice[rowOf[column]!]! += less;
      columnPrice[column]! -= less;
    }
  }
}
