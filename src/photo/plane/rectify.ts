// Lays a quadrilateral of a picture flat: through a homography, and the lens where it is bent.
import type { Point } from '../../geometry/point';
import { byteOfLinear } from '../pixels/linear';
import { blankPixels, type Pixels } from '../pixels/pixels';
import { type PixelBox, shrunk } from '../pixels/resize';
import { sampleInto } from '../pixels/sample';
import { composed, projected, squareTo } from './homography';
import { bent, lensOf, straightened } from './lens';

/** Changes linear light, three channels in place, by the point of the picture it was seen at. */
export type Relit = (light: Float32Array, seen: Point) => void;

export interface Flat {
  /** Pixels of the picture that is made, each way. */
  readonly width: number;
  readonly height: number;
  /** The part of the quadrilateral that is shown, from its middle outwards, each way: 1 is all of it. */
  readonly across: number;
  readonly down: number;
}

/**
 * What lies between four corners (top left, top right, bottom right, bottom left, in pixels as photographed; a convex
 * quadrilateral), flat. Where the picture has more pixels than are wanted, each takes the mean of what it covers, about; beyond
 * the picture its edge goes on. `relit` changes the light of a pixel by where it lies in the picture.
 */
export function rectified(
  pixels: Pixels,
  corners: readonly Point[],
  bend: number,
  flat: Flat,
  relit?: Relit,
): Pixels {
  const { width, height, across, down } = flat;
  const lens = lensOf(pixels, bend);
  const straight = corners.map((corner) => straightened(lens, corner));
  const to = composed(squareTo(straight), [across, 0, 0, 0, down, 0, 0, 0, 1]);
  const box = boxRound(pixels, corners);
  const long = longestSide(corners);
  const scale = Math.min(1, (1.5 * Math.max(width, height)) / long);
  const small = shrunk(pixels, box, whole(box.width * scale), whole(box.height * scale));
  const [byX, byY] = [small.width / box.width, small.height / box.height];
  const made = blankPixels(width, height);
  const light = new Float32Array(3);
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1) {
      const on = { x: (2 * column + 1) / width - 1, y: (2 * row + 1) / height - 1 };
      const seen = bent(lens, projected(to, on));
      sampleInto(small, (seen.x - box.x) * byX, (seen.y - box.y) * byY, light, 0);
      relit?.(light, seen);
      const at = (row * width + column) * 4;
      for (let channel = 0; channel < 3; channel += 1)
        made.data[at + channel] = byteOfLinear(light[channel]!);
      made.data[at + 3] = 255;
    }
  }
  return made;
}

const whole = (pixels: number) => Math.max(1, Math.round(pixels));

/** The whole pixels round four corners, as far as the picture goes. */
function boxRound({ width, height }: Pixels, corners: readonly Point[]): PixelBox {
  const margin = 4;
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const within = (at: number, most: number) => Math.max(0, Math.min(most, Math.round(at)));
  const x = within(Math.min(...xs) - margin, width - 2);
  const y = within(Math.min(...ys) - margin, height - 2);
  return {
    x,
    y,
    width: Math.max(2, within(Math.max(...xs) + margin, width) - x),
    height: Math.max(2, within(Math.max(...ys) + margin, height) - y),
  };
}

/** Pixels along the longest side of a quadrilateral. */
export function longestSide(corners: readonly Point[]): number {
  return Math.max(
    ...corners.map((one, at) => {
      const other = corners[(at + 1) % corners.length]!;
      return Math.hypot(one.x - other.x, one.y - other.y);
    }),
  );
}
