// Owns one run of tabu search: from an arrangement, always the best swap that is not barred, even uphill, the best
// arrangement kept. After Taillard's robust taboo search (1991), without its rule for moves long unmade.
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import type { SwapTable } from './swapTable';

/** An item may not return to its place for a random count of iterations between these shares of the size. */
const SHORTEST = 0.9;
const LONGEST = 1.1;

export class TabuRun {
  /** The best of this run. */
  readonly bestPlaces: Int32Array;
  bestCost = Number.POSITIVE_INFINITY;
  private iteration = 0;
  private left = 0;

  constructor(
    private readonly table: SwapTable,
    private readonly grain: number,
    private readonly random: RandomGenerator,
  ) {
    this.bestPlaces = new Int32Array(table.size);
  }

  get ended(): boolean {
    return this.left <= 0;
  }

  begin(places: Int32Array, iterations: number): void {
    this.table.load(places);
    this.bestPlaces.set(this.table.places);
    this.bestCost = this.table.cost;
    this.iteration = 0;
    this.left = iterations;
  }

  /** Makes up to `most` swaps and says how many; stops early when the best cost is within a grain of `enough`. */
  advance(most: number, enough: number): number {
    const { table, random, grain } = this;
    const { size: n, places, barredUntil, best } = table;
    const shortest = Math.max(1, Math.floor(SHORTEST * n));
    const longest = Math.ceil(LONGEST * n);
    const count = Math.min(most, this.left);
    let made = 0;
    while (made < count && this.bestCost - enough >= grain) {
      made++;
      this.iteration++;
      let { first, second } = best;
      if (first < 0) {
        first = uniformInt(random, 0, n - 1);
        second = (first + uniformInt(random, 1, n - 1)) % n;
      }
      const now = this.iteration;
      barredUntil[first * n + places[first]!] = now + uniformInt(random, shortest, longest);
      barredUntil[second * n + places[second]!] = now + uniformInt(random, shortest, longest);
      const record = Math.min(this.bestCost, table.cost + table.delta(first, second));
      table.swap(first, second, now, record - grain);
      if (table.cost < this.bestCost - grain) {
        this.bestCost = table.cost;
        this.bestPlaces.set(places);
      }
    }
    this.left -= count;
    return made;
  }
}
