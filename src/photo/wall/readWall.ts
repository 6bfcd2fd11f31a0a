// Reads all blocks of a wall in one picture, whose grid is known (grid.ts finds it): one light for all of them, then each by itself.
import type { Point } from '../../geometry/point';
import type { InParts } from '../../model/work/parts';
import { shapeTo } from '../block/corners';
import { type LitBlock, lightIn } from '../block/daylight';
import { type BlockLook, lookAt } from '../block/look';
import { type Knowledge, lightsOf, readLook } from '../block/readLook';
import { shapeOf } from '../block/shape';
import type { Pixels } from '../pixels/pixels';
import { shrinkingTo } from '../pixels/resize';
import { lensOf, straightened } from '../plane/lens';
import { BLOCK } from './cellLook';

/** A grid to read: the corners of each cell by rows, in pixels as photographed, and how much each looks like a block. */
export interface GridToRead {
  readonly cells: readonly (readonly Point[])[];
  readonly likeness: readonly number[];
  readonly bend: number;
}

/** Pixels to the side of a block, rings to the wedge, and the most blocks the light is found from. */
const READ_SIDE = 190;
const RINGS = 64;
const LIT_BY = 16;

/** Reads the cells by rows; null is a cell without a block. Goes on in parts, and tells each time when half of a cell is done. */
export function* readWall(
  pixels: Pixels,
  grid: GridToRead,
  knowledge: Knowledge,
  onHalf: () => void = () => {},
): InParts<(LitBlock | null)[]> {
  const side = Math.max(
    ...grid.cells.map(([one, other]) => Math.hypot(one!.x - other!.x, one!.y - other!.y)),
  );
  const long = Math.max(pixels.width, pixels.height);
  const plane = yield* shrinkingTo(pixels, Math.min(long, Math.round((long * READ_SIDE) / side)));
  const scale = plane.width / pixels.width;
  const lens = lensOf(plane, grid.bend);
  const shape = shapeOf(knowledge.project.wedge, 0);
  const looks: (BlockLook | null)[] = [];
  for (const [at, corners] of grid.cells.entries()) {
    yield null;
    onHalf();
    if (grid.likeness[at]! < BLOCK) {
      looks.push(null);
      continue;
    }
    const inPlane = corners.map(({ x, y }) => straightened(lens, { x: x * scale, y: y * scale }));
    looks.push(lookAt(plane, shapeTo(shape, inPlane), lens, shape, RINGS, plane));
  }
  const seen = looks.filter((look) => look !== null);
  if (seen.length === 0) return looks.map(() => null);
  const step = Math.max(1, seen.length / LIT_BY);
  const some = Array.from({ length: Math.min(LIT_BY, seen.length) }, (_, at) => seen[Math.floor(at * step)]!);
  const [light] = yield* lightsOf(some, knowledge.swatches);
  const whole = { x: 0, y: 0, width: plane.width / scale, height: plane.height / scale };
  const read: (LitBlock | null)[] = [];
  for (const look of looks) {
    yield null;
    onHalf();
    if (!look) {
      read.push(null);
      continue;
    }
    const one = yield* readLook(look, knowledge, light);
    read.push({ ...one, light: lightIn(whole, one.light) });
  }
  return read;
}
