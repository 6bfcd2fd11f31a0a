// Where one cell of a wall is sampled to see whether it holds a block of wedges: across each band, in the corner triangles, and on both
// sides of their seams.
import { direction } from '../../geometry/block';
import type { BlockShape } from '../block/shape';

/** A cell for whoever looks at many: its height in widths, and the places at which it is sampled. */
export interface CellShape {
  readonly shape: BlockShape;
  readonly tall: number;
  /** In blocks from the top left corner, x, y: first groups of ACROSS side by side, then pairs on both sides of seams. */
  readonly samples: Float64Array;
  /** How many of them lie in bands, and how many in groups at all. */
  readonly banded: number;
  readonly grouped: number;
}

/** Samples side by side in one band, and groups along a wedge. */
export const ACROSS = 4;
export const RADII = 6;

/** Places at which one cell is sampled, in blocks from its top left corner. */
export function cellShapeOf(shape: BlockShape): CellShape {
  const banded = shape.perBlock * RADII * ACROSS;
  const tall = shape.halfHeight / shape.halfWidth;
  return { shape, tall, samples: cellSamples(shape), banded, grouped: banded + 4 * ACROSS };
}

function cellSamples(shape: BlockShape): Float64Array {
  const { perBlock, rim, halfWidth, halfHeight } = shape;
  const places: number[] = [];
  const half = Math.tan(Math.PI / perBlock);
  const put = (x: number, y: number) =>
    places.push((x + halfWidth) / (2 * halfWidth), (y + halfHeight) / (2 * halfWidth));
  for (let step = 0; step < perBlock; step += 1) {
    const out = direction(step, perBlock);
    for (let ring = 0; ring < RADII; ring += 1) {
      const radius = rim * (0.3 + (0.65 * ring) / (RADII - 1));
      for (let at = 0; at < ACROSS; at += 1) {
        const off = radius * half * 0.82 * ((2 * at) / (ACROSS - 1) - 1);
        put(out.x * radius - out.y * off, out.y * radius + out.x * off);
      }
    }
  }
  // The corners as four groups more.
  const leg = rim * (perBlock === 8 ? 0.4 : 0.2);
  for (const [sx, sy] of [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ] as const)
    for (const [u, v] of [
      [0.15, 0.15],
      [0.15, 0.7],
      [0.7, 0.15],
      [0.4, 0.4],
    ] as const)
      put(sx * (halfWidth - u * leg), sy * (halfHeight - v * leg));
  // Last, pairs on both sides of the seams of the corners, near and a little further off.
  for (let step = 0; step < perBlock; step += 1) {
    const out = direction(step, perBlock);
    if (Math.abs(out.x) * rim > halfWidth - 0.02 * rim || Math.abs(out.y) * rim > halfHeight - 0.02 * rim)
      continue;
    for (const near of [0.025, 0.06])
      for (const at of [-0.6, 0, 0.6])
        for (const side of [1, -1]) {
          const radius = rim * (1 + side * near);
          put(out.x * radius - out.y * at * half * rim, out.y * radius + out.x * at * half * rim);
        }
  }
  return Float64Array.from(places);
}
