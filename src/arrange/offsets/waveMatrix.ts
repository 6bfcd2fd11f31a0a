// The matrix of one wave: every item against every other, and the wall itself in the last row. As every cell of the wall holds one
// item, the matrix is 0 along one vector; what has no negative eigenvalue is looked for beside that.
import { mirrorOf, mirrorRows, transpose } from '../branch/mirrors';
import { positivePartOf } from '../branch/positivePart';

export class WaveMatrix {
  private readonly width: number;
  private readonly table: Float64Array;

  constructor(private readonly size: number) {
    this.width = size + 1;
    this.table = new Float64Array(this.width ** 2);
  }

  /** Writes the nearest matrix that is 0 along `zero` and has no negative eigenvalue into `pairs` and `places`; returns its corner. */
  *positivePart(
    pairs: Float64Array,
    places: Float64Array,
    whole: number,
    zero: Float64Array,
  ): Generator<void, number> {
    const { size, width, table } = this;
    for (let row = 0, at = 0; row < size; row++) {
      for (let column = 0; column <= row; column++, at++) this.put(row, column, pairs[at]!);
      this.put(size, row, places[row]!);
    }
    table[width * width - 1] = whole;
    // A mirror takes the vector to the last axis, and back.
    const mirror = mirrorOf(zero);
    this.reflect(mirror);
    const beside = new Float64Array(size * size);
    for (let row = 0; row < size; row++)
      beside.set(table.subarray(row * width, row * width + size), row * size);
    const positive = yield* positivePartOf(beside, size);
    table.fill(0);
    for (let row = 0; row < size; row++)
      table.set(positive.subarray(row * size, (row + 1) * size), row * width);
    this.reflect(mirror);
    for (let row = 0, at = 0; row < size; row++) {
      for (let column = 0; column <= row; column++, at++) pairs[at] = table[row * width + column]!;
      places[row] = table[size * width + row]!;
    }
    return table[width * width - 1]!;
  }

  private put(row: number, column: number, one: number): void {
    this.table[row * this.width + column] = one;
    this.table[column * this.width + row] = one;
  }

  /** Both sides of the table along a mirror. */
  private reflect(mirror: Float64Array): void {
    const { width, table } = this;
    for (let side = 0; side < 2; side++) {
      mirrorRows(table, width, 1, mirror);
      transpose(table, width);
    }
  }
}
