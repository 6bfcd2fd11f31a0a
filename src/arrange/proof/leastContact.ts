// Bounds the cost of the contacts of an order of blocks from below, whatever the turns. This saves the proof of a small wall
// most of its work.
import { type Contacts, leastTouching } from './contactTables';

/** Lower bounds for the contacts of an order, whatever the turns. */
export class LeastContact {
  /** The least cost of all blocks by themselves, in any cells. */
  readonly alone: number;
  private readonly contacts: Contacts;
  private readonly known: Float64Array;

  constructor(contacts: Contacts) {
    const { model } = contacts.tables;
    const size = model.blocks.length;
    this.contacts = contacts;
    this.known = new Float64Array(size * size * 2).fill(Number.NaN);
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
        const next = model.neighbourCell[cell * 4 + side]!;
        const other = next < 0 ? -1 : blockIn[next]!;
        if (other >= 0) sum += model.sashingFactorAt[cell * 4 + side]! * this.least(block, other, side);
      }
    }
    return sum + this.alone;
  }

  private least(block: number, other: number, side: number): number {
    const key = (block * this.contacts.tables.model.blocks.length + other) * 2 + side - 1;
    let least = this.known[key]!;
    if (Number.isNaN(least)) {
      least = leastTouching(this.contacts, block, other, side);
      this.known[key] = least;
    }
    return least;
  }
}
