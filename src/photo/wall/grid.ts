// Finds the grid of a wall of blocks in a picture: quadrilaterals of straight edges are divided into rows and columns in every way that
// fits their shape; the best lattice grows by whole rows and columns as long as they hold blocks, and is then moved,
// with the lens, until its cells look most like blocks.
import type { Point } from '../../geometry/point';
import type { BlockShape } from '../block/shape';
import { oklabPlane } from '../pixels/linear';
import type { Pixels, Plane } from '../pixels/pixels';
import { shrunkTo } from '../pixels/resize';
import { blurred } from '../pixels/sample';
import { betweenSurfaces, edgesOf, linesOf } from '../plane/edges';
import { projected } from '../plane/homography';
import { bent, lensOf, straightened } from '../plane/lens';
import { isConvex, type Quad, quadsOf } from '../plane/quads';
import { aligned } from './align';
import {
  blockLikeness,
  type CellLook,
  type CellShape,
  cellCorners,
  cellReader,
  cellShapeOf,
  type Lattice,
  latticeLikeness,
  latticeTo,
} from './lattice';

/** A grid laid on a picture. */
export interface GridLaid {
  readonly rows: number;
  readonly columns: number;
  /** Outer corners of the corner cells in pixels as photographed, top left, top right, bottom right, bottom left. */
  readonly corners: readonly Point[];
  /** Between two blocks, as a share of a block's width. */
  readonly gap: number;
  /** Of the lens (plane/lens.ts). */
  readonly bend: number;
}

export interface FoundGrid extends GridLaid {
  /** By rows: the corners of each cell in pixels as photographed, top left, top right, bottom right, bottom left. */
  readonly cells: readonly (readonly Point[])[];
  /** By rows: how much each cell looks like a block, 0 to 1. */
  readonly likeness: readonly number[];
  /** How much the whole looks like a wall of blocks, 0 to 1. */
  readonly sure: number;
}

/** Longer side of the picture, pixels: for the search, and for the last moves. */
const SEARCHED = 560;
export const REFINED = 1300;
const QUADS = 140;
const KEPT = 4;
/** The most rows and columns that are looked for. */
const MOST = 14;

/** The smallest cell in the searched picture, pixels. */
const LEAST_CELL = 16;

/** Sashing as a share of a block, among those tried first; the moves find the rest. */
const GAPS = [0, 0.1, 0.18];

/** Under this a lattice is no wall: grids of other things come to 0.55. */
const LIKELY = 0.65;

/** From this likeness on a cell holds a block. */
export const BLOCK = 0.5;

/** Finds the grid of blocks of this shape; null where nothing looks like one. Goes on in parts. */
export function* findGrid(pixels: Pixels, shape: BlockShape): InParts<FoundGrid | null> {
  const cell = cellShapeOf(shape);
  const light = shrunkTo(pixels, SEARCHED);
  yield null;
  const small = blurred(oklabPlane(light), 0.7);
  const grown: Tried[] = [];
  for (const start of yield* divided(small, cell)) {
    const moved = yield* settledLattice(small, start, cell, 0.012, 12);
    grown.push(worthOf(small, yield* wholeLattice(small, moved, cell), cell));
  }
  const best = grown.sort((one, other) => other.worth - one.worth)[0];
  if (!best) return null;
  const by = pixels.width / small.width;
  const { rows, columns, gap, bend } = best.lattice;
  const lens = lensOf(small, bend);
  const corners = best.lattice.corners
    .map((point) => bent(lens, point))
    .map(({ x, y }) => ({ x: x * by, y: y * by }));
  const found = gridBetween(pixels, shape, { rows, columns, corners }, { gap, bend });
  return found && found.sure >= LIKELY ? found : null;
}

/** A grid as a person may lay it on a picture: outer corners of the corner cells, in pixels as photographed. */
export interface GivenGrid {
  readonly rows: number;
  readonly columns: number;
  readonly corners: readonly Point[];
}

/**
 * The grid near the corners that are given, laid on the seams of its blocks; `known` is what is known of its gaps and of the lens.
 * Null where the corners make no quadrilateral, clockwise from the top left.
 */
export function gridBetween(
  pixels: Pixels,
  shape: BlockShape,
  { rows, columns, corners }: GivenGrid,
  known?: { readonly gap: number; readonly bend: number },
): FoundGrid | null {
  if (corners.length !== 4 || !isConvex(corners)) return null;
  const cell = cellShapeOf(shape);
  const plane = blurred(oklabPlane(shrunkTo(pixels, REFINED)), 0.9);
  const by = plane.width / pixels.width;
  const starts = (known ? [known.gap] : GAPS).map((gap): Lattice => {
    const lens = lensOf(plane, known?.bend ?? 0);
    const straight = corners.map(({ x, y }) => straightened(lens, { x: x * by, y: y * by }));
    return { rows, columns, gap, bend: lens.bend, corners: straight };
  });
  const laid = starts.map((start) => laidOnSeams(plane, start, cell));
  const worth = laid.map((one) => latticeLikeness(plane, one, cell, 40));
  return gridOf(pixels, plane, laid[worth.indexOf(Math.max(...worth))]!, cell);
}

/** The lattice laid on the seams of its blocks; moved by small steps where that makes it look less like blocks. */
function laidOnSeams(plane: Plane, lattice: Lattice, cell: CellShape): Lattice {
  const look = cellReader(plane, lattice, cell);
  const cells = Array.from({ length: lattice.rows * lattice.columns }, (_, at) => at);
  const filled = cells.filter(
    (at) => blockLikeness(look(Math.floor(at / lattice.columns), at % lattice.columns)) > BLOCK,
  );
  const laid = aligned(plane, lattice, cell, filled);
  const likeness = (one: Lattice) => latticeLikeness(plane, one, cell, 40);
  if (isConvex(laid.corners) && likeness(laid) > likeness(lattice) - 0.01) return laid;
  return settledLattice(plane, lattice, cell, 0.004, 40);
}

function gridOf(pixels: Pixels, plane: Plane, lattice: Lattice, cell: CellShape): FoundGrid {
  const by = pixels.width / plane.width;
  const look = cellReader(plane, lattice, cell);
  const whole = { ...lattice, corners: lattice.corners.map(({ x, y }) => ({ x: x * by, y: y * by })) };
  const lens = lensOf(pixels, lattice.bend);
  const { rows, columns } = lattice;
  const places = Array.from(
    { length: rows * columns },
    (_, at) => [Math.floor(at / columns), at % columns] as const,
  );
  return {
    rows,
    columns,
    cells: places.map(([row, column]) => cellCorners(whole, cell.tall, lens, row, column)),
    likeness: places.map(([row, column]) => blockLikeness(look(row, column))),
    corners: whole.corners.map((point) => bent(lens, point)),
    gap: lattice.gap,
    bend: lattice.bend,
    sure: Math.max(0, latticeLikeness(plane, lattice, cell, 60)),
  };
}

interface Tried {
  readonly lattice: Lattice;
  readonly worth: number;
}

/** The most promising lattices: each quadrilateral in every division that its shape allows. */
function divided(plane: Plane, cell: CellShape): Lattice[] {
  const edges = betweenSurfaces(edgesOf(plane, 0.025), plane);
  const lines = linesOf(edges, 36);
  const quads = quadsOf(lines, edges, { least: 0.22, skew: 0.6, ratio: 6 }, QUADS);
  const tried = quads.flatMap((quad) =>
    divisions(quad, cell.tall).map(
      (lattice): Tried => ({ lattice, worth: latticeLikeness(plane, lattice, cell, 9) }),
    ),
  );
  const sorted = tried.sort((one, other) => other.worth - one.worth).slice(0, 60);
  const again = sorted.map(
    ({ lattice }): Tried => ({
      lattice,
      worth: latticeLikeness(plane, lattice, cell, 30) + 0.02 * Math.log(lattice.rows * lattice.columns),
    }),
  );
  return again
    .sort((one, other) => other.worth - one.worth)
    .slice(0, KEPT)
    .map(({ lattice }) => lattice);
}

function divisions({ corners }: Quad, tall: number): Lattice[] {
  const side = (one: number, other: number) =>
    Math.hypot(corners[one]!.x - corners[other]!.x, corners[one]!.y - corners[other]!.y);
  const aspect = (side(0, 1) + side(3, 2)) / (side(1, 2) + side(0, 3));
  const found: Lattice[] = [];
  for (let rows = 1; rows <= MOST; rows += 1) {
    for (let columns = 1; columns <= MOST; columns += 1) {
      if (rows * columns < 2) continue;
      const off = Math.abs(Math.log(columns / (rows * tall) / aspect));
      if (off > 0.3) continue;
      if (Math.min((side(0, 1) + side(3, 2)) / columns, (side(1, 2) + side(0, 3)) / rows) < 2 * LEAST_CELL)
        continue;
      for (const gap of GAPS) found.push({ rows, columns, gap, corners, bend: 0 });
    }
  }
  return found;
}

/** Moves corners, gap and lens in smaller and smaller steps as long as the likeness grows. */
function settledLattice(
  plane: Plane,
  start: Lattice,
  cell: CellShape,
  first: number,
  cells: number,
): Lattice {
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

/** Share of a row's cells that must hold blocks for the lattice to take it in. */
const ENOUGH = 0.34;

/** Takes in rows and columns that hold blocks, leaves out those at the edge that hold none. */
function wholeLattice(plane: Plane, start: Lattice, cell: CellShape): Lattice {
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
    lattice = most > ENOUGH ? settledLattice(plane, next, cell, 0.003, 12) : next;
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

/** A lattice is worth more the better its cells look, and the more cells look like blocks. */
function worthOf(plane: Plane, lattice: Lattice, cell: CellShape): Tried {
  const look = cellReader(plane, lattice, cell);
  let sum = 0;
  for (let row = 0; row < lattice.rows; row += 1)
    for (let column = 0; column < lattice.columns; column += 1) {
      const likeness = blockLikeness(look(row, column));
      if (likeness > BLOCK) sum += likeness;
    }
  const long = Math.max(plane.width, plane.height);
  const area = quadArea(lattice.corners) / (long * long);
  return { lattice, worth: (sum / (lattice.rows * lattice.columns)) * Math.sqrt(area) };
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
