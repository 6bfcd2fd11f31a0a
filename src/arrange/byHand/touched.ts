// A living wall of which a few cells were touched: how it is laid so, read off, and made as good as those blocks can make it.
import type { Decisions } from '../decisions';
import type { LiveWall } from '../live/liveWall';

/** What hangs in the cells that were touched, as it stands, and the weighted score of the whole wall so. */
export interface Laid {
  /** Ascending. */
  readonly cells: readonly number[];
  readonly blocks: readonly number[];
  readonly stands: readonly number[];
  readonly cost: number;
}

/** A score that is lower by less is no better. */
export const NO_BETTER = 1e-9;

/** A living wall with what may be done to it: blocks that exchange places, blocks that turn. */
export class Hands {
  readonly wall: LiveWall;
  readonly orientations: Decisions['orientations'];
  /** The cells whose blocks may be touched at all, and 1 for those whose blocks may change places. */
  readonly cells: Int32Array;
  readonly mayMove: Uint8Array;

  constructor(wall: LiveWall, { cells, orientations, turnable }: Decisions) {
    this.wall = wall;
    this.orientations = orientations;
    this.mayMove = new Uint8Array(wall.blockIn.length);
    for (const cell of cells) this.mayMove[cell] = 1;
    this.cells = Int32Array.from(
      new Set([...cells, ...Array.from(turnable, (block) => wall.cellOf[block]!)]),
    ).sort();
  }

  /** Reads off what hangs in these cells. */
  read(cells: readonly number[]): Laid {
    const { blockIn, orientationOf, cost } = this.wall;
    const blocks = cells.map((cell) => blockIn[cell]!);
    return { cells, blocks, stands: blocks.map((block) => orientationOf[block]!), cost };
  }

  /** Lays the cells so. The blocks must hang in these cells already, in whatever order. */
  lay({ cells, blocks, stands, cost }: Laid): void {
    const { wall } = this;
    cells.forEach((cell, at) => {
      const block = blocks[at]!;
      if (wall.blockIn[cell] !== block) this.exchange(cell, wall.cellOf[block]!);
      if (wall.orientationOf[block] !== stands[at]) wall.turn(block, stands[at]!);
    });
    // Without the rounding of the way there.
    wall.cost = cost;
  }

  /** Exchanges the blocks of two cells, which keep their turns. */
  exchange(cell: number, other: number): void {
    const { blockIn, orientationOf } = this.wall;
    this.swap(cell, other, orientationOf[blockIn[cell]!]!, orientationOf[blockIn[other]!]!);
  }

  swap(cell: number, other: number, stands: number, otherStands: number): void {
    const added = this.wall.swapCost(cell, other, stands, otherStands);
    this.wall.swap(cell, other, stands, otherStands, added);
  }

  /** Turns and exchanges blocks of these cells as long as that makes the wall better: which of them are touched stays the same. */
  settle(cells: readonly number[]): void {
    while (this.turnBest(cells) || this.swapBest(cells));
  }

  private turnBest(cells: readonly number[]): boolean {
    const { wall } = this;
    let better = false;
    for (const cell of cells) {
      const block = wall.blockIn[cell]!;
      const was = wall.orientationOf[block]!;
      const best = wall.bestStanding(block, cell, this.orientations[block]!, -1);
      if (best === was) continue;
      if (wall.turn(block, best) < -NO_BETTER) better = true;
      else wall.turn(block, was);
    }
    return better;
  }

  private swapBest(cells: readonly number[]): boolean {
    let best = { added: -NO_BETTER, cell: -1, other: -1, stands: 0, otherStands: 0 };
    cells.forEach((cell, at) => {
      for (const other of cells.slice(at + 1)) {
        if (!this.mayMove[cell] || !this.mayMove[other]) continue;
        for (const [stands, otherStands] of this.standings(cell, other)) {
          const added = this.wall.swapCost(cell, other, stands, otherStands);
          if (added < best.added) best = { added, cell, other, stands, otherStands };
        }
      }
    });
    if (best.cell < 0) return false;
    this.swap(best.cell, best.other, best.stands, best.otherStands);
    return true;
  }

  /** Every way in which the blocks of two cells may stand. */
  private standings(cell: number, other: number): (readonly [number, number])[] {
    const [block, second] = [this.wall.blockIn[cell]!, this.wall.blockIn[other]!];
    return Array.from(this.orientations[block]!).flatMap((stands) =>
      Array.from(this.orientations[second]!, (otherStands) => [stands, otherStands] as const),
    );
  }
}
