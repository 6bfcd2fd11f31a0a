// Finds the grid of a wall of blocks in a picture: starts are moved and grow by whole rows and columns; the best of them is laid on the
// seams of its blocks, with the lens. Where its cells lie is gridBy.ts's.
import type { Point } from '../../geometry/point';
import type { InParts } from '../../model/work/parts';
import type { BlockShape } from '../block/shape';
import { oklabPlane } from '../pixels/linear';
import type { Pixels, Plane } from '../pixels/pixels';
import { shrinkingTo } from '../pixels/resize';
import { blurred } from '../pixels/sample';
import { bent, lensOf } from '../plane/lens';
import { isConvex } from '../plane/quads';
import { isSame, liesOn } from './agree';
import { aligned } from './align';
import { BLOCK, blockLikeness, cellReader, latticeLikeness } from './cellLook';
import { type CellShape, cellShapeOf } from './cellShape';
import { byWorth, type Lattice } from './lattice';
import { settledLattice } from './settle';
import { startsIn } from './starts';
import { type Grown, wholeLattice, worthOf } from './whole';

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
  /** How much the whole looks like a wall of blocks, 0 to 1. */
  readonly sure: number;
}

/** Longer side of the picture, pixels: for the search, and for the last moves. */
const SEARCHED = 560;
export const REFINED = 1300;

/** Under this a lattice is no wall: grids of other things come to 0.55. */
const LIKELY = 0.65;

/** From this likeness of its cells on a lattice is surely on blocks. */
const CLEAR = 0.6;

/** From this likeness on the fine picture the sashing is surely right too. */
const SURE_SASHING = 0.88;

/** Finds the grid of blocks of this shape; null where nothing looks like one. Goes on in parts. */
export function* findGrid(pixels: Pixels, shape: BlockShape): InParts<FoundGrid | null> {
  const cell = cellShapeOf(shape);
  const light = yield* shrinkingTo(pixels, SEARCHED);
  const small = blurred(oklabPlane(light), 0.7);
  const walls = yield* bestGrown(small, cell);
  if (walls.length === 0) return null;
  const fine = yield* shrinkingTo(pixels, REFINED);
  const plane = blurred(oklabPlane(fine), 0.9);
  const scaled = walls.map((wall) => sized(wall, plane.width / small.width));
  const { lattice, likeness } = yield* likeliestLaid(plane, scaled, cell);
  if (likeness < LIKELY) return null;
  const { rows, columns, gap, bend, corners } = sized(lattice, pixels.width / plane.width);
  const lens = lensOf(pixels, bend);
  return { rows, columns, gap, bend, corners: corners.map((point) => bent(lens, point)), sure: likeness };
}

/** The first lattice laid on its seams, or, where it is not surely right, the one of all that looks most like blocks. */
function* likeliestLaid(plane: Plane, lattices: readonly Lattice[], cell: CellShape): InParts<Laid> {
  let best: Laid | null = null;
  for (const lattice of lattices) {
    const laid = yield* laidWhole(plane, lattice, cell);
    const likeness = Math.max(0, latticeLikeness(plane, laid, cell, 60));
    if (!best || likeness > best.likeness) best = { lattice: laid, likeness };
    if (likeness > SURE_SASHING) break;
  }
  return best!;
}

interface Laid {
  readonly lattice: Lattice;
  /** How much its cells look like blocks, 0 to 1. */
  readonly likeness: number;
}

/**
 * The best lattice that a start grows to, then the same with other sashing; none where no start is found. Starts on a wall that two have
 * grown to alike would only grow to it again.
 */
function* bestGrown(small: Plane, cell: CellShape): InParts<readonly Lattice[]> {
  const grown: Grown[] = [];
  for (const start of yield* startsIn(small, cell)) {
    if (twice(small, grown, cell.tall).some((wall) => liesOn(small, start, wall, cell.tall))) continue;
    const moved = yield* settledLattice(small, start, cell, 0.012, 12);
    grown.push(worthOf(small, yield* wholeLattice(small, moved, cell), cell));
  }
  const best = grown.sort(byWorth)[0];
  return best ? yield* withOtherSashing(small, best, cell) : [];
}

/** Sashing, as a share of a block, from which moves come to any other. */
const SASHING = [0, 0.13];
/** Sashing that differs by less is the same. */
const SAME_SASHING = 0.03;

/** The lattice and what it becomes with sashing of other widths, best first: by small moves alone it may rest at a wrong one. */
function* withOtherSashing(small: Plane, best: Grown, cell: CellShape): InParts<readonly Lattice[]> {
  const grown = [best];
  for (const gap of SASHING) {
    const moved = yield* settledLattice(small, { ...best.lattice, gap }, cell, 0.008, 20);
    grown.push(worthOf(small, yield* wholeLattice(small, moved, cell), cell));
  }
  const walls = grown.sort(byWorth).map(({ lattice }) => lattice);
  const isOther = (one: Lattice, at: number) =>
    walls.slice(0, at).every((before) => Math.abs(before.gap - one.gap) > SAME_SASHING) &&
    one.rows === walls[0]!.rows &&
    one.columns === walls[0]!.columns;
  return walls.filter((one, at) => at === 0 || isOther(one, at));
}

/** The likely walls to which two starts have grown. */
function twice(small: Plane, grown: readonly Grown[], tall: number): Lattice[] {
  const likely = grown.filter(({ likeness }) => likeness > CLEAR).map(({ lattice }) => lattice);
  return likely.filter((one, at) => likely.slice(0, at).some((other) => isSame(small, one, other, tall)));
}

/** The lattice in a picture `by` times as large. */
function sized(lattice: Lattice, by: number): Lattice {
  return { ...lattice, corners: lattice.corners.map(({ x, y }) => ({ x: x * by, y: y * by })) };
}

/** How often a lattice that lies on its seams may still grow. */
const GROWTHS = 3;

/** The lattice laid on its seams, and grown from there: once the lens is known, rows and columns are found that were not before. */
function* laidWhole(plane: Plane, lattice: Lattice, cell: CellShape): InParts<Lattice> {
  let laid = yield* laidOnSeams(plane, lattice, cell);
  for (let growth = 0; growth < GROWTHS; growth += 1) {
    const whole = yield* wholeLattice(plane, laid, cell);
    if (whole.rows === laid.rows && whole.columns === laid.columns) break;
    if (worthOf(plane, whole, cell).worth <= worthOf(plane, laid, cell).worth) break;
    laid = yield* laidOnSeams(plane, whole, cell);
  }
  return laid;
}

/** The lattice laid on the seams of its blocks; moved by small steps where that makes it look less like blocks. */
function* laidOnSeams(plane: Plane, lattice: Lattice, cell: CellShape): InParts<Lattice> {
  const look = cellReader(plane, lattice, cell);
  const cells = Array.from({ length: lattice.rows * lattice.columns }, (_, at) => at);
  const filled = cells.filter(
    (at) => blockLikeness(look(Math.floor(at / lattice.columns), at % lattice.columns)) > BLOCK,
  );
  const laid = yield* aligned(plane, lattice, cell, filled);
  const likeness = (one: Lattice) => latticeLikeness(plane, one, cell, 40);
  if (isConvex(laid.corners) && likeness(laid) > likeness(lattice) - 0.01) return laid;
  return yield* settledLattice(plane, lattice, cell, 0.004, 40);
}
