// A wall whose blocks are to be spread, as an assignment, with its grid and its groups.
import type { ConvexAssignment } from '../../../src/arrange/branch/convexAssignment';
import { groupsOn, kernelOf } from '../../../src/balance/wall/kernel';
import { dice } from '../../balance/tops';

/** A grid of rows × columns with the wall's own form; figures of any sort, and costs of items in cells now and then. */
export function spreadWall(rows: number, columns: number, seed: number, drop = -1) {
  const { part } = dice(seed);
  const at = Array.from({ length: rows * columns }, (_, cell) => cell).filter((cell) => cell !== drop);
  const size = at.length;
  const { own, near } = kernelOf(rows, columns);
  const cells = new Float64Array(size * size);
  at.forEach((cell, row) => {
    cells[row * size + row] = own;
    for (let to = near.start[cell]!; to < near.start[cell + 1]!; to++) {
      const column = at.indexOf(near.to[to]!);
      if (column >= 0) cells[row * size + column] = near.weight[to]!;
    }
  });
  const figures = Array.from({ length: size }, () => [part() - 0.5, part() - 0.5, part() - 0.5]);
  const items = Float64Array.from({ length: size * size }, (_, one) =>
    figures[Math.floor(one / size)]!.reduce((sum, x, axis) => sum + x * figures[one % size]![axis]!, 0),
  );
  const linear = Float64Array.from({ length: size * size }, () => (seed % 2 === 0 ? 0 : part()));
  const problem: ConvexAssignment = {
    size,
    constant: part(),
    linear,
    forms: [{ cells, items }],
    moments: [],
    beside: new Float64Array(size ** 4),
  };
  const grid = {
    rowOf: at.map((cell) => Math.floor(cell / columns)),
    columnOf: at.map((cell) => cell % columns),
  };
  return { problem, grid, groups: groupsOn(grid.rowOf, grid.columnOf) };
}
