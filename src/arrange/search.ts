// The search: simulated annealing (Kirkpatrick, Gelatt and Vecchi 1983) over turns, exchanges of blocks, trades of wedges and
// orders of strips together, in runs of growing length, the best arrangement of all kept. Seeded; a step is one change tried.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import type { Project } from '../model/project';
import type { CostTables } from './costTables';
import type { Decisions } from './decisions';
import { LiveWall } from './liveWall';
import type { Standings } from './movesBetween';
import { StripOrders, withRoomForOne } from './stripOrders';

/** An arrangement kept apart from the living one. */
export interface Kept extends Standings {
  readonly kindAt: Int32Array;
  readonly standingOf: Int32Array;
  readonly blockIn: Int32Array;
  readonly cost: number;
}

function keep(wall: LiveWall, orders: StripOrders | null): Kept {
  return {
    ...(orders ? { orders: orders.laid } : {}),
    kindAt: wall.kindAt.slice(),
    standingOf: wall.standingOf.slice(),
    blockIn: wall.blockIn.slice(),
    cost: wall.cost,
  };
}

/** Shares of the whole budget at which a new run starts hot: short runs first, so that something good is soon at hand. */
const RUNS = [0, 1 / 64, 1 / 16, 1 / 4] as const;
const CHUNK = 256;
/**
 * Heat at the start of each run, as a part of the mean worsening of a random change, and at the end of every run. Measured:
 * small walls need the hot starts to be solved every time (300 of 300 against 298); on large ones the last and longest run does
 * better from 0.2 than from 0.4, and an end at 0.002 loses some hundredths with trades.
 */
const HOT = [0.8, 0.6, 0.4, 0.2] as const;
const COLD = 0.001;
/** Another order of strips is tried once in so many changes, and counts so many steps for each wedge it changes, by its time. */
const STRIPS_EVERY = 128;
const STEPS_A_WEDGE = 8;
/** Changes tried to learn how much a change is. */
const MEASURED = 400;

/** A search from where the project stands, over all that the decisions leave open. */
export function searchFrom(project: Project, tables: CostTables, decisions: Decisions, seed: number): Search {
  if (decisions.sets.length === 0) return new Search(new LiveWall(tables, decisions.spare), decisions, seed);
  const spare = new Int32Array(decisions.spare.length + 2);
  spare.set(decisions.spare);
  const wall = new LiveWall(withRoomForOne(tables), spare);
  return new Search(wall, decisions, seed, new StripOrders(project, wall, decisions.sets));
}

export class Search {
  /** Changes tried; another order of strips counts several for each wedge it changes. */
  steps = 0;
  best: Kept;
  private readonly wall: LiveWall;
  private readonly decisions: Decisions;
  private readonly random: RandomGenerator;
  private readonly heat: number;
  private readonly orders: StripOrders | null;
  private readonly kindsOfChange: readonly (() => void)[];
  private run = 0;
  private temperature = 0;
  /** Hears what changes would add, none of which is then made. */
  private measuring: ((added: number) => void) | null = null;

  constructor(wall: LiveWall, decisions: Decisions, seed: number, orders: StripOrders | null = null) {
    this.wall = wall;
    this.decisions = decisions;
    this.random = xoroshiro128plus(seed);
    this.orders = orders;
    this.best = keep(wall, orders);
    this.kindsOfChange = this.changes();
    this.heat = this.measureHeat();
  }

  /** Some hundred steps at the temperature that belongs to `share`, the part of the budget that is spent, 0–1. */
  advance(share: number): void {
    while (this.run < RUNS.length - 1 && share >= RUNS[this.run + 1]!) this.run += 1;
    const from = RUNS[this.run]!;
    const to = RUNS[this.run + 1] ?? 1;
    const part = Math.min(1, Math.max(0, (share - from) / (to - from)));
    const hot = HOT[this.run]!;
    this.temperature = this.heat * hot * (COLD / hot) ** part;
    let tried = 0;
    while (tried < CHUNK) {
      tried += this.tryChange();
      if (this.wall.cost < this.best.cost - 1e-9) this.best = keep(this.wall, this.orders);
    }
    this.steps += tried;
  }

  private below(count: number): number {
    return uniformInt(this.random, 0, count - 1);
  }

  /** Tries one change; returns the steps it counts. */
  private tryChange(): number {
    const kinds = this.kindsOfChange;
    if (this.orders && (kinds.length === 0 || this.below(STRIPS_EVERY) === 0))
      return this.tryOrder(this.orders);
    kinds[this.below(kinds.length)]!();
    return 1;
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

  /** The changes there are, each as often as it is worth trying. */
  private changes(): (() => void)[] {
    const { cells, turnable, tradable, spare } = this.decisions;
    const changes: (() => void)[] = [];
    if (turnable.length > 0) changes.push(() => this.tryTurn());
    if (cells.length > 1)
      changes.push(
        () => this.trySwap(),
        () => this.trySwap(),
      );
    tradable.forEach((places, tip) => {
      if (places.length > 1)
        changes.push(
          () => this.tryTrade(places),
          () => this.tryTrade(places),
        );
      const kinds = Int32Array.from(spare.keys()).filter(
        (kind) => kind % 2 === tip && this.isUsed(kind, places),
      );
      if (places.length > 0 && kinds.length > 1 && spare.some((n, kind) => n > 0 && kind % 2 === tip)) {
        changes.push(() => this.tryReplace(places, kinds));
      }
    });
    return changes;
  }

  private isUsed(kind: number, places: Int32Array): boolean {
    return this.decisions.spare[kind]! > 0 || places.some((place) => this.wall.kindAt[place] === kind);
  }

  private tryTurn(): void {
    const { wall, decisions } = this;
    const block = decisions.turnable[this.below(decisions.turnable.length)]!;
    const standings = decisions.standings[block]!;
    const was = wall.standingOf[block]!;
    const stands = standings[this.below(standings.length)]!;
    if (stands === was) return;
    if (!this.accepts(wall.turn(block, stands))) wall.turn(block, was);
  }

  private trySwap(): void {
    const { wall, decisions } = this;
    const { cells } = decisions;
    const first = this.below(cells.length);
    const step = 1 + this.below(cells.length - 1);
    const cell = cells[first]!;
    const other = cells[(first + step) % cells.length]!;
    const block = wall.blockIn[cell]!;
    const second = wall.blockIn[other]!;
    const stands = wall.bestStanding(block, other, decisions.standings[block]!, cell);
    const otherStands = wall.bestStanding(second, cell, decisions.standings[second]!, other);
    const added = wall.swapCost(cell, other, stands, otherStands);
    if (this.accepts(added)) wall.swap(cell, other, stands, otherStands, added);
  }

  private tryTrade(places: Int32Array): void {
    const { wall } = this;
    const first = this.below(places.length);
    const place = places[first]!;
    const other = places[(first + 1 + this.below(places.length - 1)) % places.length]!;
    if (wall.kindAt[place] === wall.kindAt[other]) return;
    const added = wall.tradeCost(place, other);
    if (this.accepts(added)) wall.trade(place, other, added);
  }

  private tryReplace(places: Int32Array, kinds: Int32Array): void {
    const { wall } = this;
    const place = places[this.below(places.length)]!;
    const kind = kinds[this.below(kinds.length)]!;
    if (wall.spare[kind]! <= 0 || wall.kindAt[place] === kind) return;
    const added = wall.replaceCost(place, kind);
    if (this.accepts(added)) wall.replace(place, kind, added);
  }

  /** The mean worsening of a random change, measured by trying some and taking none. */
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
