// A table over every two items in two cells that the symmetries of the wall leave as it is, and the part of it that an arrangement
// can have: every item once, every cell once. That part is put into one small table for each sort of patterns and back.
import { mirrorOf, mirrorRows, transpose } from '../branch/mirrors';
import type { Patterns, Sort } from './patterns';

export class ProductTable {
  /** Entries: (item × orbits + orbit) × size² + other item × size + other cell; the item is in the first cell of the orbit. */
  readonly length: number;
  readonly parts: readonly SortPart[];

  constructor(
    readonly size: number,
    readonly patterns: Patterns,
  ) {
    this.length = size * patterns.first.length * size * size;
    this.parts = patterns.sorts
      .map((sort) => new SortPart(size, patterns, sort))
      .filter(({ width }) => width > 0);
  }

  /** Multiplications, about, that eigenvectors of all small tables take, over a constant. */
  get work(): number {
    return this.parts.reduce((sum, { width }) => sum + width ** 3, 0);
  }
}

/**
 * The small table of one sort. Mirrors that take the vector of ones to the last axis, of items and of even patterns, leave the
 * vectors that sum to 0 on all other axes; the vector with the same everywhere stays too.
 */
class SortPart {
  /** Rows of the small table. */
  readonly width: number;
  private readonly all: number;
  private readonly kept: Int32Array;
  private readonly table: Float64Array;
  /** √ of how many cells are in the orbit of a pattern. */
  private readonly root: Float64Array;
  private readonly itemMirror: Float64Array;
  private readonly cellMirror: Float64Array | null;

  constructor(
    private readonly size: number,
    private readonly patterns: Patterns,
    private readonly sort: Sort,
  ) {
    const count = sort.orbits.length;
    this.all = size * count;
    this.table = new Float64Array(this.all * this.all);
    this.root = Float64Array.from(sort.orbits, (orbit) => Math.sqrt(patterns.count[orbit]!));
    this.itemMirror = mirrorOf(new Float64Array(size).fill(1));
    this.cellMirror = sort.even ? mirrorOf(this.root) : null;
    this.kept = Int32Array.from({ length: this.all }, (_, at) => at).filter((at) => {
      const lastItem = Math.floor(at / count) === size - 1;
      return sort.even ? lastItem === (at % count === count - 1) : !lastItem;
    });
    this.width = this.kept.length;
  }

  /** The small table, width × width. */
  from(products: Float64Array): Float64Array {
    const { size, all, table, root } = this;
    const { orbits, patternOf, sign } = this.sort;
    table.fill(0);
    for (let row = 0; row < all; row++) {
      const pattern = row % orbits.length;
      const item = (row - pattern) / orbits.length;
      let at = (item * this.patterns.first.length + orbits[pattern]!) * size * size;
      for (let other = 0; other < size; other++) {
        const to = row * all + other * orbits.length;
        for (let cell = 0; cell < size; cell++, at++) {
          const there = patternOf[cell]!;
          if (there >= 0)
            table[to + there]! += ((sign[cell]! * root[pattern]!) / root[there]!) * products[at]!;
        }
      }
    }
    this.mirrorBoth();
    const { kept, width } = this;
    const small = new Float64Array(width * width);
    for (let row = 0; row < width; row++) {
      for (let column = 0; column <= row; column++) {
        const one = table[kept[row]! * all + kept[column]!]!;
        const other = table[kept[column]! * all + kept[row]!]!;
        small[row * width + column] = (one + other) / 2;
        small[column * width + row] = (one + other) / 2;
      }
    }
    return small;
  }

  /** Adds a small table to products. */
  addTo(products: Float64Array, small: Float64Array): void {
    const { size, all, table, root, kept, width } = this;
    const { orbits, patternOf, sign } = this.sort;
    table.fill(0);
    for (let row = 0; row < width; row++)
      for (let column = 0; column < width; column++)
        table[kept[row]! * all + kept[column]!] = small[row * width + column]!;
    this.mirrorBoth();
    for (let row = 0; row < all; row++) {
      const pattern = row % orbits.length;
      const item = (row - pattern) / orbits.length;
      let at = (item * this.patterns.first.length + orbits[pattern]!) * size * size;
      for (let other = 0; other < size; other++) {
        const from = row * all + other * orbits.length;
        for (let cell = 0; cell < size; cell++, at++) {
          const there = patternOf[cell]!;
          if (there >= 0)
            products[at]! += (sign[cell]! * table[from + there]!) / (root[pattern]! * root[there]!);
        }
      }
    }
  }

  private mirrorBoth(): void {
    const { table, all, size } = this;
    for (let side = 0; side < 2; side++) {
      mirrorRows(table, all, all / size, this.itemMirror);
      if (this.cellMirror) mirrorRows(table, all, 1, this.cellMirror);
      transpose(table, all);
    }
  }
}
