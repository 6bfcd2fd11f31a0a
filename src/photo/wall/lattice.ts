// The lattice of a wall: rows and columns of equal cells with equal gaps, through a camera with a bent lens; and how much the cells of a
// picture look like blocks of wedges where a lattice is laid on it.
import { direction } from '../../geometry/block';
import type { Point } from '../../geometry/point';
import type { BlockShape } from '../block/shape';
import type { Plane } from '../pixels/pixels';
import { composed, type Homography, projected, squareTo } from '../plane/homography';
import { bent, type Lens, lensOf } from '../plane/lens';

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

/** A lattice and what it is worth as a wall, more where it is likelier. */
export interface Tried {
  readonly lattice: Lattice;
  readonly worth: number;
}

/** The most rows and columns that are looked for. */
export const MOST = 14;

/** From this likeness on a cell holds a block. */
export const BLOCK = 0.5;

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

const ACROSS = 4;
const RADII = 6;

/** Places at which one cell is sampled, in blocks from its top left corner: ACROSS to a group along each band. */
export function cellShapeOf(shape: BlockShape): CellShape {
  return { shape, tall: shape.halfHeight / shape.halfWidth, samples: cellSamples(shape) };
}

/** A cell for whoever looks at many: its height in widths, and the places at which it is sampled. */
export interface CellShape {
  readonly shape: BlockShape;
  readonly tall: number;
  readonly samples: Float64Array;
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

/**
 * What is seen of a cell, variances in OKLab: across the wedges, which is within bands, and from rim to middle. In a block the
 * second is far greater; in anything else, however large or small, they are much the same.
 */
export interface CellLook {
  readonly within: number;
  readonly along: number;
  /** How clear the seams of the corners are, 0 to 1. */
  readonly seams: number;
  /** Whether all of it lies in the picture. */
  readonly inside: boolean;
}

const STEPS = 400;

/** By how much each radius is bent, up to 1.2 of the half diagonal: as fast as a table. */
function bendTable(bend: number): Float64Array {
  const lens: Lens = { middle: { x: 0, y: 0 }, half: 1, bend };
  return Float64Array.from({ length: STEPS + 2 }, (_, step) =>
    step === 0 ? 1 : bent(lens, { x: (1.6 * step) / STEPS, y: 0 }).x / ((1.6 * step) / STEPS),
  );
}

/** A reader of cells of one lattice in one picture (OKLab). */
export function cellReader(
  plane: Plane,
  lattice: Lattice,
  cell: CellShape,
): (row: number, column: number) => CellLook {
  const { samples, tall, shape } = cell;
  const h = latticeTo(lattice, tall);
  const { middle, half, bend } = lensOf(plane, lattice.bend);
  const table = bend === 0 ? null : bendTable(bend);
  const { width, height, data } = plane;
  const count = samples.length / 2;
  const banded = shape.perBlock * RADII * ACROSS;
  const seamed = banded + 4 * ACROSS;
  const rays = new Float64Array(4 * ACROSS);
  const first = [0, 0, 0];
  const [a, b, c, d, e, f, g, i] = [h[0]!, h[1]!, h[2]!, h[3]!, h[4]!, h[5]!, h[6]!, h[7]!];
  const last = h[8]!;
  return (row, column) => {
    const left = column * (1 + lattice.gap);
    const top = row * (tall + lattice.gap);
    let [within, along, squares, seams, apart, inside] = [0, 0, 0, 0, 0, true];
    const sums = [0, 0, 0];
    rays.fill(0);
    for (let at = 0; at < count; at += 1) {
      const x = left + samples[at * 2]!;
      const y = top + samples[at * 2 + 1]!;
      const depth = g * x + i * y + last;
      let u = (a * x + b * y + c) / depth;
      let v = (d * x + e * y + f) / depth;
      if (table) {
        const [dx, dy] = [u - middle.x, v - middle.y];
        const step = Math.min(STEPS, (Math.sqrt(dx * dx + dy * dy) / half / 1.6) * STEPS);
        const whole = Math.floor(step);
        const by = table[whole]! + (step - whole) * (table[whole + 1]! - table[whole]!);
        u = middle.x + dx * by;
        v = middle.y + dy * by;
      }
      u = Math.max(0, Math.min(width - 1.001, u - 0.5));
      v = Math.max(0, Math.min(height - 1.001, v - 0.5));
      if (u === 0 || v === 0 || u > width - 1.01 || v > height - 1.01) inside = false;
      const [cu, cv] = [Math.floor(u), Math.floor(v)];
      const [p, q] = [u - cu, v - cv];
      const from = (cv * width + cu) * 3;
      const below = from + width * 3;
      for (let channel = 0; channel < 3; channel += 1) {
        const upper = data[from + channel]! + p * (data[from + 3 + channel]! - data[from + channel]!);
        const lower = data[below + channel]! + p * (data[below + 3 + channel]! - data[below + channel]!);
        const one = upper + q * (lower - upper);
        if (at >= seamed) {
          if (at % 2 === 0) first[channel] = one;
          else apart += (one - first[channel]!) ** 2;
          continue;
        }
        sums[channel]! += one;
        squares += one * one;
        rays[(at % ACROSS) * 4 + channel]! += one;
        rays[(at % ACROSS) * 4 + 3]! += one * one;
      }
      if (at >= seamed) {
        if (at % 2 === 1) seams += apart / (apart + SEEN * SEEN);
        apart = 0;
        continue;
      }
      if (at % ACROSS !== ACROSS - 1) continue;
      within += squares / ACROSS - squareOf(sums, 0, ACROSS);
      sums.fill(0);
      squares = 0;
      if (at >= banded || (at + 1) % (ACROSS * RADII) !== 0) continue;
      for (let ray = 0; ray < ACROSS; ray += 1)
        along += rays[ray * 4 + 3]! / RADII - squareOf(rays, ray * 4, RADII);
      rays.fill(0);
    }
    return {
      within: within / (seamed / ACROSS),
      along: Math.max(0, along / (banded / RADII)),
      seams: seams / ((count - seamed) / 2),
      inside,
    };
  };
}

/** The square of the mean of three channels, of which there are sums from place `from` on. */
function squareOf(sums: ArrayLike<number>, from: number, count: number): number {
  return (sums[from]! / count) ** 2 + (sums[from + 1]! / count) ** 2 + (sums[from + 2]! / count) ** 2;
}

/** A difference of colour at which a seam counts half, OKLab; and how much seams count beside bands. */
const SEEN = 0.06;
const SEAMS = 0.6;

/** Variance of noise and of cloth that is even: no block is as even. */
const EVEN = 5e-4;

/** How much a cell looks like a block of wedges, 0 to 1; an even cell does not. */
export function blockLikeness({ within, along }: CellLook): number {
  return Math.max(0, 1 - within / (along + EVEN)) * (along / (along + EVEN));
}

/** How much of the variance in the cells of a lattice lies between bands, 0 to 1; at most `most` cells are looked at. */
export function latticeLikeness(plane: Plane, lattice: Lattice, cell: CellShape, most: number): number {
  const look = cellReader(plane, lattice, cell);
  const count = lattice.rows * lattice.columns;
  const step = Math.max(1, count / most);
  let [within, along, seams, seen] = [0, 0, 0, 0];
  for (let at = 0; at < count; at += step) {
    const index = Math.floor(at);
    const one = look(Math.floor(index / lattice.columns), index % lattice.columns);
    within += one.within;
    along += one.along;
    seams += one.seams;
    seen += 1;
  }
  return (1 - within / (along + EVEN * seen * 2) + SEAMS * (seams / seen)) / (1 + SEAMS);
}
