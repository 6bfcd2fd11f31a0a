// How right a reading of a rendered picture is, against what is true of it: for tests and for the bench.
import type { Point } from '../../../src/geometry/point';
import { type ReadBlock, SURE } from '../../../src/photo/block/readLook';
import type { GridLaid } from '../../../src/photo/wall/grid';
import { cellsOf } from '../../../src/photo/wall/gridBy';
import type { BlockTruth, WallShot } from './shots';

/** The farthest corner from the truth, as a share of the longest side. */
export function cornersOff(corners: readonly Point[], truth: readonly Point[]): number {
  const long = Math.max(...truth.map((one, at) => distance(one, truth[(at + 1) % 4]!)));
  return Math.max(...corners.map((one, at) => distance(one, truth[at]!))) / long;
}

function distance(one: Point, other: Point): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}

/** Counts over wedges: all, rims right, rims marked sure, of those right, bands right in order. */
export interface BlockMarks {
  readonly wedges: number;
  readonly rims: number;
  readonly sure: number;
  readonly sureRight: number;
  readonly bands: number;
}

export function blockMarks({ wedges }: ReadBlock, truth: BlockTruth): BlockMarks {
  const all = wedges.map((bands, at) => {
    const right = bands[0]!.fabric === truth.wedges[at]![0]!.fabric;
    const sure = bands[0]!.sure >= SURE;
    const same =
      bands.map(({ fabric }) => fabric).join() === truth.wedges[at]!.map(({ fabric }) => fabric).join();
    return { right, sure, same };
  });
  const count = (of: (one: (typeof all)[number]) => boolean) => all.filter(of).length;
  return {
    wedges: all.length,
    rims: count(({ right }) => right),
    sure: count(({ sure }) => sure),
    sureRight: count(({ sure, right }) => sure && right),
    bands: count(({ same }) => same),
  };
}

/** Whether rows and columns are right and every corner of every cell within 2 % of a block's width. */
export function isGridFound(grid: GridLaid | null, shot: WallShot): boolean {
  if (!grid || grid.rows !== shot.rows || grid.columns !== shot.columns) return false;
  const cells = cellsOf(grid, shot.pixels, shot.project.wedge);
  return cells.every((cell, at) => cornersOff(cell, shot.boxes[at]!) <= 0.02);
}
