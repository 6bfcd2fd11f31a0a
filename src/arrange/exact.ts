// The best arrangement of a small wall, found and proved: every order of the blocks is weighed by its spread, and in the order
// of that weight the best turns for each are found exactly, until no order can be better any more.
import { aloneCost, type Contacts, leastTouching, touchingCost } from './contacts';
import type { Standings } from './movesBetween';
import { aloneSpread, kernelTable, likenessOf, type Spread } from './spread';

/** Orders that are gone through; nine blocks that may change cells. */
const MOST_ORDERS = 362_880;
/** Combinations of standings kept at a time while the turns are found. */
const MOST_STATES = 4096;
/** A lower score by less than this is the same score. */
const LEAST_GAIN = 1e-9;

export interface Exact extends Standings {
  readonly cost: number;
}

/** Whether a wall is small enough for bestOf. */
export function isSmall(contacts: Contacts, movable: number): boolean {
  let orders = 1;
  for (let count = 2; count <= movable; count++) orders *= count;
  const most = Math.max(1, ...contacts.decisions.standings.map((one) => one.length));
  const { rows, columns, even } = contacts.tables.model;
  // The turns are found line by line over a whole grid.
  if (!even) return false;
  return orders <= MOST_ORDERS && most ** Math.min(rows, columns) <= MOST_STATES;
}

/**
 * The arrangement with the least score of all that turns and exchanges can reach, wedges staying where they are; null when
 * none is below `known`, the score of one already found (a good one saves most of the work).
 */
export function bestOf(contacts: Contacts, spread: Spread, known = Number.POSITIVE_INFINITY): Exact | null {
  const { model } = contacts.tables;
  const { cells } = contacts.decisions;
  const least = new LeastMeetings(contacts);
  const orders = new Orders(contacts, spread, known - contacts.constant - least.alone);
  let best: Exact | null = null;
  let below = known;
  const blockIn = model.blockIn.slice();
  for (const order of orders.byCost()) {
    const spreadCost = orders.cost(order);
    if (contacts.constant + spreadCost + least.alone >= below - LEAST_GAIN) break;
    cells.forEach((cell, at) => {
      blockIn[cell] = orders.block(order, at);
    });
    if (contacts.constant + spreadCost + least.of(blockIn) >= below - LEAST_GAIN) continue;
    const turned = bestTurns(contacts, blockIn);
    const cost = contacts.constant + spreadCost + turned.cost;
    if (cost >= below - LEAST_GAIN) continue;
    below = cost;
    best = { cost, blockIn: blockIn.slice(), standingOf: turned.standingOf, kindAt: model.kindAt };
  }
  return best;
}

/** Orders of the blocks over the cells that may change, with the spread of each; those at `below` or above are left out. */
class Orders {
  private readonly blocks: number[];
  private readonly held: number[] = [];
  private readonly costs: number[] = [];
  private readonly spread: Spread;
  private readonly movable: Int32Array;
  private readonly kernel: Float64Array;
  private readonly cells: Int32Array;
  /** Position among the filled cells of each movable one. */
  private readonly at: number[];
  private readonly likeness: Float64Array;
  private readonly below: number;

  constructor(contacts: Contacts, spread: Spread, below: number) {
    const { model } = spread.tables;
    this.spread = spread;
    this.below = below;
    this.movable = contacts.decisions.cells;
    this.cells = spread.cells;
    this.kernel = kernelTable(spread.tables, spread.cells);
    this.blocks = Array.from(this.movable, (cell) => model.blockIn[cell]!);
    this.at = Array.from(this.movable, (cell) => spread.cells.indexOf(cell));
    const size = model.blocks.length;
    this.likeness = new Float64Array(size * size);
    for (let one = 0; one < size; one++) {
      for (let other = 0; other < size; other++) {
        this.likeness[one * size + other] = likenessOf(spread, one, other);
      }
    }
    this.weighAll();
  }

  cost(order: number): number {
    return this.costs[order]!;
  }

  block(order: number, at: number): number {
    return this.blocks[this.held[order * this.movable.length + at]!]!;
  }

  byCost(): Uint32Array {
    return Uint32Array.from(this.costs.keys()).sort(
      (one, other) => this.costs[one]! - this.costs[other]! || one - other,
    );
  }

  private weighAll(): void {
    const { tables, value, warmth } = this.spread;
    const { basis, model } = tables;
    const placed: Placed[] = [];
    let start = tables.valueConstant;
    const moment = [0, 0, 0, 0];
    this.cells.forEach((cell, at) => {
      moment[0]! -= basis.target[cell]! * basis.fromMiddleX[cell]!;
      moment[1]! -= basis.target[cell]! * basis.fromMiddleY[cell]!;
      if (this.at.includes(at)) return;
      const block = model.blockIn[cell]!;
      start += this.added(placed, at, block);
      placed.push([at, block]);
      moment[0]! += value[block]! * basis.fromMiddleX[cell]!;
      moment[1]! += value[block]! * basis.fromMiddleY[cell]!;
      moment[2]! += warmth[block]! * basis.fromMiddleX[cell]!;
      moment[3]! += warmth[block]! * basis.fromMiddleY[cell]!;
    });
    this.place([], start, moment, placed);
  }

  private place(order: number[], cost: number, moment: readonly number[], placed: Placed[]): void {
    const { tables, value, warmth } = this.spread;
    if (order.length === this.movable.length) {
      const [x, y, warmX, warmY] = moment as [number, number, number, number];
      const all =
        cost + tables.valueMoment * (x * x + y * y) + tables.warmthMoment * (warmX * warmX + warmY * warmY);
      if (all < this.below) {
        this.held.push(...order);
        this.costs.push(all);
      }
      return;
    }
    const depth = order.length;
    const cell = this.movable[depth]!;
    const x = tables.basis.fromMiddleX[cell]!;
    const y = tables.basis.fromMiddleY[cell]!;
    for (let index = 0; index < this.blocks.length; index++) {
      if (order.includes(index)) continue;
      const block = this.blocks[index]!;
      const added = this.added(placed, this.at[depth]!, block);
      const next = [
        moment[0]! + value[block]! * x,
        moment[1]! + value[block]! * y,
        moment[2]! + warmth[block]! * x,
        moment[3]! + warmth[block]! * y,
      ];
      order.push(index);
      placed.push([this.at[depth]!, block]);
      this.place(order, cost + added, next, placed);
      placed.pop();
      order.pop();
    }
  }

  /** What a block adds in a filled cell beside those placed already. */
  private added(placed: readonly Placed[], at: number, block: number): number {
    const size = this.spread.tables.model.blocks.length;
    let cost = aloneSpread(this.spread, block, this.cells[at]!);
    for (const [other, held] of placed) {
      cost += 2 * this.kernel[at * this.cells.length + other]! * this.likeness[block * size + held]!;
    }
    return cost;
  }
}

/** A position among the filled cells, and the block in it. */
type Placed = readonly [at: number, block: number];

/** Lower bounds for the contacts of an order, whatever the turns. */
class LeastMeetings {
  /** The least all blocks cost by themselves in any cell. */
  readonly alone: number;
  private readonly contacts: Contacts;
  private readonly meetings: Float64Array;

  constructor(contacts: Contacts) {
    const { model } = contacts.tables;
    const size = model.blocks.length;
    this.contacts = contacts;
    this.meetings = new Float64Array(size * size * 2).fill(Number.NaN);
    this.alone = Array.from(model.blockIn)
      .filter((block) => block >= 0)
      .reduce((sum, block) => sum + Math.min(...contacts.corners[block]!), 0);
  }

  of(blockIn: Int32Array): number {
    const { model } = this.contacts.tables;
    let sum = 0;
    for (let cell = 0; cell < blockIn.length; cell++) {
      const block = blockIn[cell]!;
      if (block < 0) continue;
      for (const side of [1, 2]) {
        const next = model.beyond[cell * 4 + side]!;
        const other = next < 0 ? -1 : blockIn[next]!;
        if (other >= 0) sum += model.acrossAt[cell * 4 + side]! * this.meeting(block, other, side);
      }
    }
    return sum + this.alone;
  }

  private meeting(block: number, other: number, side: number): number {
    const key = (block * this.contacts.tables.model.blocks.length + other) * 2 + side - 1;
    let least = this.meetings[key]!;
    if (Number.isNaN(least)) {
      least = leastTouching(this.contacts, block, other, side);
      this.meetings[key] = least;
    }
    return least;
  }
}

/**
 * The best standings for blocks in their cells, exactly: place by place of the grid, keeping for every combination of
 * standings along the edge of what is done the least cost that leads there (dynamic programming).
 */
function bestTurns(contacts: Contacts, blockIn: Int32Array): { cost: number; standingOf: Int32Array } {
  const { model } = contacts.tables;
  const upright = model.columns > model.rows;
  const [length, width] = upright ? [model.columns, model.rows] : [model.rows, model.columns];
  const radix = Math.max(1, ...contacts.decisions.standings.map((one) => one.length));
  let table = new Float64Array(radix ** width).fill(Number.POSITIVE_INFINITY);
  table[0] = 0;
  const steps: Step[] = [];
  for (let line = 0; line < length; line++) {
    for (let at = 0; at < width; at++) {
      const cell = model.cellAt[upright ? at * model.columns + line : line * model.columns + at]!;
      // Towards the place before in the line, and towards the one in the line before.
      const sides = upright ? ([0, 3] as const) : ([3, 0] as const);
      const done = oneMore(contacts, blockIn, cell, sides, { table, radix, place: radix ** at });
      steps.push({ cell, place: radix ** at, from: done.from });
      table = done.table;
    }
  }
  return traced(contacts, blockIn, table, steps, radix);
}

interface Step {
  readonly cell: number;
  /** Weight of this place's standing in the number of a state. */
  readonly place: number;
  /** State before, by state after. */
  readonly from: Int32Array;
}

interface Edge {
  readonly table: Float64Array;
  readonly radix: number;
  readonly place: number;
}

function oneMore(
  contacts: Contacts,
  blockIn: Int32Array,
  cell: number,
  [before, above]: readonly [number, number],
  { table, radix, place }: Edge,
): { table: Float64Array<ArrayBuffer>; from: Int32Array } {
  const block = cell < 0 ? -1 : blockIn[cell]!;
  const next = new Float64Array(table.length).fill(Number.POSITIVE_INFINITY);
  const from = new Int32Array(table.length).fill(-1);
  const count = block < 0 ? 1 : contacts.decisions.standings[block]!.length;
  const costs = Array.from({ length: count }, (_, own) =>
    block < 0 ? 0 : aloneCost(contacts, block, own, cell),
  );
  const meets = (side: number) => meetingCosts(contacts, blockIn, cell, side, count, radix);
  const withBefore = meets(before);
  const withAbove = meets(above);
  for (let state = 0; state < table.length; state++) {
    const cost = table[state]!;
    if (cost === Number.POSITIVE_INFINITY) continue;
    const was = Math.floor(state / place) % radix;
    const beside = Math.floor((state * radix) / place) % radix;
    for (let own = 0; own < count; own++) {
      const sum =
        cost +
        costs[own]! +
        (withAbove?.[own * radix + was] ?? 0) +
        (withBefore?.[own * radix + beside] ?? 0);
      const to = state + (own - was) * place;
      if (sum < next[to]!) {
        next[to] = sum;
        from[to] = state;
      }
    }
  }
  return { table: next, from };
}

/** Cost of a block and its neighbour on a side: own standing × radix + the neighbour's. Null without a neighbour. */
function meetingCosts(
  contacts: Contacts,
  blockIn: Int32Array,
  cell: number,
  side: number,
  count: number,
  radix: number,
): Float64Array | null {
  const { model } = contacts.tables;
  const block = cell < 0 ? -1 : blockIn[cell]!;
  const beyond = block < 0 ? -1 : model.beyond[cell * 4 + side]!;
  const other = beyond < 0 ? -1 : blockIn[beyond]!;
  if (other < 0) return null;
  const costs = new Float64Array(count * radix);
  const across = model.acrossAt[cell * 4 + side]!;
  for (let own = 0; own < count; own++) {
    for (let its = 0; its < contacts.decisions.standings[other]!.length; its++) {
      costs[own * radix + its] = across * touchingCost(contacts, block, own, other, its, side);
    }
  }
  return costs;
}

function traced(
  contacts: Contacts,
  blockIn: Int32Array,
  table: Float64Array,
  steps: readonly Step[],
  radix: number,
): { cost: number; standingOf: Int32Array } {
  const standingOf = contacts.tables.model.standingOf.slice();
  let state = table.indexOf(Math.min(...table));
  const cost = table[state]!;
  for (const { cell, from, place } of steps.toReversed()) {
    const block = cell < 0 ? -1 : blockIn[cell]!;
    if (block >= 0)
      standingOf[block] = contacts.decisions.standings[block]![Math.floor(state / place) % radix]!;
    state = from[state]!;
  }
  return { cost, standingOf };
}
