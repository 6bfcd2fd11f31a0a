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
  /** The first so many types have tables. */
  private readonly tabled: number;
  /** Σ over all cells of K · (figures there · figures of a type): cell × type. NaN where it is to be worked out. */
  private readonly prices: Float64Array;
  /** Figures of one type · figures of another; a row is worked out as a whole. NaN in the diagonal of one that is not. */
  private readonly products: Float64Array;
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
    this.tabled = Math.min(tables.model.typeRim.length, MOST_TABLED);
    this.prices = new Float64Array(sums.blockIn.length * this.tabled).fill(Number.NaN);
    this.products = new Float64Array(this.tabled ** 2).fill(Number.NaN);
  }

  /**
   * What an exchange adds to the score by the figures from `first` on: the block of a cell gives a wedge of type `old` for one of
   * type `next`, the block of the other cell, unless that is NONE, the other way round. `between` is K of the two cells.
   */
  exchangeCost(cell: number, old: number, next: number, other: number, between: number): number {
    const apart = this.product(old, old) + this.product(next, next) - 2 * this.product(old, next);
    const here = this.priceIn(cell, next) - this.priceIn(cell, old);
    const { own } = this.tables.scales.kernel;
    if (other === NONE) return 2 * here + own * apart;
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
    const { tabled, prices, products } = this;
    const from = cell * tabled;
    if (old >= tabled || next >= tabled) {
      prices.fill(Number.NaN, from, from + tabled);
      return;
    }
    const less = this.rowOf(old);
    const more = this.rowOf(next);
    for (let type = 0; type < tabled; type++)
      prices[from + type]! += weight * (products[more + type]! - products[less + type]!);
  }

  /** Forgets all prices near a cell, after its block has changed. */
  forgetNear(cell: number): void {
    const { near } = this.tables.scales.kernel;
    const forget = (one: number) => this.prices.fill(Number.NaN, one * this.tabled, (one + 1) * this.tabled);
    forget(cell);
    for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) forget(near.to[at]!);
  }

  /** Forgets what is known of a type, after its figures have changed. */
  forgetType(type: number): void {
    const { tabled, prices, products } = this;
    this.ofType[type] = null;
    if (type >= tabled) return;
    for (let at = type; at < products.length; at += tabled) products[at] = Number.NaN;
    for (let at = type; at < prices.length; at += tabled) prices[at] = Number.NaN;
  }

  private priceIn(cell: number, type: number): number {
    if (type >= this.tabled) return this.workedOut(cell, type);
    const at = cell * this.tabled + type;
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
    if (one >= this.tabled || other >= this.tabled) return this.multiplied(one, other);
    return this.products[this.rowOf(one) + other]!;
  }

  /** Where the row of a type begins, worked out if it is not yet. */
  private rowOf(type: number): number {
    const { tabled, products } = this;
    const row = type * tabled;
    if (!Number.isNaN(products[row + type]!)) return row;
    for (let other = 0; other < tabled; other++) {
      const product = this.multiplied(type, other);
      products[row + other] = product;
      // A row that is not worked out yet shows by its own diagonal, which this leaves alone.
      products[other * tabled + type] = product;
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
