// Makes a picture smaller or larger by area: each new pixel is the mean of the light that falls on it, so that nothing shimmers.
import { atOnce, type InParts } from '../../model/work/parts';
import { LINEAR_OF_BYTE } from './linear';
import { blankPlane, type Pixels, type Plane } from './pixels';

/** A rectangle of whole pixels. */
export interface PixelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Old pixels that are worked on between two pauses. */
export const PAUSE_PIXELS = 150_000;

/** For each new place along one side: the first old pixel it covers, and from `starts` on how much of each, summing to 1. */
interface Coverage {
  readonly first: Int32Array;
  readonly starts: Int32Array;
  readonly weights: Float32Array;
}

function coverage(from: number, to: number): Coverage {
  const [first, starts] = [new Int32Array(to), new Int32Array(to + 1)];
  const weights: number[] = [];
  const step = from / to;
  for (let at = 0; at < to; at += 1) {
    const [start, end] = [at * step, Math.min(from, (at + 1) * step)];
    first[at] = Math.min(from - 1, Math.floor(start + 1e-9));
    const last = Math.max(first[at]!, Math.ceil(end - 1e-9) - 1);
    for (let pixel = first[at]!; pixel <= last; pixel += 1)
      weights.push((Math.min(end, pixel + 1) - Math.max(start, pixel)) / (end - start));
    starts[at + 1] = weights.length;
  }
  return { first, starts, weights: Float32Array.from(weights) };
}

/** Adds up rows of `across` pixels, each already as wide as it is to be, into rows by their weights. In parts. */
function* resized(
  rows: number,
  across: number,
  into: Plane,
  rowAt: (row: number, into: Float32Array) => void,
): InParts<Plane> {
  const { data } = into;
  const down = coverage(rows, into.height);
  const length = into.width * into.channels;
  const narrow = new Float32Array(length);
  const pause = Math.max(1, Math.floor(PAUSE_PIXELS / across));
  let [read, unpaused] = [-1, 0];
  for (let at = 0; at < into.height; at += 1) {
    const to = at * length;
    for (let index = down.starts[at]!; index < down.starts[at + 1]!; index += 1) {
      const row = down.first[at]! + index - down.starts[at]!;
      if (row !== read) {
        if (unpaused === pause) yield null;
        unpaused = unpaused === pause ? 1 : unpaused + 1;
        rowAt(row, narrow);
      }
      read = row;
      const weight = down.weights[index]!;
      for (let one = 0; one < length; one += 1) data[to + one]! += weight * narrow[one]!;
    }
  }
  return into;
}

/** As `shrunk`, in parts. */
export function* shrinking(pixels: Pixels, box: PixelBox, width: number, height: number): InParts<Plane> {
  const { first, starts, weights } = coverage(box.width, width);
  return yield* resized(box.height, box.width, blankPlane(width, height, 3), (row, into) => {
    const start = ((box.y + row) * pixels.width + box.x) * 4;
    const data = pixels.data.subarray(start, start + box.width * 4);
    for (let at = 0; at < width; at += 1) {
      const end = starts[at + 1]!;
      let from = first[at]! * 4;
      let red = 0;
      let green = 0;
      let blue = 0;
      for (let index = starts[at]!; index < end; index += 1, from += 4) {
        const weight = weights[index]!;
        red += weight * LINEAR_OF_BYTE[data[from]!]!;
        green += weight * LINEAR_OF_BYTE[data[from + 1]!]!;
        blue += weight * LINEAR_OF_BYTE[data[from + 2]!]!;
      }
      into[at * 3] = red;
      into[at * 3 + 1] = green;
      into[at * 3 + 2] = blue;
    }
  });
}

/**
 * A box of a picture in linear light, three channels, `width` × `height` pixels (at least 1). Larger than the box, its
 * pixels are repeated. The box must lie inside the picture.
 */
export function shrunk(pixels: Pixels, box: PixelBox, width: number, height: number): Plane {
  return atOnce(shrinking(pixels, box, width, height));
}

/** A plane of any channels in another size. */
export function resizedPlane(plane: Plane, width: number, height: number): Plane {
  const { channels, data } = plane;
  const { first, starts, weights } = coverage(plane.width, width);
  const going = resized(plane.height, plane.width, blankPlane(width, height, channels), (row, into) => {
    into.fill(0);
    for (let at = 0; at < width; at += 1) {
      let from = (row * plane.width + first[at]!) * channels;
      for (let index = starts[at]!; index < starts[at + 1]!; index += 1)
        for (let channel = 0; channel < channels; channel += 1, from += 1)
          into[at * channels + channel]! += weights[index]! * data[from]!;
    }
  });
  return atOnce(going);
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

/** As `shrunkTo`, in parts. */
export function* shrinkingTo(pixels: Pixels, longest: number): InParts<Plane> {
  const { width, height } = fitted(pixels.width, pixels.height, longest);
  return yield* shrinking(pixels, { x: 0, y: 0, width: pixels.width, height: pixels.height }, width, height);
}

/** A whole picture in linear light with its longer side at most `longest` pixels. */
export function shrunkTo(pixels: Pixels, longest: number): Plane {
  return atOnce(shrinkingTo(pixels, longest));
}
