// Bounds an assignment by the products of every two items in two cells: a table of them is 0 or above, has no negative eigenvalue,
// and holds every item and every cell once (Zhao, Karisch, Rendl and Wolkowicz 1998). The least cost of such a table is
// approached in alternating directions (Oliveira, Wolkowicz and Xu 2018); the prices found on the way make a bound by assignments
// (after Gilmore 1962 and Lawler 1963), which holds whenever it is taken.
import { cellSymmetries } from '../branch/cellSymmetries';
import { type ConvexAssignment, ownSquares, pairCosts } from '../branch/convexAssignment';
import { positivePartOf } from '../branch/positivePart';
import { SmallLinear } from '../branch/smallLinear';
import { type Patterns, patternsOf } from './patterns';
import { ProductTable } from './productTable';

/** Of the mean cost, times the size: how much a table apart from the other costs. By trial on walls of 20 blocks. */
const STIFF = 8;
/** How far prices go in a step. Below the 1.618 up to which this is known to settle. */
const STRIDE = 1.6;
/** Steps between two bounds. */
const ROUND = 10;
/** What rounding may add to a bound, as a part of it. */
const ROUNDING = 1e-9;

/** Sorts of entries. */
const FREE = 0;
const NEVER = 1;
const OWN = 2;

export class ProductBound {
  /** No arrangement costs less. */
  bound = Number.NEGATIVE_INFINITY;
  private readonly table: ProductTable;
  private readonly patterns: Patterns;
  private readonly kinds: Uint8Array;
  /** Costs and prices in units of the stiffness. */
  private readonly costs: Float64Array;
  private readonly prices: Float64Array;
  /** Products that are 0 or above, and products with no negative eigenvalue. */
  private readonly products: Float64Array;
  private readonly even: Float64Array;
  private readonly stiffness: number;

  constructor(private readonly problem: ConvexAssignment) {
    const { size } = problem;
    const pairs = pairCosts(problem);
    this.patterns = patternsOf(cellSymmetries(problem, pairs), size);
    this.table = new ProductTable(size, this.patterns);
    const { length } = this.table;
    this.kinds = kindsOf(size, this.patterns);
    this.costs = costsOf(problem, pairs, this.patterns);
    const counted = this.costs.filter((_, at) => this.kinds[at] !== NEVER);
    const mean = counted.reduce((sum, one) => sum + Math.abs(one), 0) / counted.length;
    this.stiffness = mean > 0 ? STIFF * size * mean : 1;
    this.costs.forEach((one, at) => {
      this.costs[at] = one / this.stiffness;
    });
    this.prices = new Float64Array(length);
    this.even = new Float64Array(length);
    this.products = Float64Array.from(this.kinds, (kind) => {
      if (kind === NEVER) return 0;
      return kind === OWN ? 1 / size : 1 / (size * (size - 1));
    });
  }

  /** About what a step takes: the cubes of the sizes of its tables. */
  get work(): number {
    return this.table.work;
  }

  /** Makes so many steps, a few milliseconds at a time. */
  *ascending(steps: number): Generator<void, void> {
    for (let step = 1; step <= steps; step++) {
      yield* this.step();
      if (step % ROUND === 0 || step === steps) yield* this.weigh();
    }
  }

  private *step(): Generator<void> {
    const { costs, prices, products, even, kinds } = this;
    yield* this.positivePart(
      products.map((one, at) => one + prices[at]!),
      even,
    );
    for (let at = 0; at < kinds.length; at++) {
      const one = even[at]! - costs[at]! - prices[at]!;
      const kind = kinds[at]!;
      if (kind === FREE) products[at] = Math.max(one, 0);
      else products[at] = kind === OWN ? one : 0;
    }
    this.fillEach();
    for (let at = 0; at < kinds.length; at++) prices[at]! += STRIDE * (products[at]! - even[at]!);
  }

  /** Writes the nearest table without negative eigenvalues that holds every item and every cell once. */
  private *positivePart(of: Float64Array, to: Float64Array): Generator<void> {
    to.fill(0);
    for (const part of this.table.parts) {
      const small = part.from(of);
      part.addTo(to, yield* positivePartOf(small, part.width));
      yield;
    }
  }

  /** Moves the items by themselves to the nearest figures with every item and every cell once. */
  private fillEach(): void {
    const { products, patterns } = this;
    const { size } = this.problem;
    const orbits = patterns.first.length;
    const items = new Float64Array(size);
    const cells = new Float64Array(orbits);
    let all = 0;
    this.forOwn((at, item, orbit) => {
      items[item]! += patterns.count[orbit]! * products[at]!;
      cells[orbit]! += products[at]!;
      all += patterns.count[orbit]! * products[at]!;
    });
    this.forOwn((at, item, orbit) => {
      products[at]! += (1 - items[item]! + 1 - cells[orbit]! + all / size - 1) / size;
    });
  }

  private forOwn(visit: (at: number, item: number, orbit: number) => void): void {
    const { size } = this.problem;
    const { first } = this.patterns;
    for (let item = 0; item < size; item++) {
      for (let orbit = 0; orbit < first.length; orbit++) {
        const at = (item * first.length + orbit) * size * size + item * size + first[orbit]!;
        visit(at, item, orbit);
      }
    }
  }

  /**
   * Prices without a positive eigenvalue take nothing from the cost of an arrangement; with them every item in every cell costs at
   * least the cheapest assignment of all others.
   */
  private *weigh(): Generator<void> {
    const { costs, prices } = this;
    const { size, constant } = this.problem;
    const over = new Float64Array(prices.length);
    yield* this.positivePart(prices, over);
    const table = costs.map((one, at) => this.stiffness * (one + prices[at]! - over[at]!));
    const outer = new SmallLinear(size);
    const inner = new SmallLinear(size - 1);
    this.forOwn((own, item, orbit) => {
      const cell = this.patterns.first[orbit]!;
      const from = own - item * size - cell;
      let to = 0;
      for (let at = 0; at < size * size; at++) {
        if (Math.floor(at / size) !== item && at % size !== cell) inner.table[to++] = table[from + at]!;
      }
      const cost = table[own]! + inner.solve(size - 1);
      for (let there = 0; there < size; there++) {
        if (this.patterns.orbitOf[there] === orbit) outer.table[item * size + there] = cost;
      }
    });
    const found = constant + outer.solve(size);
    this.bound = Math.max(this.bound, found - ROUNDING * (1 + Math.abs(found)));
  }
}

function kindsOf(size: number, { first }: Patterns): Uint8Array {
  return Uint8Array.from({ length: size * first.length * size * size }, (_, at) => {
    const row = Math.floor(at / (size * size));
    const sameItem = Math.floor(row / first.length) === Math.floor(at / size) % size;
    const sameCell = first[row % first.length] === at % size;
    if (sameItem && sameCell) return OWN;
    return sameItem || sameCell ? NEVER : FREE;
  });
}

/** What two items in two cells cost, half of it to each of the two; an item by itself in a cell what it costs there. */
function costsOf(problem: ConvexAssignment, pairs: Float64Array, { first }: Patterns): Float64Array {
  const { size, linear } = problem;
  const places = size * size;
  const own = ownSquares(problem);
  const costs = new Float64Array(size * first.length * places);
  for (let item = 0; item < size; item++) {
    first.forEach((cell, orbit) => {
      const place = item * size + cell;
      const from = (item * first.length + orbit) * places;
      for (let at = 0; at < places; at++) costs[from + at] = pairs[place * places + at]! / 2;
      costs[from + place] = linear[place]! + own[place]!;
    });
  }
  return costs;
}
