// The lattice of a wall: rows and columns of equal cells with equal gaps, through a camera with a bent lens. How much its cells look
// like blocks is cellLook.ts's.
import type { Point } from '../../geometry/point';
import { composed, type Homography, projected, squareTo } from '../plane/homography';
import { bent, type Lens } from '../plane/lens';

export interface Lattice {
  readonly rows: number;
  readonly columns: number;
  /** The gap between two blocks, as a share of a block's width. */
  readonly gap: number;
  /** Outer corners of the corner cells, as a lens without distortion shows them: top left, top right, bottom right, bottom left. */
  readonly corners: readonly Point[];
  /** Of the lens (plane/lens.ts). */
  readonly bend: number;
}

/** The most rows and columns that are looked for. */
export const MOST = 14;

/** A lattice and what it is worth as a wall, more where it is likelier. */
export interface Tried {
  readonly lattice: Lattice;
  readonly worth: number;
}

/** For sorting: the likeliest first. */
export function byWorth(one: Tried, other: Tried): number {
  return other.worth - one.worth;
}

/** From blocks (0, 0 is the top left corner of the first cell; one cell is 1 × `tall`) to straightened pixels. */
export function latticeTo({ rows, columns, gap, corners }: Lattice, tall: number): Homography {
  const width = columns + (columns - 1) * gap;
  const height = rows * tall + (rows - 1) * gap;
  return composed(squareTo(corners), [2 / width, 0, -1, 0, 2 / height, -1, 0, 0, 1]);
}

/** The corners of a cell in pixels as photographed. Rows and columns beyond the lattice continue it. */
export function cellCorners(
  lattice: Lattice,
  tall: number,
  lens: Lens,
  row: number,
  column: number,
): Point[] {
  const to = latticeTo(lattice, tall);
  const [x, y] = [column * (1 + lattice.gap), row * (tall + lattice.gap)];
  return [{ x, y }, { x: x + 1, y }, { x: x + 1, y: y + tall }, { x, y: y + tall }].map((point) => bent(lens, projected(to, point))); // biome-ignore format: corners
}
