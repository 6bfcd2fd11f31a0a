// Photographs flat cloth on its ground: camera, light, blur, noise, JPEG. Everything is chosen by the seed.
import sharp from 'sharp';
import type { Point } from '../../../src/geometry/point';
import { byteOfLinear } from '../../../src/photo/pixels/linear';
import { blankPixels, blankPlane, type Pixels, type Plane } from '../../../src/photo/pixels/pixels';
import { blurred, sampleInto } from '../../../src/photo/pixels/sample';
import type { Ground } from './background';
import type { Camera } from './camera';
import type { FlatCloth } from './cloth';
import type { Dice } from './dice';

/** How hard the picture is; everything is drawn between nothing and this. */
export interface Hardness {
  /** Colour temperatures of the light, kelvin. */
  readonly cast: readonly [number, number];
  /** Of the brightest place to the darkest. */
  readonly uneven: number;
  readonly blur: number;
  readonly noise: number;
}

export const ISSUE: Hardness = { cast: [2800, 7500], uneven: 2, blur: 1.2, noise: 0.012 };

export async function photograph(
  cloth: FlatCloth,
  ground: Ground,
  camera: Camera,
  hardness: Hardness,
  dice: Dice,
): Promise<Pixels> {
  const plane = exposed(cloth, ground, camera, dice);
  lit(plane, hardness, dice);
  const soft = blurred(plane, dice.between(0, hardness.blur));
  return jpeg(noisy(soft, dice.between(0, hardness.noise), dice), dice);
}

/** Four samples to the pixel. */
function exposed(cloth: FlatCloth, ground: Ground, camera: Camera, dice: Dice): Plane {
  const plane = blankPlane(camera.width, camera.height, 3);
  const [dx, dy] = [dice.between(-0.25, 0.25), dice.between(-0.25, 0.25)];
  const shadow = { depth: dice.between(0, 0.5), soft: dice.between(0.05, 0.4), dx, dy };
  const colour = new Float32Array(3);
  for (let row = 0; row < camera.height; row += 1) {
    for (let column = 0; column < camera.width; column += 1) {
      const at = (row * camera.width + column) * 3;
      for (let sample = 0; sample < 4; sample += 1) {
        const point = camera.table(column + 0.25 + 0.5 * (sample % 2), row + 0.25 + 0.5 * (sample >> 1));
        sceneInto(cloth, ground, shadow, point, colour);
        for (let channel = 0; channel < 3; channel += 1) plane.data[at + channel]! += colour[channel]! / 4;
      }
    }
  }
  return plane;
}

interface Shadow {
  readonly depth: number;
  readonly soft: number;
  readonly dx: number;
  readonly dy: number;
}

function sceneInto(
  cloth: FlatCloth,
  ground: Ground,
  shadow: Shadow,
  { x, y }: Point,
  into: Float32Array,
): void {
  const u = x + cloth.width / 2;
  const v = y + cloth.height / 2;
  if (u >= 0 && v >= 0 && u < cloth.width && v < cloth.height && !inHole(cloth, u, v)) {
    const scale = cloth.plane.width / cloth.width;
    sampleInto(cloth.plane, u * scale, v * scale, into, 0);
    return;
  }
  ground(x, y, into);
  const outX = beyond(u - shadow.dx, cloth.width);
  const outY = beyond(v - shadow.dy, cloth.height);
  const by = 1 - shadow.depth * Math.exp((-0.5 * (outX * outX + outY * outY)) / shadow.soft ** 2);
  for (let channel = 0; channel < 3; channel += 1) into[channel]! *= by;
}

function inHole({ holes }: FlatCloth, u: number, v: number): boolean {
  for (const { x, y, width, height } of holes)
    if (u >= x && v >= y && u < x + width && v < y + height) return true;
  return false;
}

function beyond(at: number, size: number): number {
  return Math.max(0, -at, at - size);
}

/** White of a black body at `kelvin` in linear sRGB, its brightest channel 1: Planck's law over Gauss fits to the CIE 1931 observer. */
function whiteOf(kelvin: number): [number, number, number] {
  const bell = (l: number, middle: number, below: number, above: number) =>
    Math.exp(-0.5 * ((l - middle) / (l < middle ? below : above)) ** 2);
  let [x, y, z] = [0, 0, 0];
  for (let l = 380; l <= 780; l += 5) {
    // Wyman, Sloan and Shirley, 'Simple Analytic Approximations to the CIE XYZ Color Matching Functions', JCGT 2 (2013).
    const power = 1 / ((l / 500) ** 5 * (Math.exp(14_387_769 / (l * kelvin)) - 1));
    x +=
      power *
      (1.056 * bell(l, 599.8, 37.9, 31) +
        0.362 * bell(l, 442, 16, 26.7) -
        0.065 * bell(l, 501.1, 20.4, 26.2));
    y += power * (0.821 * bell(l, 568.8, 46.9, 40.5) + 0.286 * bell(l, 530.9, 16.3, 31.1));
    z += power * (1.217 * bell(l, 437, 11.8, 36) + 0.681 * bell(l, 459, 26, 13.8));
  }
  const rgb = [
    3.2406 * x - 1.5372 * y - 0.4986 * z,
    -0.9689 * x + 1.8758 * y + 0.0415 * z,
    0.0557 * x - 0.204 * y + 1.057 * z,
  ].map((one) => Math.max(0.02, one));
  const most = Math.max(...rgb);
  return rgb.map((one) => one / most) as [number, number, number];
}

/** Cast, exposure, and light that falls off across the picture. */
function lit(plane: Plane, hardness: Hardness, dice: Dice): void {
  const kelvin = dice.between(...hardness.cast);
  const white = whiteOf(kelvin);
  // The camera has taken out part of the cast already.
  const left = dice.between(0.4, 1);
  const gains = white.map((one) => one ** left * dice.between(0.97, 1.03));
  const uneven = dice.between(0, Math.log2(hardness.uneven));
  const turn = dice.between(0, 2 * Math.PI);
  const bow = dice.between(-0.12, 0.12);
  const exposure = dice.between(0.65, 1.02);
  const { width, height, data } = plane;
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1) {
      const [x, y] = [column / width - 0.5, row / height - 0.5];
      const along = x * Math.cos(turn) + y * Math.sin(turn);
      const light =
        exposure *
        2 ** (uneven * (along / (Math.abs(Math.cos(turn)) + Math.abs(Math.sin(turn))) - 0.5)) *
        (1 - bow * 4 * (x * x + y * y) * 0.5) *
        1.15;
      const at = (row * width + column) * 3;
      for (let channel = 0; channel < 3; channel += 1) data[at + channel]! *= light * gains[channel]!;
    }
  }
}

function noisy(plane: Plane, noise: number, dice: Dice): Pixels {
  const pixels = blankPixels(plane.width, plane.height);
  for (let at = 0; at < plane.width * plane.height; at += 1)
    for (let channel = 0; channel < 3; channel += 1) {
      const light = plane.data[at * 3 + channel]!;
      const grain =
        1.22 *
        (dice.next() + dice.next() + dice.next() + dice.next() - 2) *
        noise *
        1.42 *
        Math.sqrt(Math.max(0, light) + 0.02);
      pixels.data[at * 4 + channel] = byteOfLinear(light + grain);
    }
  return pixels;
}

async function jpeg(pixels: Pixels, dice: Dice): Promise<Pixels> {
  const { width, height, data } = pixels;
  const quality = 60 + dice.below(35);
  const bytes = await sharp(Buffer.from(data.buffer), { raw: { width, height, channels: 4 } })
    .removeAlpha()
    .jpeg({ quality })
    .toBuffer();
  return decoded(bytes);
}

/** A picture file as pixels. */
async function decoded(bytes: Uint8Array): Promise<Pixels> {
  const { data, info } = await sharp(bytes).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return {
    width: info.width,
    height: info.height,
    data: new Uint8ClampedArray(data.buffer, data.byteOffset, data.length),
  };
}

/** A picture as a PNG, to look at. */
export function png({ width, height, data }: Pixels): Promise<Buffer> {
  return sharp(Buffer.from(data.buffer, data.byteOffset, data.length), {
    raw: { width, height, channels: 4 },
  })
    .png()
    .toBuffer();
}
