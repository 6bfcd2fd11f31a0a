// Sorts cells by the corner fabric that the quilt's corner rule gives them.
import type { WallModel } from '../../balance/wall/wallModel';

/** The sort of each cell, and a cell of each sort (−1 where there is no rule, and so one sort). */
export function cornerSorts(model: WallModel): { sortOf: Uint8Array; sorts: readonly number[] } {
  const sortOf = new Uint8Array(model.blockIn.length);
  if (model.ruledCorner.length === 0) return { sortOf, sorts: [-1] };
  const first = new Map<number, number>();
  const sorts: number[] = [];
  model.ruledCorner.forEach((corner, cell) => {
    if (!first.has(corner)) first.set(corner, sorts.push(cell) - 1);
    sortOf[cell] = first.get(corner)!;
  });
  return { sortOf, sorts };
}
