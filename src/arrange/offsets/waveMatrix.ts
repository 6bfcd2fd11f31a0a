// The matrix of one wave: every item against every other, and the wall itself in the last row. As every cell of the wall holds one
// item, the matrix is 0 along one vector; what has no negative eigenvalue is looked for beside that.
import { positivePartOf } from '../branch/positivePart';
import { mirrorOf } from '../products/productTable';

export class WaveMatrix {
  private readonly width: number;
  private readonly table: Float64Array;
  private readonly product: Float64Array;

  constructor(private readonly size: number) {
    this.width = size + 1;
    this.table = new Float64Array(this.width ** 2);
    this.product = new Float64Array(this.width);
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

  /** table ← H table H, H = I − v vᵀ with v of length √2: less v wᵀ + w vᵀ, w = table v − v (vᵀ table v)/2. */
  private reflect(mirror: Float64Array): void {
    const { width, table, product } = this;
    let inner = 0;
    for (let row = 0; row < width; row++) {
      let sum = 0;
      for (let column = 0, at = row * width; column < width; column++, at++)
        sum += table[at]! * mirror[column]!;
      product[row] = sum;
      inner += sum * mirror[row]!;
    }
    for (let row = 0; row < width; row++) product[row]! -= (inner / 2) * mirror[row]!;
    for (let row = 0; row < width; row++) {
      const one = mirror[row]!;
      const other = product[row]!;
      for (let column = 0, at = row * width; column < width; column++, at++)
        table[at]! -= one * product[column]! + other * mirror[column]!;
    }
  }
}
