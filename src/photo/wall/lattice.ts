// The lattice of a wall: rows and columns of equal cells with equal gaps, through a camera with a bent lens; and how much the cells of a
// picture look like blocks of wedges where a lattice is laid on it.
import { direction } from '../../geometry/block';
import type { Point } from '../../geometry/point';
import type { BlockShape } from '../block/shape';
import { composed, type Homography, projected, squareTo } from '../plane/homography';
import { bent, type Lens, lensOf } from '../plane/lens';
import type { Plane } from '../pixels/pixels';

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

/** From blocks (0, 0 is the top left corner of the first cell; one cell is 1 × `tall`) to straightened pixels. */
export function latticeTo({ rows, columns, gap, corners }: Lattice, tall: number): Homography {
  const width = columns + (columns - 1) * gap;
  const height = rows * tall + (rows - 1) * gap;
  return composed(squareTo(corners), [2 / width, 0, -1, 0, 2 / height, -1, 0, 0, 1]);
}

/** The corners of a cell in pixels as photographed. Rows and columns beyond the lattice continue it. */
export function cellCorners(lattice: Lattice, tall: number, lens: Lens, row: number, column: number): Point[] {
  const to = latticeTo(lattice, tall);
  const [x, y] = [column * (1 + lattice.gap), row * (tall + lattice.gap)];
  return [{ x, y }, { x: x + 1, y }, { x: x + 1, y: y + tall }, { x, y: y + tall }].map((point) => bent(lens, projected(to, point))); // biome-ignore format: corners
}

const ACROSS = 4;
const RADII = 6;

/** Places at which one cell is sampled, in blocks from its top left corner: ACROSS to a group along each band. */
export function cellSamples(shape: BlockShape): Float64Array {
  const { perBlock, rim, halfWidth, halfHeight } = shape;
  const places: number[] = [];
  const half = Math.tan(Math.PI / perBlock);
  const put = (x: number, y: number) => places.push((x + halfWidth) / (2 * halfWidth), (y + halfHeight) / (2 * halfWidth));
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
  for (const [sx, sy] of [[-1, -1], [1, -1], [1, 1], [-1, 1]] as const)
    for (const [u, v] of [[0.15, 0.15], [0.15, 0.7], [0.7, 0.15], [0.4, 0.4]] as const) put(sx * (halfWidth - u * leg), sy * (halfHeight - v * leg));
  return Float64Array.from(places);
}

/** What is seen of a cell: the variance within bands, and all of it, OKLab. */
export interface CellLook {
  readonly within: number;
  readonly total: number;
  /** Whether all of it lies in the picture. */
  readonly inside: boolean;
}

const STEPS = 400;

/** By how much each radius is bent, up to 1.2 of the half diagonal: as fast as a table. */
function bendTable(bend: number): Float64Array {
  const lens: Lens = { middle: { x: 0, y: 0 }, half: 1, bend };
  return Float64Array.from({ length: STEPS + 2 }, (_, step) => (step === 0 ? 1 : bent(lens, { x: (1.6 * step) / STEPS, y: 0 }).x / ((1.6 * step) / STEPS)));
}

/** A reader of cells of one lattice in one picture (OKLab). */
export function cellReader(plane: Plane, lattice: Lattice, samples: Float64Array, tall: number): (row: number, column: number) => CellLook {
  const h = latticeTo(lattice, tall);
  const { middle, half, bend } = lensOf(plane, lattice.bend);
  const table = bend === 0 ? null : bendTable(bend);
  const { width, height, data } = plane;
  const count = samples.length / 2;
  const [a, b, c, d, e, f, g, i] = [h[0]!, h[1]!, h[2]!, h[3]!, h[4]!, h[5]!, h[6]!, h[7]!];
  const last = h[8]!;
  return (row, column) => {
    const left = column * (1 + lattice.gap);
    const top = row * (tall + lattice.gap);
    let [within, allSquares, inside] = [0, 0, true];
    const all = [0, 0, 0];
    const sums = [0, 0, 0];
    let squares = 0;
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
        sums[channel]! += one;
        squares += one * one;
      }
      if (at % ACROSS === ACROSS - 1) {
        within += squares / ACROSS;
        allSquares += squares / ACROSS;
        for (let channel = 0; channel < 3; channel += 1) {
          within -= (sums[channel]! / ACROSS) ** 2;
          all[channel]! += sums[channel]! / ACROSS;
          sums[channel] = 0;
        }
        squares = 0;
      }
    }
    const groups = count / ACROSS;
    const total = allSquares / groups - all.reduce((sum, one) => sum + (one / groups) ** 2, 0);
    return { within: within / groups, total: Math.max(0, total), inside };
  };
}

/** Variance of noise and of cloth that is even: no block is as even. */
const EVEN = 5e-4;

/** How much a cell looks like a block of wedges, 0 to 1; an even cell does not. */
export function blockLikeness({ within, total }: CellLook): number {
  return Math.max(0, 1 - within / (total + EVEN)) * (total / (total + EVEN));
}

/** How much of the variance in the cells of a lattice lies between bands, 0 to 1; at most `most` cells are looked at. */
export function latticeLikeness(plane: Plane, lattice: Lattice, samples: Float64Array, tall: number, most: number): number {
  const look = cellReader(plane, lattice, samples, tall);
  const count = lattice.rows * lattice.columns;
  const step = Math.max(1, count / most);
  let [within, total, seen] = [0, 0, 0];
  for (let at = 0; at < count; at += step) {
    const cell = Math.floor(at);
    const one = look(Math.floor(cell / lattice.columns), cell % lattice.columns);
    within += one.within;
    total += one.total;
    seen += 1;
  }
  return 1 - within / (total + EVEN * seen * 2);
}
