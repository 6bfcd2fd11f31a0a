// Moves a lattice until its cells look most like blocks.
import type { InParts } from '../../model/work/parts';
import type { Plane } from '../pixels/pixels';
import { isConvex } from '../plane/quads';
import { latticeLikeness } from './cellLook';
import type { CellShape } from './cellShape';
import type { Lattice } from './lattice';

/**
 * Moves corners, gap and lens in smaller and smaller steps as long as the likeness grows; `first` is a share of the picture,
 * `cells` how many cells are looked at. In parts.
 */
export function* settledLattice(
  plane: Plane,
  start: Lattice,
  cell: CellShape,
  first: number,
  cells: number,
): InParts<Lattice> {
  let lattice = start;
  let best = latticeLikeness(plane, lattice, cell, cells);
  const long = Math.max(plane.width, plane.height);
  const attempt = (tried: Lattice): void => {
    if (tried.gap < 0 || !isConvex(tried.corners)) return;
    const now = latticeLikeness(plane, tried, cell, cells);
    if (now > best) [lattice, best] = [tried, now];
  };
  for (let step = first * long; step > 0.0003 * long; step *= 0.55) {
    for (let round = 0; round < 4; round += 1) {
      yield null;
      const before = best;
      for (const move of MOVES)
        attempt({
          ...lattice,
          corners: lattice.corners.map(({ x, y }, at) => ({
            x: x + step * move[at * 2]!,
            y: y + step * move[at * 2 + 1]!,
          })),
        });
      for (const way of [1, -1]) {
        attempt({ ...lattice, bend: lattice.bend + (way * step * 2) / long });
        attempt({ ...lattice, gap: lattice.gap + (way * step * 2) / long });
      }
      if (best <= before + 1e-5) break;
    }
  }
  return lattice;
}

/** Shifts of x and y of the four corners: single corners, sides, the whole, larger and smaller. */
const MOVES: readonly (readonly number[])[] = [
  ...[0, 1, 2, 3, 4, 5, 6, 7].flatMap((at) => [1, -1].map((way) => Array.from({ length: 8 }, (_, one) => (one === at ? way : 0)))),
  ...[[1, 3], [3, 5], [5, 7], [7, 1], [0, 2], [2, 4], [4, 6], [6, 0]].flatMap(([a, b]) => [1, -1].map((way) => Array.from({ length: 8 }, (_, one) => (one === a || one === b ? way : 0)))),
  ...[[0, 2, 4, 6], [1, 3, 5, 7]].flatMap((list) => [1, -1].map((way) => Array.from({ length: 8 }, (_, one) => (list.includes(one) ? way : 0)))),
  [-1, -1, 1, -1, 1, 1, -1, 1],
  [1, 1, -1, 1, -1, -1, 1, -1],
]; // biome-ignore format: lists
