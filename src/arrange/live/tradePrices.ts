// Keeps what a wedge would cost in each cell while wedges are traded: the price of a wedge type is how much more evenness costs
// for every little more of it there. Figures that add up (areas of fabrics; means too, where all wedges are of one size) are
// read off four prices for each trade; liveSpread.ts works out the others.
import { type CostTables, FIRST_FABRIC, MOST_TABLED } from './costTables';
import { NONE } from './hanging';

/** Where the scaled figures of blocks and their sums over neighbours are kept: cell or block × channel. */
export interface FigureSums {
  /** Σ over the neighbouring cells of K · figure, by cell. */
  readonly lag: Float64Array;
  readonly figures: Float64Array;
  readonly blockIn: Int32Array;
}

export class TradePrices {
  private readonly tables: CostTables;
  private readonly sums: FigureSums;
  /** The column of each type in the tables, NONE until it is first asked for: pictures and orders only tried take none. */
  private readonly columnOf: Int32Array;
  /** The type of each column in use. */
  private readonly typeIn: number[] = [];
  /** So many columns there is room for; doubled where more types are traded. */
  private room = 32;
  /** Σ over all cells of K · (figures there · figures of a type): cell × column. NaN where it is to be worked out. */
  private prices: Float64Array;
  /** Figures of one type · figures of another; a row is worked out as a whole. NaN in the diagonal of one that is not. */
  private products: Float64Array;
  /** The first channel whose figures add up; all after it do too. */
  readonly first: number;
  /** Area of a block, where all are of one. */
  private readonly area: number;
  /** What a wedge of a type adds to the figures of its block, as far as it is known. */
  private readonly ofType: (Float64Array | null)[] = [];

  constructor(tables: CostTables, sums: FigureSums) {
    this.tables = tables;
    this.sums = sums;
    this.area = tables.model.area.find((area) => area > 0) ?? 1;
    this.first = firstAdditive(tables);
    this.columnOf = new Int32Array(tables.model.typeRim.length).fill(NONE);
    this.prices = this.unknown(sums.blockIn.length);
    this.products = this.unknown(this.room);
  }

  private unknown(rows: number): Float64Array {
    return new Float64Array(rows * this.room).fill(Number.NaN);
  }

  /** The column of a type; NONE where all are taken. */
  private column(type: number): number {
    const known = this.columnOf[type]!;
    if (known !== NONE || this.typeIn.length === MOST_TABLED) return known;
    if (this.typeIn.length === this.room) {
      this.room *= 2;
      this.prices = this.unknown(this.sums.blockIn.length);
      this.products = this.unknown(this.room);
    }
    const column = this.typeIn.push(type) - 1;
    this.columnOf[type] = column;
    // Rows that are worked out already get this column with it.
    this.rowOf(column);
    return column;
  }

  /**
   * What an exchange adds to the score by the figures from `first` on: the block of a cell gives a wedge of type `old` for one of
   * type `next`, the block of the other cell the other way round. `between` is K of the two cells.
   */
  exchangeCost(cell: number, old: number, next: number, other: number, between: number): number {
    const apart = this.product(old, old) + this.product(next, next) - 2 * this.product(old, next);
    const here = this.priceIn(cell, next) - this.priceIn(cell, old);
    const { own } = this.tables.scales.kernel;
    const there = this.priceIn(other, old) - this.priceIn(other, next);
    return 2 * (here + there) + 2 * (own - between) * apart;
  }

  /** Brings the prices up to date after the block of a cell got a wedge of type `next` for one of type `old`. */
  exchanged(cell: number, old: number, next: number): void {
    const { near, own } = this.tables.scales.kernel;
    this.change(cell, own, old, next);
    for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++)
      this.change(near.to[at]!, near.weight[at]!, old, next);
  }

  private change(cell: number, weight: number, old: number, next: number): void {
    const oldColumn = this.column(old);
    const nextColumn = this.column(next);
    const { prices, products } = this;
    const from = cell * this.room;
    if (oldColumn === NONE || nextColumn === NONE) {
      this.forget(cell);
      return;
    }
    const less = this.rowOf(oldColumn);
    const more = this.rowOf(nextColumn);
    for (let at = 0; at < this.typeIn.length; at++)
      prices[from + at]! += weight * (products[more + at]! - products[less + at]!);
  }

  private forget(cell: number): void {
    const from = cell * this.room;
    this.prices.fill(Number.NaN, from, from + this.typeIn.length);
  }

  /** Forgets all prices near a cell, after its block has changed. */
  forgetNear(cell: number): void {
    const { near } = this.tables.scales.kernel;
    this.forget(cell);
    for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) this.forget(near.to[at]!);
  }

  /** Forgets what is known of a type, after its figures have changed. */
  forgetType(type: number): void {
    const { prices, products, room } = this;
    this.ofType[type] = null;
    const column = this.columnOf[type]!;
    if (column === NONE) return;
    for (let at = column; at < products.length; at += room) products[at] = Number.NaN;
    for (let at = column; at < prices.length; at += room) prices[at] = Number.NaN;
  }

  private priceIn(cell: number, type: number): number {
    const column = this.column(type);
    if (column === NONE) return this.workedOut(cell, type);
    const at = cell * this.room + column;
    const price = this.prices[at]!;
    if (!Number.isNaN(price)) return price;
    const found = this.workedOut(cell, type);
    this.prices[at] = found;
    return found;
  }

  private workedOut(cell: number, type: number): number {
    const { tables, sums, first } = this;
    const { channels } = tables;
    const here = cell * channels;
    const block = sums.blockIn[cell]! * channels;
    const { own } = tables.scales.kernel;
    const figures = this.figuresOf(type);
    let price = 0;
    for (let at = first; at < channels; at++)
      price += (sums.lag[here + at]! + own * sums.figures[block + at]!) * figures[at]!;
    return price;
  }

  private product(one: number, other: number): number {
    const column = this.column(one);
    const otherColumn = this.column(other);
    if (column === NONE || otherColumn === NONE) return this.multiplied(one, other);
    return this.products[this.rowOf(column) + otherColumn]!;
  }

  /** Where the row of a column begins, worked out if it is not yet. */
  private rowOf(column: number): number {
    const { products, room, typeIn } = this;
    const row = column * room;
    if (!Number.isNaN(products[row + column]!)) return row;
    for (let other = 0; other < typeIn.length; other++) {
      const product = this.multiplied(typeIn[column]!, typeIn[other]!);
      products[row + other] = product;
      // A row that is not worked out yet shows by its own diagonal, which this leaves alone.
      products[other * room + column] = product;
    }
    return row;
  }

  private multiplied(one: number, other: number): number {
    const ones = this.figuresOf(one);
    const others = this.figuresOf(other);
    let sum = 0;
    for (let at = this.first; at < ones.length; at++) sum += ones[at]! * others[at]!;
    return sum;
  }

  private figuresOf(type: number): Float64Array {
    this.ofType[type] ??= wedgeFigures(this.tables, type, this.first, this.area);
    return this.ofType[type];
  }
}

/** What a wedge of a type adds to the scaled figures of a block of some area, from channel `first` on; 0 before it. */
export function wedgeFigures(
  { model, fabrics, scale, channels }: CostTables,
  type: number,
  first: number,
  area: number,
): Float64Array {
  const figures = new Float64Array(channels);
  if (first === 0) {
    const part = model.typeArea[type]! / area;
    [model.typeLightness, model.typeA, model.typeB].forEach((mean, at) => {
      figures[at] = part * mean[type]! * scale[at]!;
    });
  }
  fabrics.forEach((fabric, at) => {
    figures[FIRST_FABRIC + at] =
      model.typeFabricArea[type * model.fabricCount + fabric]! * scale[FIRST_FABRIC + at]!;
  });
  return figures;
}

/**
 * The first channel whose figures add up: 0, means too, where all blocks and all wedges of a tip are of one area and nothing is wanted
 * in an order or together; else that of the first fabric.
 */
export function firstAdditive({ model, scales }: CostTables): number {
  const { intent } = scales;
  const even = (areas: Float64Array) => areas.every((area) => Math.abs(area - areas[0]!) < 1e-9 * area);
  const all =
    intent.value === 'scattered' &&
    intent.colour === 'scattered' &&
    even(model.area.filter((area) => area > 0)) &&
    [0, 1].every((tip) => even(model.typeArea.filter((_, type) => type % 2 === tip)));
  return all ? 0 : FIRST_FABRIC;
}
