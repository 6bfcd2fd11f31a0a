// Lays the wedges of one block anew where they meet each other and their neighbours least: every order of them, given up where
// it costs too much already. Which wedges the block has, and what lies round it, stays.
import type { CostTables } from './costTables';
import type { Hanging } from './hanging';
import type { LiveContact } from './liveContact';

/** A wall under way, as liveWall.ts has it. */
interface Laid extends Hanging {
  readonly tables: CostTables;
  readonly contact: LiveContact;
}

/** The most wedges laid while one block is looked through; blocks of eight wedges seldom take a hundred. */
const MOST_LAID = 400;
/** The sort of a wedge that is laid. */
const LAID = 255;

export class BlockLaying {
  private readonly typeAt: Int32Array;
  private readonly perBlock: number;
  private readonly contact: LiveContact;
  /** Places whose wedges may be laid elsewhere: of one sort as in `sorts`, 0 for none. */
  private readonly sorts: Uint8Array;
  private readonly best: Int32Array;
  /** Wedges still to be laid. */
  private readonly loose: Int32Array;
  private readonly looseSort: Uint8Array;
  private block = 0;
  private least = 0;
  private laid = 0;

  /** `sorts` says of each place (block × N + place) what may lie there: wedges from places of its sort; 0 is its own alone. */
  constructor(wall: Laid, sorts: Uint8Array) {
    const { perBlock } = wall.tables.model;
    this.typeAt = wall.typeAt;
    this.contact = wall.contact;
    this.perBlock = perBlock;
    this.sorts = sorts;
    this.best = new Int32Array(perBlock);
    this.loose = new Int32Array(perBlock);
    this.looseSort = new Uint8Array(perBlock);
  }

  /** What the seams and rims of a block cost as its wedges lie. */
  costOf(block: number): number {
    const { contact, perBlock, typeAt } = this;
    const from = block * perBlock;
    let cost = contact.seam(typeAt[from + perBlock - 1]!, typeAt[from]!);
    for (let at = 0; at < perBlock; at++) {
      cost += contact.rimCost(block, at);
      if (at > 0) cost += contact.seam(typeAt[from + at - 1]!, typeAt[from + at]!);
    }
    return cost;
  }

  /** The least that the two seams of a wedge of this type cost among the wedges of the other tip in a block. */
  leastSeams(block: number, type: number): number {
    const { contact, perBlock, typeAt } = this;
    let least = Number.POSITIVE_INFINITY;
    let next = Number.POSITIVE_INFINITY;
    for (let place = block * perBlock; place < (block + 1) * perBlock; place++) {
      const other = typeAt[place]!;
      if ((other + type) % 2 === 0) continue;
      const cost = type % 2 === 0 ? contact.seam(type, other) : contact.seam(other, type);
      if (cost < least) {
        next = least;
        least = cost;
      } else if (cost < next) next = cost;
    }
    return least + next;
  }

  /** Lays the wedges so that they cost least and below `room`, and returns that cost; null, and nothing changes, where none is found. */
  lay(block: number, room: number): number | null {
    const { perBlock, typeAt, sorts, loose, looseSort } = this;
    const from = block * perBlock;
    this.block = block;
    this.least = room;
    this.laid = 0;
    for (let at = 0; at < perBlock; at++) {
      this.best[at] = typeAt[from + at]!;
      loose[at] = typeAt[from + at]!;
      looseSort[at] = sorts[from + at]!;
    }
    this.layFrom(0, 0);
    const found = this.least < room;
    typeAt.set(found ? this.best : loose, from);
    return found ? this.least : null;
  }

  /** Lays the places from `at` on in every way; those before cost `cost`. */
  private layFrom(at: number, cost: number): void {
    const { perBlock, typeAt, contact, block, loose, looseSort } = this;
    const from = block * perBlock;
    if (at === perBlock) {
      this.take(cost + contact.seam(typeAt[from + perBlock - 1]!, typeAt[from]!));
      return;
    }
    for (let one = 0; one < perBlock && this.laid < MOST_LAID; one++) {
      const sort = looseSort[one]!;
      if (!this.fits(one, at)) continue;
      this.laid += 1;
      typeAt[from + at] = loose[one]!;
      let sum = cost + contact.rimCost(block, at);
      if (at > 0) sum += contact.seam(typeAt[from + at - 1]!, loose[one]!);
      if (sum >= this.least) continue;
      looseSort[one] = LAID;
      this.layFrom(at + 1, sum);
      looseSort[one] = sort;
    }
  }

  private take(cost: number): void {
    if (cost >= this.least - 1e-12) return;
    const from = this.block * this.perBlock;
    this.least = cost;
    this.best.set(this.typeAt.subarray(from, from + this.perBlock));
  }

  /** Whether a loose wedge may lie in a place, and none of its type was tried there before it. */
  private fits(one: number, at: number): boolean {
    const { loose, looseSort } = this;
    const sort = this.sorts[this.block * this.perBlock + at]!;
    if (sort === 0) return one === at;
    if (looseSort[one] !== sort) return false;
    for (let earlier = 0; earlier < one; earlier++)
      if (loose[earlier] === loose[one] && looseSort[earlier] === sort) return false;
    return true;
  }
}
