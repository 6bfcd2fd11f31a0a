// Between bytes of sRGB and linear light, by table, and from linear light to OKLab and L*. The formulas are those of colour/spaces.ts.
import { encodedOf, type LinearRgb, linearOf, oklabOf, valueOfLinear } from '../../colour/spaces';
import { blankPixels, blankPlane, type Pixels, type Plane } from './pixels';

/** The linear light 0–1 of each byte of sRGB. */
export const LINEAR_OF_BYTE = Float32Array.from(
  { length: 256 },
  (_, byte) => linearOf([byte / 255, 0, 0])[0],
);

/** Steps of linear light between two entries of the table back: fine enough that each byte comes back as itself. */
const STEPS = 16384;
const BYTE_OF_STEP = Uint8Array.from({ length: STEPS + 1 }, (_, step) =>
  Math.round(encodedOf([step / STEPS, 0, 0])[0] * 255),
);

/** The byte of sRGB nearest to linear light; below 0 gives 0, above 1 gives 255, as on a screen. */
export function byteOfLinear(light: number): number {
  return BYTE_OF_STEP[Math.round(Math.max(0, Math.min(1, light)) * STEPS)]!;
}

/** Linear light of three channels as an opaque picture; what is outside 0–1 is clipped, as on a screen. */
export function pixelsOf({ width, height, data }: Plane): Pixels {
  const pixels = blankPixels(width, height);
  for (let from = 0, to = 0; from < data.length; from += 3, to += 4) {
    pixels.data[to] = byteOfLinear(data[from]!);
    pixels.data[to + 1] = byteOfLinear(data[from + 1]!);
    pixels.data[to + 2] = byteOfLinear(data[from + 2]!);
  }
  return pixels;
}

/** The linear light of one pixel of a plane of three channels. */
export function linearAt(plane: Plane, pixel: number): LinearRgb {
  const at = pixel * 3;
  return [plane.data[at]!, plane.data[at + 1]!, plane.data[at + 2]!];
}

/** OKLab of a linear plane: L 0–1, a, b. */
export function oklabPlane(linear: Plane): Plane {
  const plane = blankPlane(linear.width, linear.height, 3);
  const { data } = plane;
  for (let pixel = 0, to = 0; to < data.length; pixel += 1, to += 3) {
    const [lightness, a, b] = oklabOf(linearAt(linear, pixel));
    data[to] = lightness;
    data[to + 1] = a;
    data[to + 2] = b;
  }
  return plane;
}

/** L* 0–100 of a linear plane, one channel. */
export function valuePlane(linear: Plane): Plane {
  const plane = blankPlane(linear.width, linear.height, 1);
  for (let pixel = 0; pixel < plane.data.length; pixel += 1)
    plane.data[pixel] = valueOfLinear(linearAt(linear, pixel));
  return plane;
}

/** The mean of each channel of a plane; of linear light this is the light it sends altogether. */
export function meanOf({ channels, data }: Plane): number[] {
  const sums = Array.from({ length: channels }, () => 0);
  for (let at = 0; at < data.length; at += 1) sums[at % channels]! += data[at]!;
  return sums.map((sum) => (sum * channels) / data.length);
}
