// How well what lies between four corners looks like a block of wedges: bands that run straight across their wedge, seams from the
// middle, corner triangles of one fabric, and an edge all round. All from a few hundred samples, so that thousands of
// corners can be tried.
import { direction } from '../../geometry/block';
import type { Plane } from '../pixels/pixels';
import type { Homography } from '../plane/homography';
import type { BlockShape } from './shape';

/** Places at which a shape is sampled, as flat lists of x, y. */
export interface Samples {
  /** By wedge, then by distance from the middle, then across: ACROSS samples to a group. */
  readonly bands: Float64Array;
  /** Weight of each group of `bands`. */
  readonly weights: Float64Array;
  /** Four corners, CORNER samples each. */
  readonly corners: Float64Array;
  /** Pairs that lie on both sides of the seams between wedges. */
  readonly seams: Float64Array;
  /** Pairs on both sides of the seams of the corner triangles; corner side first. */
  readonly cornerSeams: Float64Array;
  /** Pairs inside and outside of the cloth, ROUND to a side; sides clockwise from the top. */
  readonly border: Float64Array;
}

const ACROSS = 5;
const RADII = 11;
const CORNER = 6;
const ROUND = 20;

/** The places for a shape; `near` is how far to each side of a seam they lie, as a share of the rim. */
export function samplesOf(shape: BlockShape, near = 0.035): Samples {
  const { perBlock, rim } = shape;
  const bands: number[] = [];
  const weights: number[] = [];
  const seams: number[] = [];
  const half = Math.tan(Math.PI / perBlock);
  for (let step = 0; step < perBlock; step += 1) {
    const out = direction(step, perBlock);
    const seam = direction(step + 0.5, perBlock);
    for (let ring = 0; ring < RADII; ring += 1) {
      const radius = rim * (0.16 + (0.81 * ring) / (RADII - 1));
      weights.push(radius / rim);
      for (let at = 0; at < ACROSS; at += 1) {
        const off = radius * half * 0.8 * ((2 * at) / (ACROSS - 1) - 1);
        bands.push(out.x * radius - out.y * off, out.y * radius + out.x * off);
      }
      const reach = radius / Math.cos(Math.PI / perBlock);
      for (const side of [-1, 1]) {
        const off = side * near * rim;
        seams.push(seam.x * reach - seam.y * off, seam.y * reach + seam.x * off);
      }
    }
  }
  return {
    bands: Float64Array.from(bands),
    weights: Float64Array.from(weights),
    seams: Float64Array.from(seams),
    ...edgeSamples(shape, near),
  };
}

function edgeSamples(shape: BlockShape, near: number) {
  const { perBlock, rim, halfWidth, halfHeight, allowance } = shape;
  const [w, h] = [halfWidth + allowance, halfHeight + allowance];
  const corners: number[] = [];
  const cornerSeams: number[] = [];
  const border: number[] = [];
  for (const [sx, sy] of [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ] as const) {
    const tip = { x: sx * w, y: sy * h };
    const step = (Math.atan2(tip.x, -tip.y) / (2 * Math.PI)) * perBlock;
    const onSeam = Math.abs(step - Math.round(step)) > 0.25;
    for (let at = 0; at < CORNER; at += 1) {
      const [u, v] = [
        [0.06, 0.06],
        [0.06, 0.3],
        [0.3, 0.06],
        [0.06, 0.16],
        [0.16, 0.06],
        [0.16, 0.16],
      ][at] as [number, number];
      const small = perBlock === 8 ? 1 : 0.5;
      corners.push(tip.x - sx * rim * (u * small + 0.02), tip.y - sy * rim * (v * small + 0.02));
    }
    const wedges = onSeam ? [Math.floor(step), Math.ceil(step)] : [Math.round(step)];
    for (const wedge of wedges) {
      const out = direction(wedge, perBlock);
      const half = Math.tan(Math.PI / perBlock) * rim;
      for (let at = 0; at < 6; at += 1) {
        const off = half * 0.8 * ((2 * at) / 5 - 1);
        for (const side of [1, -1]) {
          const reach = rim * (1 + side * near);
          cornerSeams.push(out.x * reach - out.y * off, out.y * reach + out.x * off);
        }
      }
    }
  }
  for (let side = 0; side < 4; side += 1) {
    const [out, along] = side % 2 === 0 ? [h, w] : [w, h];
    for (let at = 0; at < ROUND; at += 1) {
      const off = along * 0.95 * ((2 * at) / (ROUND - 1) - 1);
      for (const way of [-1, 1]) {
        const reach = out + way * near * rim;
        const [x, y] = [
          [off, -reach],
          [reach, off],
          [-off, reach],
          [-reach, -off],
        ][side] as [number, number];
        border.push(x, y);
      }
    }
  }
  return {
    corners: Float64Array.from(corners),
    cornerSeams: Float64Array.from(cornerSeams),
    border: Float64Array.from(border),
  };
}

/** Differences of colour at which a seam counts half, in OKLab. */
const SEEN = 0.04;

/**
 * How much what a homography (inches of the shape → pixels of `plane`, OKLab) shows looks like the shape, 0 to 6.4. Where it surely is
 * not above `least`, a figure no greater than that: it is seen before the bands, half of the work, are looked at.
 */
export function likenessOf(
  plane: Plane,
  h: Homography,
  samples: Samples,
  least = Number.NEGATIVE_INFINITY,
): number {
  const corner = spreadWithin(seenAt(plane, h, samples.corners), CORNER, null);
  const corners = 1 / (1 + (corner.within + 0.3 * (corner.total - corner.within)) / 1.2e-3);
  const seams = contrast(seenAt(plane, h, samples.seams));
  const cornerSeams = contrast(seenAt(plane, h, samples.cornerSeams));
  const round = seenAt(plane, h, samples.border);
  const sides = [0, 1, 2, 3].map((side) => contrast(round, side / 4, (side + 1) / 4));
  const border = sides.reduce((sum, one) => sum + one / 4, 0);
  /** `bands` is the share of the variance that bands straight across their wedges explain. */
  const total = (bands: number) =>
    2 * Math.max(0, bands) +
    seams +
    0.5 * corners +
    0.9 * cornerSeams +
    1.2 * border +
    0.8 * Math.min(...sides);
  if (total(1) <= least) return total(1);
  const { within, total: all } = spreadWithin(seenAt(plane, h, samples.bands), ACROSS, samples.weights);
  return total(1 - within / (all + 4e-4));
}

const OUTSIDE = 0.5;

/** The colours last seen, three numbers to a place: thousands of corners are tried, so nothing is allocated for each. */
let seen = new Float32Array(0);

/** The colours at places, until the next are seen; places outside the picture are grey of a kind that no edge helps. */
function seenAt(plane: Plane, h: Homography, places: Float64Array): Float32Array {
  const { width, height, data } = plane;
  const size = (places.length / 2) * 3;
  if (seen.length < size) seen = new Float32Array(size);
  const colours = seen.subarray(0, size);
  const [a, b, c, d, e, f, g, i] = [h[0]!, h[1]!, h[2]!, h[3]!, h[4]!, h[5]!, h[6]!, h[7]!];
  const last = h[8]!;
  for (let at = 0, to = 0; to < size; at += 2, to += 3) {
    const x = places[at]!;
    const y = places[at + 1]!;
    const depth = g * x + i * y + last;
    const u = (a * x + b * y + c) / depth - 0.5;
    const v = (d * x + e * y + f) / depth - 0.5;
    if (!(u >= 0 && v >= 0 && u < width - 1 && v < height - 1)) {
      colours[to] = OUTSIDE;
      colours[to + 1] = 0;
      colours[to + 2] = 0;
      continue;
    }
    const column = u | 0;
    const row = v | 0;
    const p = u - column;
    const q = v - row;
    const from = (row * width + column) * 3;
    const below = from + width * 3;
    for (let channel = 0; channel < 3; channel += 1) {
      const left = data[from + channel]!;
      const leftBelow = data[below + channel]!;
      const upper = left + p * (data[from + 3 + channel]! - left);
      colours[to + channel] = upper + q * (leftBelow + p * (data[below + 3 + channel]! - leftBelow) - upper);
    }
  }
  return colours;
}

/** Weighted variance within groups of `size` samples, and of all samples; summed over the channels. */
function spreadWithin(
  colours: Float32Array,
  size: number,
  weights: Float64Array | null,
): { within: number; total: number } {
  const groups = colours.length / 3 / size;
  let [within, square, mass] = [0, 0, 0];
  const mean = [0, 0, 0];
  for (let group = 0; group < groups; group += 1) {
    const weight = weights ? weights[group]! : 1;
    mass += weight;
    for (let channel = 0; channel < 3; channel += 1) {
      let sum = 0;
      let squares = 0;
      for (let at = 0; at < size; at += 1) {
        const one = colours[(group * size + at) * 3 + channel]!;
        sum += one;
        squares += one * one;
      }
      within += weight * (squares / size - (sum / size) ** 2);
      square += (weight * squares) / size;
      mean[channel]! += (weight * sum) / size;
    }
  }
  const total = square / mass - mean.reduce((sum, one) => sum + (one / mass) ** 2, 0);
  return { within: within / mass, total: Math.max(0, total) };
}

/** Mean share of pairs that differ clearly, in the part of the list between two shares of it. */
function contrast(colours: Float32Array, from = 0, to = 1): number {
  const pairs = colours.length / 6;
  let sum = 0;
  for (let at = from * pairs; at < to * pairs; at += 1) {
    let square = 0;
    for (let channel = 0; channel < 3; channel += 1)
      square += (colours[at * 6 + channel]! - colours[at * 6 + 3 + channel]!) ** 2;
    sum += square / (square + SEEN * SEEN);
  }
  return sum / ((to - from) * pairs);
}
