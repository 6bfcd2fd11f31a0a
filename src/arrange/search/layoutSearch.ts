// Runs the layout stage of a search: the assignment engine improves the layout of the wall, at once where it is small enough,
// else in groups of cells with all other cells fixed. Seeded and repeatable; never worse than the layout it begins with.
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { assignmentCost } from '../assignment/problem';
import { AssignmentSearch } from '../assignment/search';
import { shuffled } from '../assignment/shuffled';
import type { Spread } from '../proof/spreadAssignment';
import { type Layout, layoutOf } from './layout';

/** The most cells laid out at a time; the engine's tables and the work of a swap grow with the square. */
const MOST_CELLS = 100;
/** Swaps for each cell in one run of the engine. */
const RUN = 20;
/** A whole layout counts as found after so many runs without a better one. */
const PATIENCE = 4;
/** In how many groups each cell is, on average. */
const ROUNDS = 4;
/** Steps of the search that one swap of the engine counts, by its time: a fixed part, and 1 for so many table entries. */
const STEPS_A_SWAP = 2;
const ENTRIES_A_STEP = 700;

export class LayoutSearch {
  /** The best layout so far: block in each cell. */
  readonly blockIn: Int32Array;
  /** True once more runs are not likely to find a better layout. */
  ended = false;
  private readonly random: RandomGenerator;
  private whole: { readonly layout: Layout; readonly search: AssignmentSearch } | null = null;
  private runs = 0;
  private fruitless = 0;
  private waiting: number[] = [];

  /** `cells` lists the cells whose blocks may be exchanged: none that is pinned, empty or without wedges. */
  constructor(
    private readonly spread: Spread,
    blockIn: Int32Array,
    private readonly cells: Int32Array,
    private readonly seed: number,
  ) {
    this.blockIn = blockIn.slice();
    this.random = xoroshiro128plus(seed);
  }

  /** Makes one run of the engine (a few to some tens of milliseconds) and returns the steps it counts. */
  advance(): number {
    const { cells } = this;
    this.runs += 1;
    const isWhole = cells.length <= MOST_CELLS;
    const swaps = isWhole ? this.advanceWhole() : this.layOut(this.nextGroup());
    if (!isWhole) this.ended = this.runs * MOST_CELLS >= ROUNDS * cells.length;
    const size = Math.min(cells.length, MOST_CELLS);
    return Math.ceil(swaps * (STEPS_A_SWAP + size ** 2 / ENTRIES_A_STEP));
  }

  private advanceWhole(): number {
    const { spread, blockIn, cells, seed } = this;
    if (!this.whole) {
      const layout = layoutOf(spread, blockIn, cells);
      this.whole = { layout, search: new AssignmentSearch(layout.problem, seed) };
    }
    const { layout, search } = this.whole;
    const before = search.cost;
    const made = search.iterations;
    const isBest = search.advance(RUN * cells.length);
    this.fruitless = search.cost < before ? 0 : this.fruitless + 1;
    this.ended = isBest || this.fruitless >= PATIENCE;
    this.take(layout, search);
    return search.iterations - made;
  }

  private layOut(group: Int32Array): number {
    const layout = layoutOf(this.spread, this.blockIn, group);
    const search = new AssignmentSearch(layout.problem, uniformInt(this.random, 0, 0x7fffffff));
    search.advance(RUN * group.length);
    const asItHangs = Int32Array.from(group.keys());
    if (search.cost < assignmentCost(layout.problem, asItHangs) - 1e-12) this.take(layout, search);
    return search.iterations;
  }

  private take({ cells, blocks }: Layout, { places }: AssignmentSearch): void {
    places.forEach((place, item) => {
      this.blockIn[cells[place]!] = blocks[item]!;
    });
  }

  /** Forms the groups: first from all over the wall, each cell in one of them; then of cells that lie together. */
  private nextGroup(): Int32Array {
    const { cells, random, spread } = this;
    if (this.runs * MOST_CELLS <= cells.length) {
      if (this.runs === 1) this.waiting = Array.from(shuffled(cells.length, random), (at) => cells[at]!);
      return Int32Array.from(this.waiting.splice(0, MOST_CELLS)).sort();
    }
    const { rowOf, columnOf } = spread.tables.model;
    const middle = cells[uniformInt(random, 0, cells.length - 1)]!;
    const away = (cell: number) =>
      (rowOf[cell]! - rowOf[middle]!) ** 2 + (columnOf[cell]! - columnOf[middle]!) ** 2;
    const byDistance = Array.from(cells).sort((one, other) => away(one) - away(other) || one - other);
    return Int32Array.from(byDistance.slice(0, MOST_CELLS)).sort();
  }
}
