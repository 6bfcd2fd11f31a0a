// Lists every order of the blocks over the cells that may change, with the spread of each: the first half of the proof of a
// small wall (exactOptimum.ts).
import type { Contacts } from './contactTables';
import { aloneSpread, kernelTable, likenessOf, rowIn, type Spread } from './spreadAssignment';

/** Orders of the blocks with the spread of each; orders whose spread is `below` or more are left out. */
export class Orders {
  private readonly blocks: number[];
  private readonly orders: number[] = [];
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
    const size = spread.sorts * model.blocks.length;
    this.likeness = new Float64Array(size * size);
    for (let one = 0; one < size; one++) {
      for (let other = 0; other < size; other++) {
        this.likeness[one * size + other] = likenessOf(spread, one, other);
      }
    }
  }

  cost(order: number): number {
    return this.costs[order]!;
  }

  block(order: number, at: number): number {
    return this.blocks[this.orders[order * this.movable.length + at]!]!;
  }

  byCost(): Uint32Array {
    return Uint32Array.from(this.costs.keys()).sort(
      (one, other) => this.costs[one]! - this.costs[other]! || one - other,
    );
  }

  /** Weighs all orders. Run it to its end before asking anything else. Yields every few thousand orders. */
  *weighing(): Generator<void, void> {
    const { tables, value, warmth } = this.spread;
    const { scales, model } = tables;
    const placed: Placed[] = [];
    let start = tables.valueConstant;
    const moment = [0, 0, 0, 0];
    this.cells.forEach((cell, at) => {
      moment[0]! -= scales.target[cell]! * scales.fromMiddleX[cell]!;
      moment[1]! -= scales.target[cell]! * scales.fromMiddleY[cell]!;
      if (this.at.includes(at)) return;
      const block = model.blockIn[cell]!;
      start += this.added(placed, at, block);
      placed.push([at, block]);
      const row = rowIn(this.spread, block, cell);
      moment[0]! += value[row]! * scales.fromMiddleX[cell]!;
      moment[1]! += value[row]! * scales.fromMiddleY[cell]!;
      moment[2]! += warmth[row]! * scales.fromMiddleX[cell]!;
      moment[3]! += warmth[row]! * scales.fromMiddleY[cell]!;
    });
    for (const firsts of this.beginnings()) {
      this.place([], start, moment, placed, firsts);
      yield;
    }
  }

  /** Every choice of the first two blocks. */
  private beginnings(): number[][] {
    const indices = [...this.blocks.keys()];
    if (indices.length < 2) return [indices];
    return indices.flatMap((one) => indices.filter((other) => other !== one).map((other) => [one, other]));
  }

  /** All orders that begin with `firsts`, from what is placed of them. */
  private place(
    order: number[],
    cost: number,
    moment: readonly number[],
    placed: Placed[],
    firsts: readonly number[],
  ): void {
    const { tables, value, warmth } = this.spread;
    if (order.length === this.movable.length) {
      const [x, y, warmX, warmY] = moment as [number, number, number, number];
      const all =
        cost + tables.valueMoment * (x * x + y * y) + tables.warmthMoment * (warmX * warmX + warmY * warmY);
      if (all < this.below) {
        this.orders.push(...order);
        this.costs.push(all);
      }
      return;
    }
    const depth = order.length;
    const cell = this.movable[depth]!;
    const x = tables.scales.fromMiddleX[cell]!;
    const y = tables.scales.fromMiddleY[cell]!;
    for (let index = 0; index < this.blocks.length; index++) {
      if (order.includes(index) || (firsts[depth] ?? index) !== index) continue;
      const block = this.blocks[index]!;
      const added = this.added(placed, this.at[depth]!, block);
      const row = rowIn(this.spread, block, cell);
      const next = [
        moment[0]! + value[row]! * x,
        moment[1]! + value[row]! * y,
        moment[2]! + warmth[row]! * x,
        moment[3]! + warmth[row]! * y,
      ];
      order.push(index);
      placed.push([this.at[depth]!, block]);
      this.place(order, cost + added, next, placed, firsts);
      placed.pop();
      order.pop();
    }
  }

  /** The cost that a block adds in a filled cell, given the blocks placed already. */
  private added(placed: readonly Placed[], at: number, block: number): number {
    const size = this.spread.sorts * this.spread.tables.model.blocks.length;
    const row = rowIn(this.spread, block, this.cells[at]!);
    let cost = aloneSpread(this.spread, block, this.cells[at]!);
    for (const [other, block] of placed) {
      cost +=
        2 *
        this.kernel[at * this.cells.length + other]! *
        this.likeness[row * size + rowIn(this.spread, block, this.cells[other]!)]!;
    }
    return cost;
  }
}

/** A position among the filled cells, and the block in it. */
type Placed = readonly [at: number, block: number];
