// Hangs sets of items along a chain of places at least cost, whatever hangs elsewhere: by dynamic programming, as only sets side by
// side must differ. What an item is paid for being in a place is the business of groupBound.ts.
import type { Links, Subsets } from './subsets';

export interface Position {
  /** Cells of the place; it takes a set of as many items. */
  readonly cells: readonly number[];
  readonly subsets: Subsets;
  /** How much the squared sum of its own set counts, and that of it and the set before. */
  readonly own: number;
  readonly joined: number;
  /** With the place before; null for the first. */
  readonly links: Links | null;
}

export class Chain {
  /** What each item is paid in each place: subtracted from the cost. */
  readonly prices: readonly Float64Array[];
  /** The set chosen in each place, as its number, by the last call of `least`. */
  readonly chosen: Int32Array;
  private readonly costs: readonly Float64Array[];
  private readonly before: readonly Int32Array[];

  constructor(
    readonly positions: readonly Position[],
    size: number,
    /** How many chains of the wall are like it. */
    readonly copies: number,
  ) {
    this.prices = positions.map(() => new Float64Array(size));
    this.chosen = new Int32Array(positions.length);
    this.costs = positions.map(({ subsets }) => new Float64Array(subsets.count));
    this.before = positions.map(({ subsets }) => new Int32Array(subsets.count));
  }

  /** Sums that one call of `least` makes, about. */
  get work(): number {
    return this.positions.reduce(
      (sum, { subsets, links }) => sum + subsets.items.length + (links?.squares.length ?? 0),
      0,
    );
  }

  /** The least cost less prices over all ways to fill the chain. */
  least(): number {
    this.positions.forEach((position, at) => {
      const costs = this.costs[at]!;
      costs.fill(position.links ? Number.POSITIVE_INFINITY : 0);
      if (position.links) this.link(at, position.links, position.joined);
      addOwn(costs, position, this.prices[at]!);
    });
    const last = this.positions.length - 1;
    let state = leastAt(this.costs[last]!);
    const least = this.costs[last]![state]!;
    for (let at = last; at >= 0; at--) {
      this.chosen[at] = state;
      state = this.before[at]![state]!;
    }
    return least;
  }

  private link(at: number, { from, to, squares }: Links, joined: number): void {
    const costs = this.costs[at]!;
    const earlier = this.costs[at - 1]!;
    const before = this.before[at]!;
    for (let k = 0; k < squares.length; k++) {
      const cost = earlier[from[k]!]! + joined * squares[k]!;
      const there = to[k]!;
      if (cost >= costs[there]!) continue;
      costs[there] = cost;
      before[there] = from[k]!;
    }
  }
}

function addOwn(costs: Float64Array, { subsets, own }: Position, prices: Float64Array): void {
  const { width, items, squares } = subsets;
  for (let state = 0, at = 0; state < costs.length; state++) {
    let cost = own * squares[state]!;
    for (let k = 0; k < width; k++) cost -= prices[items[at++]!]!;
    costs[state]! += cost;
  }
}

function leastAt(costs: Float64Array): number {
  let best = 0;
  for (let at = 1; at < costs.length; at++) if (costs[at]! < costs[best]!) best = at;
  return best;
}
