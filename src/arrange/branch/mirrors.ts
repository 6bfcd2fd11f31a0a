// Mirrors along a vector (Householder) of the rows and columns of a square table, for relaxations that leave out what is known along it.

/** The vector of length √2 along which a mirror takes `from` to the last axis; zeros where it lies there. */
export function mirrorOf(from: Float64Array): Float64Array {
  const length = Math.hypot(...from);
  const along = from.map((one, at) => one / length - (at === from.length - 1 ? 1 : 0));
  const own = Math.hypot(...along);
  return own < 1e-12 ? along.fill(0) : along.map((one) => (Math.SQRT2 * one) / own);
}

/** Mirrors every column of a square table; the axis of a row is its number over `stride`, less whole rounds. */
export function mirrorRows(table: Float64Array, all: number, stride: number, mirror: Float64Array): void {
  const axes = mirror.length;
  const inner = new Float64Array(all);
  for (let start = 0; start < all; start += stride * axes) {
    for (let row = start; row < start + stride; row++) {
      inner.fill(0);
      for (let axis = 0; axis < axes; axis++) {
        const from = (row + axis * stride) * all;
        for (let column = 0; column < all; column++) inner[column]! += mirror[axis]! * table[from + column]!;
      }
      for (let axis = 0; axis < axes; axis++) {
        const from = (row + axis * stride) * all;
        for (let column = 0; column < all; column++) table[from + column]! -= mirror[axis]! * inner[column]!;
      }
    }
  }
}

/** Transposes a square table in place. */
export function transpose(table: Float64Array, all: number): void {
  for (let row = 1; row < all; row++) {
    for (let column = 0; column < row; column++) {
      const one = table[row * all + column]!;
      table[row * all + column] = table[column * all + row]!;
      table[column * all + row] = one;
    }
  }
}
