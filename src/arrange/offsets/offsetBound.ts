// Bounds an assignment whose costs depend on how two cells lie to each other: by how often every two items lie at every offset. That
// is 0 or above, and for every wave over the wall a matrix without negative eigenvalues: the products of arrange/products/, even
// over all shifts of the wall in a ring (after de Klerk and Sotirov 2010, who use symmetry so), and small enough for a hundred cells. The least
// cost is approached in alternating directions; the prices found make a bound by assignments, which holds whenever it is taken.
import type { ConvexAssignment, Form } from '../branch/convexAssignment';
import { SmallLinear } from '../branch/smallLinear';
import { axisOf } from './axis';
import { type Figures, OffsetTable } from './offsetTable';
import { WaveMatrix } from './waveMatrix';

/** Of the mean cost, times the size: how much figures apart from the others cost at first. By trial on walls of 80 blocks. */
const STIFF = 4;
/** From then on less, by so much every few steps, so often. */
const SOFTER = 0.45;
const STEPS_BEFORE_SOFTER = 5;
const TIMES_SOFTER = 9;
/** How far prices go in a step. Below the 1.618 up to which this is known to settle. */
const STRIDE = 1.6;
/** Steps between two bounds. */
const ROUND = 25;
/** An item whose own square is far below the mean counts as one with so much of the mean. */
const LEAST_SHARE = 0.1;
/** Assignments of all other items between two pauses. */
const ITEMS_PAUSE = 8;
/** What rounding may add to a bound, as a part of it. */
const ROUNDING = 1e-9;

/** An assignment by forms alone, and the grid that its cells fill row by row. */
export interface GridAssignment extends Pick<ConvexAssignment, 'size' | 'constant' | 'linear' | 'forms'> {
  readonly rows: number;
  readonly columns: number;
}

export class OffsetBound {
  /** No arrangement costs less. */
  bound = Number.NEGATIVE_INFINITY;
  private readonly waveMatrix: WaveMatrix;
  /** Cells of the wall: one for each place. */
  private readonly first: Int32Array;
  /** Weight of each item: figures of two items are written times both. It makes costs of alike size, so that fewer steps are needed. */
  private readonly scale: Float64Array;
  /** Along which the matrix of each wave is 0. */
  private readonly zeros: readonly Float64Array[];
  /** In units of the stiffness. */
  private readonly costs: Figures;
  private readonly prices: Figures;
  private readonly figures: Figures;
  private readonly free: Uint8Array;
  private stiffness: number;

  private constructor(
    private readonly problem: GridAssignment,
    private readonly table: OffsetTable,
    /** Of each form the factor of the cells at an offset. */
    private readonly near: readonly Float64Array[],
  ) {
    const { size } = problem;
    this.waveMatrix = new WaveMatrix(size);
    this.first = new Int32Array(table.places);
    for (let cell = size - 1; cell >= 0; cell--) this.first[table.placeOf(cell)] = cell;
    this.scale = scaleOf(problem);
    this.zeros = Array.from(table.wall, (one) => {
      return Float64Array.from([...this.scale.map((scale) => 1 / scale), -one]);
    });
    this.free = new Uint8Array(table.offsets * table.pairs);
    this.forFree((at) => {
      this.free[at] = 1;
    });
    this.figures = this.even();
    this.prices = table.none('place');
    this.costs = table.none('place');
    this.stiffness = 1;
    this.writeCosts();
    const mean = this.costs.pairs.reduce((sum, one) => sum + Math.abs(one), 0) / this.costs.pairs.length;
    if (mean > 0) this.rescale(STIFF * size * mean);
  }

  /** Null where the factors of a form do not go by the offset of the cells. */
  static of(problem: GridAssignment): OffsetBound | null {
    const table = new OffsetTable(problem.rows, problem.columns);
    const near = problem.forms.map((form) => nearOf(form, table));
    if (problem.size < 2 || near.some((one) => one === null)) return null;
    return new OffsetBound(
      problem,
      table,
      near.filter((one) => one !== null),
    );
  }

  /** Makes so many steps, a few milliseconds at a time. */
  *ascending(steps: number): Generator<void, void> {
    for (let step = 1; step <= steps; step++) {
      yield* this.step();
      if (step % ROUND === 0 || step === steps) yield* this.weigh();
      const softened = step / STEPS_BEFORE_SOFTER;
      if (Number.isInteger(softened) && softened <= TIMES_SOFTER) this.rescale(this.stiffness * SOFTER);
    }
  }

  private *step(): Generator<void> {
    const { figures, prices, costs, table } = this;
    const waves = table.toWaves({
      pairs: sumOf(figures.pairs, prices.pairs),
      places: sumOf(figures.places, prices.places),
      whole: sumOf(figures.whole, prices.whole),
    });
    for (let wave = 0; wave < table.offsets; wave++) {
      if (wave === 0) this.fillFirst(waves);
      else yield* this.positive(waves, wave);
    }
    const near = table.fromWaves(waves);
    for (let at = 0; at < this.free.length; at++) {
      if (this.free[at])
        figures.pairs[at] = Math.max(near.pairs[at]! - prices.pairs[at]! - costs.pairs[at]!, 0);
    }
    for (let at = 0; at < figures.places.length; at++)
      figures.places[at] = Math.max(near.places[at]! - prices.places[at]! - costs.places[at]!, 0);
    follow(prices.pairs, figures.pairs, near.pairs);
    follow(prices.places, figures.places, near.places);
    follow(prices.whole, figures.whole, near.whole);
  }

  /** Writes the positive part of the matrix of a wave in its place. */
  private *positive({ pairs, places, whole }: Figures, wave: number): Generator<void> {
    const { size } = this.problem;
    const count = this.table.pairs;
    whole[wave] = yield* this.waveMatrix.positivePart(
      pairs.subarray(wave * count, (wave + 1) * count),
      places.subarray(wave * size, (wave + 1) * size),
      whole[wave]!,
      this.zeros[wave]!,
    );
    yield;
  }

  /** The first wave is the same in all cells: every two items are together on the wall just once. */
  private fillFirst({ pairs, places, whole }: Figures): void {
    const { scale, table } = this;
    const root = table.waveRoot(0);
    forPairs(scale.length, (at, item, other) => {
      pairs[at] = root * scale[item]! * scale[other]!;
    });
    scale.forEach((one, item) => {
      places[item] = root * one;
    });
    whole[0] = root;
  }

  /** Pairs of two items at offsets that two cells have; all others are known. */
  private forFree(visit: (at: number, offset: number, item: number, other: number) => void): void {
    const { table, problem } = this;
    for (let offset = 1; offset < table.offsets; offset++) {
      if (table.cellPairs[offset] === 0) continue;
      forPairs(problem.size, (at, item, other) => {
        if (item !== other) visit(offset * table.pairs + at, offset, item, other);
      });
    }
  }

  /** What items hung by chance have. */
  private even(): Figures {
    const { table, scale, problem } = this;
    const { size } = problem;
    const figures = table.none('place');
    this.forFree((at, offset, item, other) => {
      const chance = table.cellPairs[offset]! / (size * (size - 1));
      figures.pairs[at] = (chance * scale[item]! * scale[other]!) / table.offsetRoot[offset]!;
    });
    forPairs(size, (at, item, other) => {
      if (item === other) figures.pairs[at] = scale[item]! ** 2;
    });
    each(figures, (key, at) => {
      if (key === 'places') return (table.placeRoot[Math.floor(at / size)]! * scale[at % size]!) / size;
      return key === 'whole' ? table.waveRoot(at) : figures.pairs[at]!;
    });
    return figures;
  }

  private writeCosts(): void {
    const { costs, table, scale, problem } = this;
    const { size } = problem;
    this.forFree((at, offset, item, other) => {
      costs.pairs[at] =
        (table.offsetRoot[offset]! * this.cost(offset, item, other)) / (scale[item]! * scale[other]!);
    });
    // Every item in a cell is written twice in a matrix; pairs are counted twice as well. What is the same in all cells decides nothing.
    for (let item = 0; item < size; item++) {
      const own = Float64Array.from({ length: size }, (_, cell) => this.own(item, cell));
      const mean = own.reduce((sum, one) => sum + one, 0) / size;
      own.forEach((one, cell) => {
        const place = table.placeOf(cell);
        costs.places[place * size + item]! += (one - mean) / (2 * table.placeRoot[place]! * scale[item]!);
      });
    }
  }

  /** What two items at an offset cost; counted from both. */
  private cost(offset: number, item: number, other: number): number {
    const { forms, size } = this.problem;
    return forms.reduce(
      (sum, form, at) => sum + this.near[at]![offset]! * form.items[item * size + other]!,
      0,
    );
  }

  /** What an item costs by itself in a cell. */
  private own(item: number, cell: number): number {
    const { forms, size, linear } = this.problem;
    return forms.reduce(
      (sum, form) => sum + form.cells[cell * size + cell]! * form.items[item * size + item]!,
      linear[item * size + cell]!,
    );
  }

  private rescale(stiffness: number): void {
    const times = this.stiffness / stiffness;
    for (const scaled of [this.costs, this.prices]) each(scaled, (key, at) => scaled[key][at]! * times);
    this.stiffness = stiffness;
  }

  /**
   * Prices whose matrices have no positive eigenvalue take nothing from the cost of an arrangement; with them every item in every cell
   * costs at least the cheapest assignment of all others.
   */
  private *weigh(): Generator<void> {
    const { table, problem, first } = this;
    const { size, constant } = problem;
    const prices = yield* this.pricesBelow();
    const outer = new SmallLinear(size);
    const inner = new SmallLinear(size - 1);
    for (let place = 0; place < table.places; place++) {
      for (let item = 0; item < size; item++) {
        this.fillInner(inner.table, prices.pairs, item, first[place]!);
        const cost =
          prices.pairs[pairAt(item, item)]! + prices.places[place * size + item]! + inner.solve(size - 1);
        for (let cell = 0; cell < size; cell++)
          if (table.placeOf(cell) === place) outer.table[item * size + cell] = cost + this.own(item, cell);
        if (item % ITEMS_PAUSE === 0) yield;
      }
    }
    const found = constant + prices.whole.reduce((sum, one) => sum + one, 0) + outer.solve(size);
    this.bound = Math.max(this.bound, found - ROUNDING * (1 + Math.abs(found)));
  }

  /** What an item in a cell costs with every other item in every other cell. */
  private fillInner(into: Float64Array, prices: Float64Array, item: number, cell: number): void {
    const { table, problem } = this;
    const { size } = problem;
    for (let there = 0, column = 0; there < size; there++) {
      if (there === cell) continue;
      const from = table.offsetOf(cell, there) * table.pairs;
      for (let other = 0, row = 0; other < size; other++) {
        if (other === item) continue;
        into[row * (size - 1) + column] = prices[from + pairAt(item, other)]!;
        row += 1;
      }
      column += 1;
    }
  }

  /** The prices without what is above 0 in a wave, with the costs of pairs, for each pair, item in a cell, and wave. */
  private *pricesBelow(): Generator<void, Figures> {
    const { table, scale, stiffness, costs, problem } = this;
    const { size } = problem;
    const waves = table.toWaves(this.prices);
    const over = table.none('wave');
    each(over, (key, at) => waves[key][at]!);
    for (let wave = 1; wave < table.offsets; wave++) yield* this.positive(over, wave);
    // What the first wave takes from one pair it gives to others: every pair is there once.
    each(over, (key, at) => (at < waves[key].length / table.offsets ? 0 : waves[key][at]! - over[key][at]!));
    const below = table.fromWaves(over);
    for (let offset = 0; offset < table.offsets; offset++) {
      forPairs(size, (pair, item, other) => {
        const at = offset * table.pairs + pair;
        below.pairs[at] =
          (stiffness * (below.pairs[at]! + costs.pairs[at]!) * scale[item]! * scale[other]!) /
          table.offsetRoot[offset]!;
      });
    }
    each(below, (key, at) => {
      if (key === 'pairs') return below.pairs[at]!;
      if (key === 'whole') return stiffness * below.whole[at]! * table.waveRoot(at);
      return (
        (2 * stiffness * below.places[at]! * scale[at % size]!) / table.placeRoot[Math.floor(at / size)]!
      );
    });
    return below;
  }
}

function sumOf(one: Float64Array, other: Float64Array): Float64Array {
  const sum = new Float64Array(one.length);
  for (let at = 0; at < sum.length; at++) sum[at] = one[at]! + other[at]!;
  return sum;
}

/** Moves prices by how far figures are from the nearest that have no negative eigenvalue. */
function follow(prices: Float64Array, figures: Float64Array, near: Float64Array): void {
  for (let at = 0; at < prices.length; at++) prices[at]! += STRIDE * (figures[at]! - near[at]!);
}

/** About what a step takes: the cubes of the sizes of its matrices. */
export function workOnGrid(rows: number, columns: number): number {
  return axisOf(rows).offsets.waves * axisOf(columns).offsets.waves * (rows * columns) ** 3;
}

function each(figures: Figures, write: (key: keyof Figures, at: number) => number): void {
  for (const key of ['pairs', 'places', 'whole'] as const) {
    const into = figures[key];
    for (let at = 0; at < into.length; at++) into[at] = write(key, at);
  }
}

function forPairs(size: number, visit: (at: number, item: number, other: number) => void): void {
  for (let item = 0, at = 0; item < size; item++)
    for (let other = 0; other <= item; other++, at++) visit(at, item, other);
}

function pairAt(item: number, other: number): number {
  return item < other ? (other * (other + 1)) / 2 + item : (item * (item + 1)) / 2 + other;
}

/** The root of an item's length, 1 on average of squares. */
function scaleOf({ size, forms }: GridAssignment): Float64Array {
  const lengths = Float64Array.from({ length: size }, (_, item) =>
    Math.sqrt(forms.reduce((sum, { items }) => sum + Math.abs(items[item * size + item]!), 0)),
  );
  const mean = lengths.reduce((sum, one) => sum + one, 0) / size;
  return lengths.map((one) => (mean > 0 ? Math.sqrt(Math.max(one / mean, LEAST_SHARE)) : 1));
}

/** The factor of two cells by their offset; null where it is not one. */
function nearOf({ cells }: Form, table: OffsetTable): Float64Array | null {
  const { size } = table;
  const near = new Float64Array(table.offsets).fill(Number.NaN);
  for (let cell = 0; cell < size; cell++) {
    for (let other = 0; other < cell; other++) {
      const offset = table.offsetOf(cell, other);
      const factor = cells[cell * size + other]!;
      if (Number.isNaN(near[offset]!)) near[offset] = factor;
      if (Math.abs(near[offset]! - factor) > 1e-9) return null;
    }
  }
  return near.map((one) => (Number.isNaN(one) ? 0 : one));
}
