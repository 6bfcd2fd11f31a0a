// The wall while it is being arranged: where each block hangs and stands, which wedges it has, and the weighted score, kept up
// to date move by move on typed arrays. A move is tried (its cost known), then kept or taken back. Which to try is the search's.

import type { Standings } from '../movesBetween';
import { type CostTables, clashCost } from './costTables';
import { type Hanging, NONE } from './hanging';
import { LiveContact } from './liveContact';
import { LiveSpread } from './liveSpread';

export class LiveWall implements Standings, Hanging {
  readonly tables: CostTables;
  readonly kindAt: Int32Array;
  readonly standingOf: Int32Array;
  readonly blockIn: Int32Array;
  readonly cellOf: Int32Array;
  /** Wedges left over, by kind. */
  readonly spare: Int32Array;
  /** The weighted score of what hangs, as balance/terms has it. */
  cost = 0;
  private readonly perBlock: number;
  private readonly contact: LiveContact;
  private readonly spread: LiveSpread;

  constructor(tables: CostTables, spare: Int32Array) {
    const { model } = tables;
    this.tables = tables;
    this.perBlock = model.perBlock;
    this.kindAt = model.kindAt.slice();
    this.standingOf = model.standingOf.slice();
    this.blockIn = model.blockIn.slice();
    this.cellOf = model.cellOf.slice();
    this.spare = spare.slice();
    this.contact = new LiveContact(tables, this);
    this.spread = new LiveSpread(tables, this);
    this.cost = clashCost(tables) + this.spread.cost();
  }

  /** Stands the block otherwise and returns what that adds to the score. Taken back by standing it as before. */
  turn(block: number, stands: number): number {
    const cell = this.cellOf[block]!;
    const before = this.contact.ofBlock(block, cell);
    this.standingOf[block] = stands;
    const added = this.contact.ofBlock(block, cell) - before;
    this.cost += added;
    return added;
  }

  /** What exchanging the blocks of two filled cells would add to the score, with the standings given. Nothing changes. */
  swapCost(cell: number, other: number, stands: number, otherStands: number): number {
    const block = this.blockIn[cell]!;
    const second = this.blockIn[other]!;
    const wasStanding = this.standingOf[block]!;
    const secondWas = this.standingOf[second]!;
    const before = this.contact.ofTwoCells(cell, other);
    this.hang(second, cell, otherStands);
    this.hang(block, other, stands);
    const after = this.contact.ofTwoCells(cell, other);
    this.hang(block, cell, wasStanding);
    this.hang(second, other, secondWas);
    return after - before + this.spread.swapCost(cell, other);
  }

  /** Exchanges the blocks of two filled cells; `added` is what swapCost gave for it. */
  swap(cell: number, other: number, stands: number, otherStands: number, added: number): void {
    const block = this.blockIn[cell]!;
    const second = this.blockIn[other]!;
    this.spread.swap(cell, other);
    this.hang(second, cell, otherStands);
    this.hang(block, other, stands);
    this.cost += added;
  }

  /**
   * What exchanging the wedges of two places (block × N + place) would add to the score. Both blocks must hang. Leaves the
   * changes of figures for `trade`, which must follow at once if it is to be done.
   */
  tradeCost(place: number, other: number): number {
    const kind = this.kindAt[place]!;
    const second = this.kindAt[other]!;
    const block = (place / this.perBlock) | 0;
    const otherBlock = (other / this.perBlock) | 0;
    const before = this.contact.ofTwoWedges(place, other);
    this.kindAt[place] = second;
    this.kindAt[other] = kind;
    const after = this.contact.ofTwoWedges(place, other);
    this.kindAt[place] = kind;
    this.kindAt[other] = second;
    if (block === otherBlock) return after - before;
    return after - before + this.spread.tradeCost(block, kind, second, otherBlock);
  }

  trade(place: number, other: number, added: number): void {
    const kind = this.kindAt[place]!;
    const second = this.kindAt[other]!;
    const block = (place / this.perBlock) | 0;
    const otherBlock = (other / this.perBlock) | 0;
    this.kindAt[place] = second;
    this.kindAt[other] = kind;
    this.cost += added;
    this.contact.readRims(block);
    if (block === otherBlock) return;
    this.contact.readRims(otherBlock);
    this.spread.trade(block, kind, second, otherBlock);
  }

  /** What putting a left-over wedge in a place would add; as tradeCost, to be followed by replace if it is to be done. */
  replaceCost(place: number, kind: number): number {
    const held = this.kindAt[place]!;
    const block = (place / this.perBlock) | 0;
    const before = this.contact.ofWedge(place);
    this.kindAt[place] = kind;
    const after = this.contact.ofWedge(place);
    this.kindAt[place] = held;
    return after - before + this.spread.tradeCost(block, held, kind, NONE);
  }

  replace(place: number, kind: number, added: number): void {
    const held = this.kindAt[place]!;
    this.kindAt[place] = kind;
    this.spare[held]! += 1;
    this.spare[kind]! -= 1;
    this.cost += added;
    const block = (place / this.perBlock) | 0;
    this.contact.readRims(block);
    this.spread.trade(block, held, kind, NONE);
  }

  /** The standing among those given in which the block of a cell meets its neighbours best; the first of equals. */
  bestStanding(block: number, cell: number, standings: Int32Array, skip: number): number {
    let best = standings[0]!;
    let least = Number.POSITIVE_INFINITY;
    for (const stands of standings) {
      const cost = this.contact.ofSides(block, stands, cell, skip);
      if (cost < least - 1e-12) {
        least = cost;
        best = stands;
      }
    }
    return best;
  }

  /** Calls the wedge in a place by another kind whose figures are the very same by now. */
  rename(place: number, kind: number): void {
    this.spare[this.kindAt[place]!]! += 1;
    this.spare[kind]! -= 1;
    this.kindAt[place] = kind;
  }

  /** Forgets what is known of the seams of a kind, after its figures have changed. */
  forgetSeams(kind: number): void {
    this.contact.forgetSeams(kind);
  }

  private hang(block: number, cell: number, stands: number): void {
    this.blockIn[cell] = block;
    this.cellOf[block] = cell;
    this.standingOf[block] = stands;
  }
}
