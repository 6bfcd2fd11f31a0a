// Bounds an assignment whose costs depend on how two cells lie to each other: by how often every two items lie at every offset. That
// is 0 or above, and for every wave over the wall a matrix without negative eigenvalues: the products of arrange/products/, even
// over all shifts of the wall in a ring (from memory: de Klerk and Sotirov 2010 use symmetry so), and small enough for a hundred cells. The least
// cost is approached in alternating directions; the prices found make a bound by assignments, which holds whenever it is taken.
import { SmallLinear } from '../branch/smallLinear';
import { each, type Figures, forPairs, pairAt } from './figures';
import { type GridAssignment, OffsetProblem } from './offsetProblem';
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
/** Assignments of all other items between two pauses. */
const ITEMS_PAUSE = 8;
/** What rounding may add to a bound, as a part of it. */
const ROUNDING = 1e-9;

export class OffsetBound {
  /** No arrangement costs less. */
  bound = Number.NEGATIVE_INFINITY;
  private readonly waveMatrix: WaveMatrix;
  /** Cells of the wall: one for each place. */
  private readonly first: Int32Array;
  /** Along which the matrix of each wave is 0. */
  private readonly zeros: readonly Float64Array[];
  /** In units of the stiffness. */
  private readonly costs: Figures;
  private readonly prices: Figures;
  private readonly figures: Figures;
  private readonly free: Uint8Array;
  private stiffness = 1;

  private constructor(private readonly problem: OffsetProblem) {
    const { size, scale, table } = problem;
    this.waveMatrix = new WaveMatrix(size);
    this.first = new Int32Array(table.places);
    for (let cell = size - 1; cell >= 0; cell--) this.first[table.placeOf(cell)] = cell;
    this.zeros = Array.from(table.wall, (one) => Float64Array.from([...scale.map((own) => 1 / own), -one]));
    this.free = new Uint8Array(table.offsets * table.pairs);
    problem.forFree((at) => {
      this.free[at] = 1;
    });
    this.figures = problem.even();
    this.prices = table.none('place');
    this.costs = problem.costs();
    const mean = this.costs.pairs.reduce((sum, one) => sum + Math.abs(one), 0) / this.costs.pairs.length;
    if (mean > 0) this.rescale(STIFF * size * mean);
  }

  /** Null where the costs do not go by the offset of the cells. */
  static of(given: GridAssignment): OffsetBound | null {
    const problem = OffsetProblem.of(given);
    return problem && new OffsetBound(problem);
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
    const { figures, prices, costs } = this;
    const { table } = this.problem;
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
    const { size, table } = this.problem;
    const count = table.pairs;
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
    const { scale, table } = this.problem;
    const root = table.waveRoot(0);
    forPairs(scale.length, (at, item, other) => {
      pairs[at] = root * scale[item]! * scale[other]!;
    });
    scale.forEach((one, item) => {
      places[item] = root * one;
    });
    whole[0] = root;
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
    const { first, problem } = this;
    const { size, table, constant } = problem;
    const prices = yield* this.pricesBelow();
    const outer = new SmallLinear(size);
    const inner = new SmallLinear(size - 1);
    for (let place = 0; place < table.places; place++) {
      for (let item = 0; item < size; item++) {
        this.fillInner(inner.table, prices.pairs, item, first[place]!);
        const cost =
          prices.pairs[pairAt(item, item)]! + prices.places[place * size + item]! + inner.solve(size - 1);
        for (let cell = 0; cell < size; cell++)
          if (table.placeOf(cell) === place)
            outer.table[item * size + cell] = cost + problem.own[item * size + cell]!;
        if (item % ITEMS_PAUSE === 0) yield;
      }
    }
    const found = constant + prices.whole.reduce((sum, one) => sum + one, 0) + outer.solve(size);
    this.bound = Math.max(this.bound, found - ROUNDING * (1 + Math.abs(found)));
  }

  /** What an item in a cell costs with every other item in every other cell. */
  private fillInner(into: Float64Array, prices: Float64Array, item: number, cell: number): void {
    const { table, size } = this.problem;
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
    const { stiffness, costs } = this;
    const { table, scale, size } = this.problem;
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
    const places = below.places.map(
      (one, at) => (2 * stiffness * one * scale[at % size]!) / table.placeRoot[Math.floor(at / size)]!,
    );
    return {
      ...below,
      places,
      whole: below.whole.map((one, wave) => stiffness * one * table.waveRoot(wave)),
    };
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
