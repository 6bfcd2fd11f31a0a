// The wall while it is being arranged: the cell, orientation and wedges of each block and the weighted score, kept up to date
// move by move on typed arrays. A move is tried, so that its cost is known, then kept or taken back. search/ chooses the moves.

import type { Choices } from '../choices/choices';
import type { Arrangement } from '../movesBetween';
import type { BlockLaying } from './blockLaying';
import { type CostTables, clashCost } from './costTables';
import type { Hanging } from './hanging';
import { LiveContact } from './liveContact';
import { LiveSpread } from './liveSpread';

/** A choice of wedges for a whole block, and what it would add without contact. */
interface Given {
  readonly choices: Choices;
  readonly choice: number;
  readonly spread: number;
}

/** A trade is not looked into where it would have to take away the contact of so many blocks. */
const CONTACT_OF = 6;

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
  /** The part of it that is contact. */
  private touching: number;
  private readonly perBlock: number;
  /** What is sewn to what; blockLaying.ts reads it too. */
  readonly contact: LiveContact;
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
    this.touching = clashCost(tables);
    this.cost = this.touching + this.spread.cost();
  }

  /** Gives the block another orientation and returns what that adds to the score. The old orientation takes it back. */
  turn(block: number, stands: number): number {
    const cell = this.cellOf[block]!;
    const before = this.contact.ofBlock(block, cell);
    this.orientationOf[block] = stands;
    const added = this.contact.ofBlock(block, cell) - before;
    this.touching += added;
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
    this.touching -= this.contact.ofTwoCells(cell, other);
    this.hang(second, cell, otherStands);
    this.hang(block, other, stands);
    this.touching += this.contact.ofTwoCells(cell, other);
    this.cost += added;
  }

  /** What exchanging the wedges of two places (block × N + place) would add to the score. Both blocks must hang. Nothing changes. */
  tradeCost(place: number, other: number): number {
    const before = this.contact.ofTwoWedges(place, other);
    this.exchange(place, other);
    const after = this.contact.ofTwoWedges(place, other);
    this.exchange(place, other);
    return after - before + this.spreadOfTrade(place, other, Number.POSITIVE_INFINITY);
  }

  private spreadOfTrade(place: number, other: number, most: number): number {
    const block = (place / this.perBlock) | 0;
    const otherBlock = (other / this.perBlock) | 0;
    if (block === otherBlock) return 0;
    return this.spread.tradeCost(block, this.typeAt[place]!, this.typeAt[other]!, otherBlock, most);
  }

  /**
   * Exchanges the wedges of places in two blocks and lays the wedges of both where they meet least, but only if all that adds `most`
   * at most; where they still meet too much in each of some hundred orders, it may give up. Returns whether it did.
   */
  tradeAndLay(place: number, other: number, most: number, laying: BlockLaying): boolean {
    // Two blocks seldom have more contact to take away than so many others: most trades end here.
    const least = most + this.touching * Math.min(1, CONTACT_OF / this.tables.model.blocks.length);
    const spread = this.spreadOfTrade(place, other, least);
    if (spread > least) return false;
    const block = (place / this.perBlock) | 0;
    const otherBlock = (other / this.perBlock) | 0;
    const gone = this.typeAt[place]!;
    const come = this.typeAt[other]!;
    const touching = this.layTraded(place, other, most - spread, laying);
    if (touching === null) return false;
    this.touching += touching;
    this.cost += spread + touching;
    this.contact.readRims(block);
    this.contact.readRims(otherBlock);
    this.spread.trade(block, gone, come, otherBlock);
    return true;
  }

  /** Lays the wedges of both blocks with the two exchanged; the contact that adds, or null where it would be `most` or more. */
  private layTraded(place: number, other: number, most: number, laying: BlockLaying): number | null {
    const { typeAt, perBlock } = this;
    const block = (place / perBlock) | 0;
    const otherBlock = (other / perBlock) | 0;
    const gone = typeAt[place]!;
    const come = typeAt[other]!;
    const before = laying.costOf(block);
    const room = most + before + laying.costOf(otherBlock) - laying.leastSeams(otherBlock, gone);
    if (laying.leastSeams(block, come) > room) return null;
    const lay = typeAt.slice(block * perBlock, (block + 1) * perBlock);
    typeAt[place] = come;
    const after = laying.lay(block, room);
    if (after !== null) {
      const otherBefore = laying.costOf(otherBlock);
      typeAt[other] = gone;
      const otherAfter = laying.lay(otherBlock, most + otherBefore + before - after);
      if (otherAfter !== null) return after - before + otherAfter - otherBefore;
      typeAt[other] = come;
    }
    typeAt.set(lay, block * perBlock);
    return null;
  }

  /** What each choice of wedges for a block would add without contact, into a list. Nothing changes. */
  choiceCosts(block: number, choices: Choices, into: Float64Array): void {
    this.spread.choiceCosts(block, choices, into);
  }

  /**
   * Gives a block the wedges of a choice and lays them where they meet least, if they are left over and all that adds `most` at most;
   * `spread` is what choiceCosts gave for it. Returns whether it did; its own wedges are then left over.
   */
  giveAndLay(block: number, { choices, choice, spread }: Given, most: number, laying: BlockLaying): boolean {
    const before = laying.costOf(block);
    if (spread > most + before) return false;
    const { perBlock, typeAt } = this;
    const from = block * perBlock;
    const was = typeAt.slice(from, from + perBlock);
    const next = choices.types.slice(choice * perBlock, (choice + 1) * perBlock);
    if (!this.takeFromSpare(was, next)) return false;
    // Tips alternate round the block, and those of a choice begin with one that is up.
    typeAt.set(was[0]! % 2 === 0 ? next : [...next.subarray(1), next[0]!], from);
    const after = laying.lay(block, most - spread + before);
    if (after === null) {
      this.takeFromSpare(next, was);
      typeAt.set(was, from);
      return false;
    }
    this.touching += after - before;
    this.cost += spread + after - before;
    this.contact.readRims(block);
    this.spread.give(block, choices, choice);
    return true;
  }

  /** Lays wedges back to those left over and takes others; false, and nothing changes, where they are too few. */
  private takeFromSpare(back: Int32Array, taken: Int32Array): boolean {
    const { spare } = this;
    for (const type of back) spare[type]! += 1;
    for (const type of taken) spare[type]! -= 1;
    let least = 0;
    for (const type of taken) least = Math.min(least, spare[type]!);
    if (least >= 0) return true;
    for (const type of taken) spare[type]! += 1;
    for (const type of back) spare[type]! -= 1;
    return false;
  }

  private exchange(place: number, other: number): void {
    const type = this.typeAt[place]!;
    this.typeAt[place] = this.typeAt[other]!;
    this.typeAt[other] = type;
  }

  trade(place: number, other: number, added: number): void {
    const type = this.typeAt[place]!;
    const second = this.typeAt[other]!;
    const block = (place / this.perBlock) | 0;
    const otherBlock = (other / this.perBlock) | 0;
    this.touching -= this.contact.ofTwoWedges(place, other);
    this.exchange(place, other);
    this.touching += this.contact.ofTwoWedges(place, other);
    this.cost += added;
    this.contact.readRims(block);
    if (block === otherBlock) return;
    this.contact.readRims(otherBlock);
    this.spread.trade(block, type, second, otherBlock);
  }

  /** What putting a left-over wedge in a place would add. Nothing changes. */
  replaceCost(place: number, type: number): number {
    const oldType = this.typeAt[place]!;
    const block = (place / this.perBlock) | 0;
    const before = this.contact.ofWedge(place);
    this.typeAt[place] = type;
    const after = this.contact.ofWedge(place);
    this.typeAt[place] = oldType;
    return after - before + this.spread.replaceCost(block, oldType, type);
  }

  /** Puts a left-over wedge in a place for good; `added` is what replaceCost gave for it. */
  replace(place: number, type: number, added: number): void {
    this.tryInstead(place, type, added);
    this.replaced(place);
  }

  /** As replace, for a wedge that is only tried: it is put back in the same way, or `replaced` is told before wedges are traded. */
  tryInstead(place: number, type: number, added: number): void {
    const oldType = this.typeAt[place]!;
    this.touching -= this.contact.ofWedge(place);
    this.typeAt[place] = type;
    this.touching += this.contact.ofWedge(place);
    this.spare[oldType]! += 1;
    this.spare[type]! -= 1;
    this.cost += added;
    const block = (place / this.perBlock) | 0;
    this.contact.readRims(block);
    this.spread.replace(block, oldType, type);
  }

  /** Forgets prices that no longer hold, after the wedge in a place was tried and stays. */
  replaced(place: number): void {
    this.spread.forgetNear((place / this.perBlock) | 0);
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

  /** Forgets what the seams of a wedge type cost, after its figures have changed; enough for one that is only tried. */
  forgetSeams(type: number): void {
    this.contact.forgetSeams(type);
  }

  /** Forgets what is known of a wedge type, after its figures have changed. */
  forgetType(type: number): void {
    this.contact.forgetSeams(type);
    this.spread.forgetType(type);
  }

  private hang(block: number, cell: number, stands: number): void {
    this.blockIn[cell] = block;
    this.cellOf[block] = cell;
    this.orientationOf[block] = stands;
  }
}
