// What light and a camera make of a scene, for tests: colours of lamps and daylight, unevenness, exposure, noise, bytes and JPEG.
// The cast is laid on in two ways, neither of them the way the tool takes it out.
import sharp from 'sharp';
import { invert, type Matrix, multiply, type Row, transform } from '../../../src/colour/matrix';
import { ofLinear, WHITE_D65 } from '../../../src/colour/spaces';
import { pixelsOf } from '../../../src/photo/pixels/linear';
import { blankPlane, type Pixels, type Plane } from '../../../src/photo/pixels/pixels';

/** Evenly from 0 to 1, seeded: Park and Miller's 'minimal standard' generator, times 48271 modulo 2^31 − 1 without a large product (Schrage). */
export function chance(seed: number): () => number {
  let state = ((seed * 7919 + 104729) % 2147483646) + 1;
  const next = () => {
    const high = Math.trunc(state / 44488);
    state = 48271 * (state - high * 44488) - 3399 * high;
    if (state < 0) state += 2147483647;
    return (state - 1) / 2147483646;
  };
  for (let round = 0; round < 5; round += 1) next();
  return next;
}

/** The CIE 1931 observer as sums of bells: Wyman, Sloan and Shirley, 'Simple Analytic Approximations', JCGT 2 (2013). */
function observer(nanometres: number): Row {
  const bell = (high: number, at: number, left: number, right: number) =>
    high * Math.exp(-0.5 * ((nanometres - at) * (nanometres < at ? left : right)) ** 2);
  return [
    bell(1.056, 599.8, 1 / 37.9, 1 / 31.0) + bell(0.362, 442.0, 1 / 16.0, 1 / 26.7) + bell(-0.065, 501.1, 1 / 20.4, 1 / 26.2),
    bell(0.821, 568.8, 1 / 46.9, 1 / 40.5) + bell(0.286, 530.9, 1 / 16.3, 1 / 31.1),
    bell(1.217, 437.0, 1 / 11.8, 1 / 36.0) + bell(0.681, 459.0, 1 / 26.0, 1 / 13.8),
  ]; // biome-ignore format: a table
}

/** X, Y, Z of a surface by a hot body (Planck's law), against the Y of a white one. */
function seenBy(kelvin: number, reflectance: (nanometres: number) => number): Row {
  const sums: [number, number, number, number] = [0, 0, 0, 0];
  for (let nanometres = 360; nanometres <= 830; nanometres += 5) {
    const light = nanometres ** -5 / (Math.exp(1.4388e7 / (nanometres * kelvin)) - 1);
    const seen = observer(nanometres);
    for (const at of [0, 1, 2] as const) sums[at] += light * reflectance(nanometres) * seen[at];
    sums[3] += light * seen[1];
  }
  return [sums[0] / sums[3], sums[1] / sums[3], sums[2] / sums[3]];
}

/** X, Y, Z with Y = 1 of a hot body. */
export function lampWhite(kelvin: number): Row {
  return seenBy(kelvin, () => 1);
}

/** Reflectances as smooth as dyes have them: level, half a wave and a whole wave from 400 to 700 nanometres. */
function smooth(kelvin: number): Matrix {
  const phase = (nanometres: number) => Math.max(0, Math.min(1, (nanometres - 400) / 300)) * Math.PI;
  const columns = [0, 1, 2].map((waves) =>
    seenBy(kelvin, (nanometres) => Math.cos(waves * phase(nanometres))),
  );
  const row = (at: 0 | 1 | 2): Row => [columns[0]![at], columns[1]![at], columns[2]![at]];
  return [row(0), row(1), row(2)];
}

/** XYZ by D65 (near a hot body of 6504 K, and made to fit its white) → XYZ of the same smooth reflectance by a lamp. */
function bySpectra(kelvin: number): Matrix {
  const noon = lampWhite(6504);
  const fit = diagonal([noon[0] / WHITE_D65[0], 1, noon[2] / WHITE_D65[2]]);
  return multiply(multiply(smooth(kelvin), invert(smooth(6504))), fit);
}

/** X, Y, Z with Y = 1 of daylight from 4000 K on: the D illuminants of CIE 15. */
export function daylightWhite(kelvin: number): Row {
  const x =
    kelvin <= 7000
      ? -4.607e9 / kelvin ** 3 + 2.9678e6 / kelvin ** 2 + 99.11 / kelvin + 0.244063
      : -2.0064e9 / kelvin ** 3 + 1.9018e6 / kelvin ** 2 + 247.48 / kelvin + 0.23704;
  const y = -3 * x * x + 2.87 * x - 0.275;
  return [x / y, 1, (1 - x - y) / y];
}

/** The cones of CAT16: Li et al., 'Comprehensive color solutions', Color Research and Application 42 (2017). */
const CAT16: Matrix = [
  [0.401288, 0.650173, -0.051461],
  [-0.250268, 1.204414, 0.045854],
  [-0.002079, 0.048952, 0.953127],
];

function diagonal([x, y, z]: Row): Matrix {
  return [
    [x, 0, 0],
    [0, y, 0],
    [0, 0, z],
  ];
}

/** The linear sRGB of light of this X, Y, Z. */
export function linearOfWhite(white: Row): Row {
  const change = diagonal([white[0] / WHITE_D65[0], white[1], white[2] / WHITE_D65[2]]);
  return transform(ofLinear(change), [1, 1, 1]);
}

/** How a cast is laid on. */
export const WAYS = ['cones', 'spectra', 'gains'] as const;
export type Way = (typeof WAYS)[number];

/** A lamp as X, Y, Z, and its temperature. */
export interface Lamp {
  readonly white: Row;
  readonly kelvin: number;
}

/**
 * From colours by D65 to colours in this light, linear sRGB: by the cones of CAT16, by the spectra of a hot body and of smooth
 * reflectances, or by a gain for each of red, green and blue.
 */
function castBy(way: Way, { white, kelvin }: Lamp): Matrix {
  if (way === 'spectra') return ofLinear(bySpectra(kelvin));
  if (way === 'gains') return diagonal(linearOfWhite(white));
  const [to, from] = [transform(CAT16, white), transform(CAT16, WHITE_D65)];
  const gains = diagonal([to[0] / from[0], to[1] / from[1], to[2] / from[2]]);
  return ofLinear(multiply(invert(CAT16), multiply(gains, CAT16)));
}

/** How bright the light is at a place, 0–1 across and down. */
export type Falloff = (across: number, down: number) => number;

/** Twice as bright at one edge as at the other, or less (`ratio`), from any side; straight, or round as under a lamp. */
export function falloffOf(random: () => number, ratio: number): Falloff {
  const turn = random() * 2 * Math.PI;
  const [x, y] = [Math.cos(turn), Math.sin(turn)];
  const reach = (Math.abs(x) + Math.abs(y)) / 2;
  const along = (across: number, down: number) => ((across - 0.5) * x + (down - 0.5) * y) / (2 * reach) + 0.5;
  if (random() < 0.5) return (across, down) => (1 + (ratio - 1) * along(across, down)) / ratio;
  // The square of the distance from a lamp on one side: 1 near, 1 / ratio far.
  const lift = 1 / (Math.sqrt(ratio) - 1);
  return (across, down) => (lift / (lift + 1 - along(across, down))) ** 2;
}

export interface Shot {
  readonly lamp: Lamp;
  readonly way: Way;
  readonly falloff: Falloff;
  /** How near the brightest channel of a perfect white in the best light comes to the most a byte holds. */
  readonly exposure: number;
  /** Standard deviation of noise on a byte in the middle greys. */
  readonly noise: number;
  readonly quality: number;
}

/** The scene as its light makes it, linear. */
function lit(scene: Plane, { lamp, way, falloff, exposure }: Shot): Plane {
  const cast = castBy(way, lamp);
  const brightest = Math.max(...transform(cast, [1, 1, 1]));
  const plane = blankPlane(scene.width, scene.height, 3);
  for (let at = 0; at < scene.width * scene.height; at += 1) {
    const across = ((at % scene.width) + 0.5) / scene.width;
    const down = (Math.floor(at / scene.width) + 0.5) / scene.height;
    const gain = (falloff(across, down) * exposure) / brightest;
    const seen = transform(cast, [scene.data[at * 3]!, scene.data[at * 3 + 1]!, scene.data[at * 3 + 2]!]);
    for (let channel = 0; channel < 3; channel += 1) plane.data[at * 3 + channel] = seen[channel]! * gain;
  }
  return plane;
}

/** Shot, with noise, and out of a JPEG again. */
export async function photographed(scene: Plane, shot: Shot, random: () => number): Promise<Pixels> {
  const pixels = pixelsOf(lit(scene, shot));
  const noise = () => (random() + random() + random() + random() - 2) * Math.sqrt(3) * shot.noise;
  for (let at = 0; at < pixels.data.length; at += 1)
    if (at % 4 !== 3) pixels.data[at]! += Math.round(noise());
  return throughJpeg(pixels, shot.quality);
}

export async function throughJpeg({ width, height, data }: Pixels, quality: number): Promise<Pixels> {
  const jpeg = await sharp(data, { raw: { width, height, channels: 4 } })
    .jpeg({ quality })
    .toBuffer();
  const back = await sharp(jpeg).ensureAlpha().raw().toBuffer();
  return { width, height, data: new Uint8ClampedArray(back.buffer, back.byteOffset, back.length) };
}
