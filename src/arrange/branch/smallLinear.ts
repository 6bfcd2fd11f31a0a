// Solves small linear assignments over and over, with nothing allocated: a greedy part first, then the paths of assignment/linear.ts.
import { PathSearch } from '../assignment/linear';

/** Reduced costs below this count as 0 for the first, greedy part. */
const NOTHING = 1e-13;

export class SmallLinear {
  /** The table to solve, row by row with `size` in a row; left as it is. */
  readonly table: Float64Array;
  readonly rowPrice: Float64Array;
  readonly columnPrice: Float64Array;
  readonly columnOf: Int32Array;
  private readonly rowOf: Int32Array;
  private readonly search: PathSearch;

  constructor(most: number) {
    this.table = new Float64Array(most * most);
    this.rowPrice = new Float64Array(most);
    this.columnPrice = new Float64Array(most);
    this.columnOf = new Int32Array(most);
    this.rowOf = new Int32Array(most);
    this.search = new PathSearch(
      this.table,
      this.rowPrice,
      this.columnPrice,
      this.rowOf,
      this.columnOf,
      most,
    );
  }

  /** Solves size × size entries and returns the least cost; prices and columns hold until the next call. */
  solve(size: number): number {
    this.reduce(size);
    this.assignZeros(size);
    for (let row = 0; row < size; row++) if (this.columnOf[row]! < 0) this.search.assign(row, size);
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
}
