// Owns what is settled and open on every level of a branch and bound, and settles one item after another. Nothing is allocated
// on the way down.
import { type ConvexAssignment, ownSquares, pairCosts } from './convexAssignment';
import type { OpenPart } from './nodeBound';

export interface Level extends OpenPart {
  count: number;
  itemSet: number;
  cellSet: number;
  cost: number;
}

export class Levels {
  /** Level k has k items settled. */
  readonly all: readonly Level[];
  /** Cell of each settled item, −1 for open ones; what holds for the level settled last. */
  readonly cellOf: Int32Array;
  readonly own: Float64Array;
  readonly pairs: Float64Array;

  constructor(private readonly problem: ConvexAssignment) {
    const { size } = problem;
    this.own = ownSquares(problem);
    this.pairs = pairCosts(problem);
    this.cellOf = new Int32Array(size).fill(-1);
    this.all = Array.from({ length: size + 1 }, (_, settled): Level => {
      const count = size - settled;
      return {
        count,
        items: Int32Array.from({ length: count }, (_, at) => at),
        cells: Int32Array.from({ length: count }, (_, at) => at),
        itemSet: 2 ** size - 1,
        cellSet: 2 ** size - 1,
        cost: problem.constant,
        linear: settled === 0 ? problem.linear.slice() : new Float64Array(count * count),
      };
    });
  }

  /** Settles an item in a cell, both open on level `settled`; the next level is then ready. */
  settle(settled: number, item: number, cell: number): void {
    const { size } = this.problem;
    const from = this.all[settled]!;
    const to = this.all[settled + 1]!;
    const row = from.items.indexOf(item) * from.count;
    const column = from.cells.indexOf(cell);
    const place = item * size + cell;
    to.cost = from.cost + from.linear[row + column]! + this.own[place]!;
    to.itemSet = from.itemSet & ~(1 << item);
    to.cellSet = from.cellSet & ~(1 << cell);
    this.cellOf[item] = cell;
    let at = 0;
    for (let column = 0; column < from.count; column++)
      if (from.cells[column] !== cell) to.cells[at++] = from.cells[column]!;
    at = 0;
    let into = 0;
    const pairs = place * size * size;
    for (let row = 0; row < from.count; row++) {
      const other = from.items[row]!;
      if (other === item) continue;
      to.items[at++] = other;
      for (let column = 0; column < from.count; column++) {
        const there = from.cells[column]!;
        if (there === cell) continue;
        to.linear[into++] =
          from.linear[row * from.count + column]! + this.pairs[pairs + other * size + there]!;
      }
    }
  }
}
