// Lets a lattice grow by whole rows and columns as long as they hold blocks, and says how much it is worth as a wall.
import type { Point } from '../../geometry/point';
import type { InParts } from '../../model/work/parts';
import type { Plane } from '../pixels/pixels';
import { projected } from '../plane/homography';
import { isConvex } from '../plane/quads';
import { BLOCK, blockLikeness, type CellLook, cellReader } from './cellLook';
import type { CellShape } from './cellShape';
import { type Lattice, latticeTo, MOST, type Tried } from './lattice';
import { settledLattice } from './settle';

/** Share of a row's cells that must hold blocks for the lattice to take it in. */
const ENOUGH = 0.34;

/** Takes in rows and columns that hold blocks, leaves out those at the edge that hold none. */
export function* wholeLattice(plane: Plane, start: Lattice, cell: CellShape): InParts<Lattice> {
  let lattice = start;
  for (let round = 0; round < 2 * MOST; round += 1) {
    const look = cellReader(plane, lattice, cell);
    const { rows, columns } = lattice;
    const usual = usualVariance(lattice, look);
    const filled = (list: readonly (readonly [number, number])[]) =>
      list.filter(([row, column]) => {
        const seen = look(row, column);
        return seen.inside && blockLikeness(seen) > BLOCK && seen.along > 0.3 * usual;
      }).length / list.length;
    const row = (at: number) => Array.from({ length: columns }, (_, column) => [at, column] as const);
    const column = (at: number) => Array.from({ length: rows }, (_, one) => [one, at] as const);
    const more = [row(-1), row(rows), column(-1), column(columns)].map(filled);
    const most = Math.max(...more);
    const least = [row(0), row(rows - 1), column(0), column(columns - 1)].map(filled);
    const bare = least.indexOf(0);
    let next: Lattice | null = null;
    if (most > ENOUGH && Math.max(rows, columns) < MOST)
      next = stretched(lattice, cell.tall, more.indexOf(most), 1);
    else if (bare >= 0 && (bare < 2 ? rows : columns) > 1) next = stretched(lattice, cell.tall, bare, -1);
    if (!next || !isConvex(next.corners)) return lattice;
    lattice = most > ENOUGH ? yield* settledLattice(plane, next, cell, 0.003, 12) : next;
  }
  return lattice;
}

/** The middle of what the cells of a lattice vary by. */
function usualVariance({ rows, columns }: Lattice, look: (row: number, column: number) => CellLook): number {
  const all = Array.from(
    { length: rows * columns },
    (_, at) => look(Math.floor(at / columns), at % columns).along,
  );
  return all.sort((one, other) => one - other)[all.length >> 1]!;
}

/** One row or column more or fewer: 0 above, 1 below, 2 left, 3 right. */
function stretched(lattice: Lattice, tall: number, where: number, by: 1 | -1): Lattice {
  const { rows, columns, gap } = lattice;
  const to = latticeTo(lattice, tall);
  const [left, right] = [
    where === 2 ? -by * (1 + gap) : 0,
    columns + (columns - 1) * gap + (where === 3 ? by * (1 + gap) : 0),
  ];
  const [top, bottom] = [
    where === 0 ? -by * (tall + gap) : 0,
    rows * tall + (rows - 1) * gap + (where === 1 ? by * (tall + gap) : 0),
  ];
  const corners = [{ x: left, y: top }, { x: right, y: top }, { x: right, y: bottom }, { x: left, y: bottom }]; // biome-ignore format: corners
  return {
    ...lattice,
    rows: rows + (where < 2 ? by : 0),
    columns: columns + (where < 2 ? 0 : by),
    corners: corners.map((point) => projected(to, point)),
  };
}

/** A lattice that has grown. */
export interface Grown extends Tried {
  /** How much its cells look like blocks, 0 to 1; one that holds none counts 0. */
  readonly likeness: number;
}

/** A lattice is worth more the better its cells look, and the more cells look like blocks. */
export function worthOf(plane: Plane, lattice: Lattice, cell: CellShape): Grown {
  const look = cellReader(plane, lattice, cell);
  let sum = 0;
  for (let row = 0; row < lattice.rows; row += 1)
    for (let column = 0; column < lattice.columns; column += 1) {
      const likeness = blockLikeness(look(row, column));
      if (likeness > BLOCK) sum += likeness;
    }
  const long = Math.max(plane.width, plane.height);
  const area = quadArea(lattice.corners) / (long * long);
  const likeness = sum / (lattice.rows * lattice.columns);
  return { lattice, likeness, worth: likeness ** 2 * Math.sqrt(area) };
}

function quadArea(corners: readonly Point[]): number {
  return (
    Math.abs(
      corners.reduce(
        (sum, { x, y }, at) => sum + x * corners[(at + 1) % 4]!.y - corners[(at + 1) % 4]!.x * y,
        0,
      ),
    ) / 2
  );
}
