// Where a wall may lie in a picture: quadrilaterals of straight edges, divided into rows and columns in every way that fits their
// shape, and single blocks, from which a lattice may grow.
import type { InParts } from '../../model/work/parts';
import { turnedByWedges } from '../block/corners';
import type { Plane } from '../pixels/pixels';
import { betweenSurfaces, edgesOf, linesOf, strongest } from '../plane/edges';
import { type Quad, type QuadLimits, quadsOf } from '../plane/quads';
import { blockLikeness, cellReader, latticeLikeness } from './cellLook';
import type { CellShape } from './cellShape';
import { byWorth, type Lattice, MOST, type Tried } from './lattice';

/** Lines that are looked at: for single blocks, and for the edges of a whole wall. */
const LINES = 48;
const WALL_LINES = 44;
const EDGES = 20_000;
const QUADS = 200;
const SMALL_QUADS = 400;
const WALL: QuadLimits = { least: 0.18, skew: 0.6, ratio: 7 };
const BLOCKS: QuadLimits = { least: 0.075, skew: 0.5, ratio: 1.7 };
/** How many walls and how many single blocks are followed. */
const KEPT = 3;
const SEEDS = 4;

/** Lattices tried between two pauses. */
const PAUSE = 100;

/** The smallest cell in the searched picture, pixels. */
const LEAST_CELL = 16;

/** Sashing as a share of a block, among those tried first; the moves find the rest. */
const GAPS = [0, 0.1, 0.18];

/** The most promising lattices, in parts. */
export function* startsIn(plane: Plane, cell: CellShape): InParts<Lattice[]> {
  const edges = strongest(betweenSurfaces(edgesOf(plane, 0.025), plane), EDGES);
  const lines = linesOf(edges, LINES);
  yield null;
  const walls = yield* divided(plane, cell, yield* quadsOf(lines.slice(0, WALL_LINES), edges, WALL, QUADS));
  return [...walls, ...(yield* seeds(plane, cell, yield* quadsOf(lines, edges, BLOCKS, SMALL_QUADS)))];
}

/** Single blocks beside which there are more, best first: narrow walls have no quadrilateral that is large enough. */
function* seeds(plane: Plane, cell: CellShape, quads: readonly Quad[]): InParts<Lattice[]> {
  const tried: Tried[] = [];
  for (const quad of quads) {
    yield null;
    // Turned by a wedge a block looks much the same, but not beside others.
    for (const corners of [quad.corners, ...turnedByWedges(cell.shape, quad.corners)])
      for (const gap of GAPS) {
        const lattice: Lattice = { rows: 1, columns: 1, gap, corners, bend: 0 };
        tried.push({ lattice, worth: worthAmongOthers(plane, lattice, cell) });
      }
  }
  const kept: Lattice[] = [];
  for (const { lattice } of tried.sort(byWorth)) {
    if (kept.every((one) => !isNear(one, lattice))) kept.push(lattice);
    if (kept.length === SEEDS) break;
  }
  return kept;
}

/** How much a cell looks like a block, and the best three of the four beside it. */
function worthAmongOthers(plane: Plane, lattice: Lattice, cell: CellShape): number {
  const look = cellReader(plane, lattice, cell);
  const likeness = (row: number, column: number) => {
    const seen = look(row, column);
    return seen.inside ? blockLikeness(seen) + 0.5 * seen.seams : 0;
  };
  const beside = [likeness(-1, 0), likeness(1, 0), likeness(0, -1), likeness(0, 1)].sort((a, b) => b - a);
  return likeness(0, 0) + (beside[0]! + beside[1]! + beside[2]!) / 3;
}

/** Whether two single blocks are much the same, so that they would grow into one wall. */
function isNear(one: Lattice, other: Lattice): boolean {
  return one.corners.every(({ x, y }, at) => {
    const there = other.corners[at]!;
    return Math.hypot(x - there.x, y - there.y) < LEAST_CELL;
  });
}

/** How many cells are looked at in each round, and what share of the lattices the next round looks at. */
const ROUNDS = [
  { cells: 3, kept: 0.3 },
  { cells: 9, kept: 0.1 },
] as const;
/** How many cells are looked at last, and in how many lattices. */
const LAST = { cells: 30, lattices: 60 } as const;

/** Quadrilaterals of edges in every division that their shape allows: the likelier of them are looked at again, at more cells. */
function* divided(plane: Plane, cell: CellShape, quads: readonly Quad[]): InParts<Lattice[]> {
  let left = quads.flatMap((quad) => divisions(quad, cell.tall));
  for (const { cells, kept } of ROUNDS) {
    const tried: Tried[] = [];
    for (const [at, lattice] of left.entries()) {
      if (at % PAUSE === 0) yield null;
      tried.push({ lattice, worth: latticeLikeness(plane, lattice, cell, cells) });
    }
    left = tried
      .sort(byWorth)
      .slice(0, Math.max(LAST.lattices, Math.ceil(kept * tried.length)))
      .map(({ lattice }) => lattice);
  }
  const again = left.slice(0, LAST.lattices).map(
    (lattice): Tried => ({
      lattice,
      worth:
        latticeLikeness(plane, lattice, cell, LAST.cells) + 0.02 * Math.log(lattice.rows * lattice.columns),
    }),
  );
  return again
    .sort(byWorth)
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
