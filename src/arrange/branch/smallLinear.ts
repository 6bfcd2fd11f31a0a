// Solves small linear assignments over and over, with nothing allocated (assignment/linear.ts is for single large ones).
// Shortest augmenting paths in the form of Jonker and Volgenant, Computing 38 (1987) 325–340.

/** Reduced costs below this count as 0 for the first, greedy part. */
const NOTHING = 1e-13;

export class SmallLinear {
  /** The table to solve, row by row with `size` in a row; left as it is. */
  readonly table: Float64Array;
  readonly rowPrice: Float64Array;
  readonly columnPrice: Float64Array;
  readonly columnOf: Int32Array;
  private readonly rowOf: Int32Array;
  private readonly distance: Float64Array;
  private readonly cameFrom: Int32Array;
  private readonly settled: Uint8Array;
  private readonly order: Int32Array;

  constructor(most: number) {
    this.table = new Float64Array(most * most);
    this.rowPrice = new Float64Array(most);
    this.columnPrice = new Float64Array(most);
    this.columnOf = new Int32Array(most);
    this.rowOf = new Int32Array(most);
    this.distance = new Float64Array(most);
    this.cameFrom = new Int32Array(most);
    this.settled = new Uint8Array(most);
    this.order = new Int32Array(most);
  }

  /** Solves size × size entries and returns the least cost; prices and columns hold until the next call. */
  solve(size: number): number {
    this.reduce(size);
    this.assignZeros(size);
    for (let row = 0; row < size; row++) if (this.columnOf[row]! < 0) this.augment(row, size);
    let cost = 0;
    for (let at = 0; at < size; at++) cost += this.rowPrice[at]! + this.columnPrice[at]!;
    return cost;
  }

  private reduce(size: number): void {
    const { table, rowPrice, columnPrice, rowOf, columnOf } = this;
    columnPrice.fill(Number.POSITIVE_INFINITY, 0, size);
    for (let row = 0; row < size; row++) {
      let least = Number.POSITIVE_INFINITY;
      const from = row * size;
      for (let at = from; at < from + size; at++) if (table[at]! < least) least = table[at]!;
      rowPrice[row] = least;
      for (let column = 0; column < size; column++) {
        const over = table[from + column]! - least;
        if (over < columnPrice[column]!) columnPrice[column] = over;
      }
      rowOf[row] = -1;
      columnOf[row] = -1;
    }
  }

  private assignZeros(size: number): void {
    const { table, rowPrice, columnPrice, rowOf, columnOf } = this;
    for (let row = 0; row < size; row++) {
      for (let column = 0; column < size; column++) {
        if (rowOf[column]! >= 0) continue;
        if (table[row * size + column]! - rowPrice[row]! - columnPrice[column]! > NOTHING) continue;
        rowOf[column] = row;
        columnOf[row] = column;
        break;
      }
    }
  }

  private augment(start: number, size: number): void {
    const { distance, settled, order, rowOf, columnOf, cameFrom, rowPrice, columnPrice } = this;
    distance.fill(Number.POSITIVE_INFINITY, 0, size);
    settled.fill(0, 0, size);
    let row = start;
    let reached = 0;
    let count = 0;
    let column = this.relax(row, reached, size);
    for (reached = distance[column]!; rowOf[column]! >= 0; reached = distance[column]!) {
      settled[column] = 1;
      order[count++] = column;
      row = rowOf[column]!;
      column = this.relax(row, reached, size);
    }
    rowPrice[start]! += reached;
    for (let at = 0; at < count; at++) {
      const less = reached - distance[order[at]!]!;
      rowPrice[rowOf[order[at]!]!]! += less;
      columnPrice[order[at]!]! -= less;
    }
    while (column >= 0) {
      const from = cameFrom[column]!;
      const before = columnOf[from]!;
      rowOf[column] = from;
      columnOf[from] = column;
      column = from === start ? -1 : before;
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
}
