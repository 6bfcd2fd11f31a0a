// Makes a picture smaller or larger by area: each new pixel is the mean of the light that falls on it, so that nothing shimmers.
import { LINEAR_OF_BYTE, linearPlane } from './linear';
import { blankPlane, type Pixels, type Plane } from './pixels';

/** A rectangle of whole pixels. */
export interface PixelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** For each new place along one side: the first old pixel it covers, and how much of each, summing to 1. */
interface Coverage {
  readonly first: Int32Array;
  readonly weights: readonly Float32Array[];
}

function coverage(from: number, to: number): Coverage {
  const first = new Int32Array(to);
  const step = from / to;
  const weights = Array.from({ length: to }, (_, at) => {
    const [start, end] = [at * step, Math.min(from, (at + 1) * step)];
    first[at] = Math.min(from - 1, Math.floor(start + 1e-9));
    const last = Math.max(first[at]!, Math.ceil(end - 1e-9) - 1);
    return Float32Array.from({ length: last - first[at]! + 1 }, (_none, index) => {
      const pixel = first[at]! + index;
      return (Math.min(end, pixel + 1) - Math.max(start, pixel)) / (end - start);
    });
  });
  return { first, weights };
}

/** Adds up rows of three channels, each already as wide as it is to be, into rows by their weights. */
function resized(
  rows: number,
  width: number,
  height: number,
  channels: number,
  rowAt: (row: number, into: Float32Array) => void,
): Plane {
  const plane = blankPlane(width, height, channels);
  const down = coverage(rows, height);
  const length = width * channels;
  const narrow = new Float32Array(length);
  let read = -1;
  for (let at = 0; at < height; at += 1) {
    const weights = down.weights[at]!;
    const to = at * length;
    for (let index = 0; index < weights.length; index += 1) {
      const row = down.first[at]! + index;
      if (row !== read) rowAt(row, narrow);
      read = row;
      const weight = weights[index]!;
      for (let one = 0; one < length; one += 1) plane.data[to + one]! += weight * narrow[one]!;
    }
  }
  return plane;
}

/**
 * A box of a picture in linear light, three channels, `width` × `height` pixels (at least 1). Larger than the box, its
 * pixels are repeated. The box must lie inside the picture.
 */
export function shrunk(pixels: Pixels, box: PixelBox, width: number, height: number): Plane {
  const across = coverage(box.width, width);
  return resized(box.height, width, height, 3, (row, into) => {
    const start = ((box.y + row) * pixels.width + box.x) * 4;
    for (let at = 0; at < width; at += 1) {
      const weights = across.weights[at]!;
      let from = start + across.first[at]! * 4;
      let [red, green, blue] = [0, 0, 0];
      for (let index = 0; index < weights.length; index += 1, from += 4) {
        const weight = weights[index]!;
        red += weight * LINEAR_OF_BYTE[pixels.data[from]!]!;
        green += weight * LINEAR_OF_BYTE[pixels.data[from + 1]!]!;
        blue += weight * LINEAR_OF_BYTE[pixels.data[from + 2]!]!;
      }
      into[at * 3] = red;
      into[at * 3 + 1] = green;
      into[at * 3 + 2] = blue;
    }
  });
}

/** A plane of any channels in another size. */
export function resizedPlane(plane: Plane, width: number, height: number): Plane {
  const { channels } = plane;
  const across = coverage(plane.width, width);
  return resized(plane.height, width, height, channels, (row, into) => {
    into.fill(0);
    for (let at = 0; at < width; at += 1) {
      const weights = across.weights[at]!;
      const from = (row * plane.width + across.first[at]!) * channels;
      for (let index = 0; index < weights.length * channels; index += 1)
        into[at * channels + (index % channels)]! +=
          weights[Math.floor(index / channels)]! * plane.data[from + index]!;
    }
  });
}

/** A size with the same shape of which the longer side is at most `longest`, both sides at least 1; never larger. */
export function fitted(
  width: number,
  height: number,
  longest: number,
): { readonly width: number; readonly height: number } {
  const scale = Math.min(1, longest / Math.max(width, height));
  const side = (length: number) => Math.max(1, Math.round(length * scale));
  return { width: side(width), height: side(height) };
}

/** A whole picture in linear light with its longer side at most `longest` pixels. */
export function shrunkTo(pixels: Pixels, longest: number): Plane {
  const { width, height } = fitted(pixels.width, pixels.height, longest);
  if (width === pixels.width && height === pixels.height) return linearPlane(pixels);
  return shrunk(pixels, { x: 0, y: 0, width: pixels.width, height: pixels.height }, width, height);
}
