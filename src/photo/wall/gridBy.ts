// A grid as a person lays it on a picture: rows, columns and four corners; where its cells lie, and how much each looks like a block.
import type { Point } from '../../geometry/point';
import type { WedgePlan } from '../../model/project';
import type { InParts } from '../../model/work/parts';
import { shapeOf } from '../block/shape';
import { oklabPlane } from '../pixels/linear';
import type { Pixels } from '../pixels/pixels';
import { shrinkingTo } from '../pixels/resize';
import { blurred } from '../pixels/sample';
import { lensOf, straightened } from '../plane/lens';
import { blockLikeness, cellReader } from './cellLook';
import { cellShapeOf } from './cellShape';
import { type GridLaid, REFINED } from './grid';
import { cellCorners, type Lattice } from './lattice';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** By rows: the corners of each cell, in pixels as photographed. */
export function cellsOf(grid: GridLaid, size: Size, wedge: WedgePlan): Point[][] {
  const { tall } = cellShapeOf(shapeOf(wedge, 0));
  const lattice = latticeOf(grid, size, 1);
  const lens = lensOf(size, grid.bend);
  return placesOf(grid).map(([row, column]) => cellCorners(lattice, tall, lens, row, column));
}

/** By rows: how much each cell looks like a block, 0 to 1 (BLOCK in cellLook.ts says from where on it is one). In parts. */
export function* likenessOf(pixels: Pixels, grid: GridLaid, wedge: WedgePlan): InParts<number[]> {
  const plane = blurred(oklabPlane(yield* shrinkingTo(pixels, REFINED)), 0.9);
  const look = cellReader(
    plane,
    latticeOf(grid, pixels, plane.width / pixels.width),
    cellShapeOf(shapeOf(wedge, 0)),
  );
  return placesOf(grid).map(([row, column]) => blockLikeness(look(row, column)));
}

function placesOf({ rows, columns }: GridLaid): (readonly [number, number])[] {
  return Array.from({ length: rows * columns }, (_, at) => [Math.floor(at / columns), at % columns] as const);
}

/** The lattice in a picture `by` times as large. */
function latticeOf({ rows, columns, gap, corners, bend }: GridLaid, size: Size, by: number): Lattice {
  const lens = lensOf(size, bend);
  const straight = corners.map((corner) => straightened(lens, corner));
  return { rows, columns, gap, bend, corners: straight.map(({ x, y }) => ({ x: x * by, y: y * by })) };
}
