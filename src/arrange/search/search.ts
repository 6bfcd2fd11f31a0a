// Searches for a good arrangement: first the layout as an assignment (layoutSearch.ts), then simulated annealing (Kirkpatrick,
// Gelatt and Vecchi 1983) over turns, exchanges of blocks, trades of wedges and strip orders together, in runs of growing length.
// It keeps the best arrangement of all. Seeded; a step is one change tried.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import type { Project } from '../../model/project';
import { MOST_ENUMERATED } from '../assignment/enumerate';
import type { Choices } from '../choices/choices';
import { findingChoices } from '../choices/evenChoices';
import type { Decisions } from '../decisions';
import type { CostTables } from '../live/costTables';
import { LiveWall } from '../live/liveWall';
import type { Arrangement } from '../movesBetween';
import { spreadOf } from '../proof/spreadAssignment';
import { LayoutSearch } from './layoutSearch';
import { StripOrders, withRoomForOne } from './stripOrders';
import { Trades } from './trades';
import { WholeBlocks } from './wholeBlocks';

/** A copy of an arrangement, apart from the one that is being changed. */
export interface Kept extends Arrangement {
  readonly typeAt: Int32Array;
  readonly orientationOf: Int32Array;
  readonly blockIn: Int32Array;
  readonly cost: number;
}

function keep(wall: LiveWall, orders: StripOrders | null): Kept {
  return {
    ...(orders ? { orders: orders.laid } : {}),
    typeAt: wall.typeAt.slice(),
    orientationOf: wall.orientationOf.slice(),
    blockIn: wall.blockIn.slice(),
    cost: wall.cost,
  };
}

const CHUNK = 256;
/** The shares of the budget at which a search starts hot again: short runs first, so that a good order is soon at hand. */
interface Plan {
  readonly runs: readonly number[];
  /** Temperature at the start of each run, as a share of the mean worsening of a random change. */
  readonly hot: readonly number[];
  /** Temperature at the end of every run. */
  readonly cold: number;
}
/**
 * The schedule for a search that begins with the wall as it hangs. Measured: small walls need the hot starts to be solved every
 * time (300 of 300 against 298); on large walls the last and longest run does better from 0.2 than from 0.4.
 */
const FROM_START: Plan = { runs: [0, 1 / 64, 1 / 16, 1 / 4], hot: [0.8, 0.6, 0.4, 0.2], cold: 0.001 };
/** The schedule for a search that begins with a layout, which a higher temperature would undo. */
const FROM_LAYOUT: Plan = { runs: [0, 1 / 64, 1 / 8], hot: [0.1, 0.1, 0.1], cold: 0.001 };
/** The schedule where wedges are traded too: there is more to gain in the middle of the range, and nothing below. */
const TRADING: Plan = { runs: [0, 1 / 64, 1 / 16], hot: [0.03, 0.03, 0.02], cold: 0.004 };
/** The schedule where whole blocks are given other wedges. */
const CHOOSING: Plan = { runs: [0], hot: [0.01], cold: 0.0028 };
/** The share of the budget that the layout may take. */
const LAYOUT_SHARE = 1 / 16;
/** The share of the budget after which choices of wedges that are not found yet are given up. */
const CHOICES_SHARE = 1 / 2;
/** A strip order is tried once in so many changes; it counts so many steps for each wedge it changes, by its time. */
const STRIPS_EVERY = 128;
const STEPS_A_WEDGE = 8;
/** All trades of a tip between two blocks count so many steps, by their time. */
const STEPS_A_PAIR = 4;
/** So many steps count for what is looked at between two pauses while choices are found, and for drawing one for a block, by their time. */
const STEPS_A_PAUSE = 200;
const STEPS_A_BLOCK = 5;
/** Whole blocks are tried so many times as often as a turn. */
const BLOCKS_AS_OFTEN = 16;
/** Changes tried to measure the mean worsening. */
const MEASURED = 400;

/**
 * A search from where the project stands, over all that the decisions leave open. `choices` are those of findingChoices, null for none;
 * without them the search finds them itself.
 */
export function searchFrom(
  project: Project,
  tables: CostTables,
  decisions: Decisions,
  seed: number,
  choices?: Choices | null,
): Search {
  // Few blocks have few layouts: hot starts reach them all, and small walls are proved.
  const layout =
    decisions.cells.length > MOST_ENUMERATED
      ? new LayoutSearch(spreadOf(tables), tables.model.blockIn, decisions.cells, seed)
      : null;
  if (decisions.sets.length === 0)
    return new Search(new LiveWall(tables, decisions.spare), decisions, seed, null, layout, choices);
  const spare = new Int32Array(decisions.spare.length + 2);
  spare.set(decisions.spare);
  const wall = new LiveWall(withRoomForOne(tables), spare);
  return new Search(wall, decisions, seed, new StripOrders(project, wall, decisions.sets), layout);
}

export class Search {
  /** Steps so far; a strip order counts several for each wedge it changes. */
  steps = 0;
  best: Kept;
  private readonly wall: LiveWall;
  private readonly decisions: Decisions;
  private readonly random: RandomGenerator;
  private readonly heat: number;
  private readonly orders: StripOrders | null;
  /** Each tries a change and returns the steps it counts. */
  private kindsOfChange: readonly (() => number)[];
  private plan: Plan;
  private layout: LayoutSearch | null;
  private readonly trades: Trades;
  /** Choices of wedges for whole blocks, while they are looked for; then those that are tried. */
  private finding: Generator<void, Choices | null> | null;
  private whole: WholeBlocks | null = null;
  private run = 0;
  private temperature = 0;
  /** Hears what each change would add while changes are only measured. */
  private measuring: ((added: number) => void) | null = null;

  constructor(
    wall: LiveWall,
    decisions: Decisions,
    seed: number,
    orders: StripOrders | null = null,
    layout: LayoutSearch | null = null,
    choices?: Choices | null,
  ) {
    this.wall = wall;
    this.layout = layout;
    this.decisions = decisions;
    this.random = xoroshiro128plus(seed);
    this.trades = new Trades(wall, decisions, this.random);
    this.finding = choices === undefined ? findingChoices(wall, decisions) : null;
    this.plan = this.planFor(layout !== null);
    this.orders = orders;
    this.best = keep(wall, orders);
    this.kindsOfChange = this.changes();
    this.heat = this.measureHeat();
    if (choices) this.giveWholeBlocks(choices);
  }

  private planFor(fromLayout: boolean): Plan {
    if (this.trades.hasPairs(0) || this.trades.hasPairs(1)) return TRADING;
    return fromLayout ? FROM_LAYOUT : FROM_START;
  }

  /** Makes some hundred steps at the temperature that belongs to `share`, the share of the budget spent, 0–1. */
  advance(share: number): void {
    if (this.laysOut(share) || this.findsChoices(share)) return;
    const { runs, hot: heats, cold } = this.plan;
    while (this.run < runs.length - 1 && share >= runs[this.run + 1]!) this.run += 1;
    const from = runs[this.run]!;
    const to = runs[this.run + 1] ?? 1;
    const part = Math.min(1, Math.max(0, (share - from) / (to - from)));
    const hot = heats[this.run]!;
    this.temperature = this.heat * hot * (cold / hot) ** part;
    let tried = 0;
    while (tried < CHUNK) {
      tried += this.tryChange();
      if (this.wall.cost < this.best.cost - 1e-9) this.best = keep(this.wall, this.orders);
    }
    this.steps += tried;
  }

  /** Works on the layout until it is found, and hangs what it has. */
  private laysOut(share: number): boolean {
    const { layout } = this;
    if (!layout) return false;
    if (layout.ended || share >= LAYOUT_SHARE) {
      this.layout = null;
      return false;
    }
    this.steps += layout.advance();
    this.hang(layout.blockIn);
    return true;
  }

  /** Looks on for choices of wedges for whole blocks, until they are found or take too much of the budget. */
  private findsChoices(share: number): boolean {
    if (!this.finding) return false;
    const { done, value } = this.finding.next();
    if (done || share >= CHOICES_SHARE) this.finding = null;
    if (done && value) this.giveWholeBlocks(value);
    if (!this.finding) return false;
    this.steps += STEPS_A_PAUSE;
    return true;
  }

  private giveWholeBlocks(choices: Choices): void {
    this.whole = new WholeBlocks(this.wall, choices, this.trades.laying, this.random);
    this.kindsOfChange = this.changes();
    this.plan = CHOOSING;
  }

  /**
   * Hangs the blocks as a layout has them, each in the orientation that meets its neighbours best. The search goes on from
   * there. Only blocks that may change cells hang in other cells.
   */
  private hang(blockIn: Int32Array): void {
    const { wall, decisions } = this;
    for (const cell of decisions.cells) {
      const block = blockIn[cell]!;
      const from = wall.cellOf[block]!;
      if (from === cell) continue;
      const other = wall.blockIn[cell]!;
      const stands = wall.orientationOf[block]!;
      const otherStands = wall.orientationOf[other]!;
      wall.swap(cell, from, otherStands, stands, wall.swapCost(cell, from, otherStands, stands));
    }
    for (let pass = 0; pass < 2; pass++) {
      for (const block of decisions.turnable) {
        const orientations = decisions.orientations[block]!;
        wall.turn(block, wall.bestStanding(block, wall.cellOf[block]!, orientations, -1));
      }
    }
    if (wall.cost < this.best.cost - 1e-9) this.best = keep(wall, this.orders);
  }

  private below(count: number): number {
    return uniformInt(this.random, 0, count - 1);
  }

  /** Tries one change; returns the steps it counts. */
  private tryChange(): number {
    const changes = this.kindsOfChange;
    if (this.orders && (changes.length === 0 || this.below(STRIPS_EVERY) === 0))
      return this.tryOrder(this.orders);
    return changes[this.below(changes.length)]!();
  }

  private tryOrder(orders: StripOrders): number {
    const tried = orders.tryOne(this.random);
    if (!tried) return 1;
    if (this.accepts(tried.added)) orders.keep();
    else orders.takeBack();
    return 1 + STEPS_A_WEDGE * tried.wedges;
  }

  private accepts(added: number): boolean {
    if (this.measuring) {
      this.measuring(added);
      return false;
    }
    return added <= 0 || uniformFloat64(this.random) < Math.exp(-added / this.temperature);
  }

  /** Lists the changes to draw from, each as often as it is worth trying. */
  private changes(): (() => number)[] {
    const { cells, turnable, tradable, spare } = this.decisions;
    const changes: (() => number)[] = [];
    if (turnable.length > 0) changes.push(() => this.tryTurn());
    const { whole } = this;
    if (whole) changes.push(...Array.from({ length: BLOCKS_AS_OFTEN }, () => () => this.tryWhole(whole)));
    if (cells.length > 1)
      changes.push(
        () => this.trySwap(),
        () => this.trySwap(),
      );
    tradable.forEach((places, tip) => {
      const trade = () => this.tryTrade(places);
      const pair = () => this.tryPair(tip, places);
      if (this.trades.hasPairs(tip)) changes.push(trade, pair, pair);
      else if (places.length > 1) changes.push(trade, trade);
      const types = Int32Array.from(spare.keys()).filter(
        (type) => type % 2 === tip && this.isUsed(type, places),
      );
      if (places.length > 0 && types.length > 1 && spare.some((n, type) => n > 0 && type % 2 === tip)) {
        changes.push(() => this.tryReplace(places, types));
      }
    });
    return changes;
  }

  private tryWhole(whole: WholeBlocks): number {
    whole.tryOne(this.temperature);
    return STEPS_A_BLOCK;
  }

  private isUsed(type: number, places: Int32Array): boolean {
    return this.decisions.spare[type]! > 0 || places.some((place) => this.wall.typeAt[place] === type);
  }

  private tryTurn(): number {
    const { wall, decisions } = this;
    const block = decisions.turnable[this.below(decisions.turnable.length)]!;
    const orientations = decisions.orientations[block]!;
    const was = wall.orientationOf[block]!;
    const stands = orientations[this.below(orientations.length)]!;
    if (stands === was) return 1;
    if (!this.accepts(wall.turn(block, stands))) wall.turn(block, was);
    return 1;
  }

  private trySwap(): number {
    const { wall, decisions } = this;
    const { cells } = decisions;
    const first = this.below(cells.length);
    const step = 1 + this.below(cells.length - 1);
    const cell = cells[first]!;
    const other = cells[(first + step) % cells.length]!;
    const block = wall.blockIn[cell]!;
    const second = wall.blockIn[other]!;
    const stands = wall.bestStanding(block, other, decisions.orientations[block]!, cell);
    const otherStands = wall.bestStanding(second, cell, decisions.orientations[second]!, other);
    const added = wall.swapCost(cell, other, stands, otherStands);
    if (this.accepts(added)) wall.swap(cell, other, stands, otherStands, added);
    return 1;
  }

  /** Tries the trades between two blocks; one trade alone while changes are only measured. */
  private tryPair(tip: number, places: Int32Array): number {
    if (this.measuring) return this.tryTrade(places);
    this.trades.tryPair(tip, this.temperature);
    return STEPS_A_PAIR;
  }

  private tryTrade(places: Int32Array): number {
    const { wall } = this;
    const first = this.below(places.length);
    const place = places[first]!;
    const other = places[(first + 1 + this.below(places.length - 1)) % places.length]!;
    if (wall.typeAt[place] === wall.typeAt[other]) return 1;
    const added = wall.tradeCost(place, other);
    if (this.accepts(added)) wall.trade(place, other, added);
    return 1;
  }

  private tryReplace(places: Int32Array, types: Int32Array): number {
    const { wall } = this;
    const place = places[this.below(places.length)]!;
    const type = types[this.below(types.length)]!;
    if (wall.spare[type]! <= 0 || wall.typeAt[place] === type) return 1;
    const added = wall.replaceCost(place, type);
    if (this.accepts(added)) wall.replace(place, type, added);
    return 1;
  }

  /** Measures the mean worsening of a random change: tries some and makes none. */
  private measureHeat(): number {
    if (this.kindsOfChange.length === 0 && !this.orders) return 1;
    let sum = 0;
    let count = 0;
    this.measuring = (added) => {
      if (added <= 1e-12) return;
      sum += added;
      count += 1;
    };
    for (let step = 0; step < MEASURED; step++) this.tryChange();
    this.measuring = null;
    return count === 0 ? 1 : sum / count;
  }
}
