// The wall while it is being arranged: the cell, orientation and wedges of each block and the weighted score, kept up to date
// move by move on typed arrays. A move is tried, so that its cost is known, then kept or taken back. search/ chooses the moves.

import type { Arrangement } from '../movesBetween';
import { type CostTables, clashCost } from './costTables';
import { type Hanging, NONE } from './hanging';
import { LiveContact } from './liveContact';
import { LiveSpread } from './liveSpread';

export class LiveWall implements Arrangement, Hanging {
  readonly tables: CostTables;
  readonly typeAt: Int32Array;
  readonly orientationOf: Int32Array;
  readonly blockIn: Int32Array;
  readonly cellOf: Int32Array;
  /** Wedges left over, by type. */
  readonly spare: Int32Array;
  /** The weighted score of what hangs, as balance/score/terms has it. */
  cost = 0;
  private readonly perBlock: number;
  private readonly contact: LiveContact;
  private readonly spread: LiveSpread;

  constructor(tables: CostTables, spare: Int32Array) {
    const { model } = tables;
    this.tables = tables;
    this.perBlock = model.perBlock;
    this.typeAt = model.typeAt.slice();
    this.orientationOf = model.orientationOf.slice();
    this.blockIn = model.blockIn.slice();
    this.cellOf = model.cellOf.slice();
    this.spare = spare.slice();
    this.contact = new LiveContact(tables, this);
    this.spread = new LiveSpread(tables, this);
    this.cost = clashCost(tables) + this.spread.cost();
  }

  /** Gives the block another orientation and returns what that adds to the score. The old orientation takes it back. */
  turn(block: number, stands: number): number {
    const cell = this.cellOf[block]!;
    const before = this.contact.ofBlock(block, cell);
    this.orientationOf[block] = stands;
    const added = this.contact.ofBlock(block, cell) - before;
    this.cost += added;
    return added;
  }

  /** What exchanging the blocks of two filled cells would add to the score, with the orientations given. Nothing changes. */
  swapCost(cell: number, other: number, stands: number, otherStands: number): number {
    const block = this.blockIn[cell]!;
    const second = this.blockIn[other]!;
    const wasStanding = this.orientationOf[block]!;
    const secondWas = this.orientationOf[second]!;
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
    const type = this.typeAt[place]!;
    const second = this.typeAt[other]!;
    const block = (place / this.perBlock) | 0;
    const otherBlock = (other / this.perBlock) | 0;
    const before = this.contact.ofTwoWedges(place, other);
    this.typeAt[place] = second;
    this.typeAt[other] = type;
    const after = this.contact.ofTwoWedges(place, other);
    this.typeAt[place] = type;
    this.typeAt[other] = second;
    if (block === otherBlock) return after - before;
    return after - before + this.spread.tradeCost(block, type, second, otherBlock);
  }

  trade(place: number, other: number, added: number): void {
    const type = this.typeAt[place]!;
    const second = this.typeAt[other]!;
    const block = (place / this.perBlock) | 0;
    const otherBlock = (other / this.perBlock) | 0;
    this.typeAt[place] = second;
    this.typeAt[other] = type;
    this.cost += added;
    this.contact.readRims(block);
    if (block === otherBlock) return;
    this.contact.readRims(otherBlock);
    this.spread.trade(block, type, second, otherBlock);
  }

  /** What putting a left-over wedge in a place would add; as tradeCost, to be followed by replace if it is to be done. */
  replaceCost(place: number, type: number): number {
    const oldType = this.typeAt[place]!;
    const block = (place / this.perBlock) | 0;
    const before = this.contact.ofWedge(place);
    this.typeAt[place] = type;
    const after = this.contact.ofWedge(place);
    this.typeAt[place] = oldType;
    return after - before + this.spread.tradeCost(block, oldType, type, NONE);
  }

  replace(place: number, type: number, added: number): void {
    const oldType = this.typeAt[place]!;
    this.typeAt[place] = type;
    this.spare[oldType]! += 1;
    this.spare[type]! -= 1;
    this.cost += added;
    const block = (place / this.perBlock) | 0;
    this.contact.readRims(block);
    this.spread.trade(block, oldType, type, NONE);
  }

  /** The orientation among those given in which the block of a cell meets its neighbours best; the first of equals. */
  bestStanding(block: number, cell: number, orientations: Int32Array, skip: number): number {
    let best = orientations[0]!;
    let least = Number.POSITIVE_INFINITY;
    for (const stands of orientations) {
      const cost = this.contact.ofSides(block, stands, cell, skip);
      if (cost < least - 1e-12) {
        least = cost;
        best = stands;
      }
    }
    return best;
  }

  /** Calls the wedge in a place by another type whose figures are the very same by now. */
  rename(place: number, type: number): void {
    this.spare[this.typeAt[place]!]! += 1;
    this.spare[type]! -= 1;
    this.typeAt[place] = type;
  }

  /** Forgets what is known of the seams of a type, after its figures have changed. */
  forgetSeams(type: number): void {
    this.contact.forgetSeams(type);
  }

  private hang(block: number, cell: number, stands: number): void {
    this.blockIn[cell] = block;
    this.cellOf[block] = cell;
    this.orientationOf[block] = stands;
  }
}
