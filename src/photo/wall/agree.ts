// Whether two lattices in one picture lie on the same cells, so that what is found from one would be found from the other again.
import type { Plane } from '../pixels/pixels';
import { inverseOf, projected } from '../plane/homography';
import { bent, lensOf, straightened } from '../plane/lens';
import { type Lattice, latticeTo } from './lattice';

/** How far corners of the same cell may lie apart, in blocks. */
const NEAR = 0.15;

/** Whether all cells of the first lattice are cells of the second, as near as starts are laid. */
export function liesOn(plane: Plane, one: Lattice, other: Lattice, tall: number): boolean {
  const back = inverseOf(latticeTo(other, tall));
  if (!back) return false;
  const [from, to] = [lensOf(plane, one.bend), lensOf(plane, other.bend)];
  const corners = one.corners.map((corner) => projected(back, straightened(to, bent(from, corner))));
  const columns = corners.map(({ x }, at) => (at === 0 || at === 3 ? x : x - 1) / (1 + other.gap));
  const rows = corners.map(({ y }, at) => (at < 2 ? y : y - tall) / (tall + other.gap));
  const [left, right, above, below] = [columns[0]!, columns[1]!, rows[0]!, rows[3]!].map(Math.round) as [number, number, number, number]; // biome-ignore format: ends
  return (
    left >= 0 &&
    above >= 0 &&
    right < other.columns &&
    below < other.rows &&
    right - left + 1 === one.columns &&
    below - above + 1 === one.rows &&
    columns.every((at, corner) => Math.abs(at - (corner === 0 || corner === 3 ? left : right)) < NEAR) &&
    rows.every((at, corner) => Math.abs(at - (corner < 2 ? above : below)) < NEAR)
  );
}

/** Whether two lattices are the same wall. */
export function isSame(plane: Plane, one: Lattice, other: Lattice, tall: number): boolean {
  return one.rows === other.rows && one.columns === other.columns && liesOn(plane, one, other, tall);
}
