// Measures a spot of a picture that somebody points at: its light without specks, and whether it is all of one colour.
import type { LinearRgb } from '../../colour/spaces';
import { cutOut, type Frame } from '../pixels/frame';
import { linearAt } from '../pixels/linear';
import type { Pixels, Plane } from '../pixels/pixels';

export interface Spot {
  /** Linear light in the middle of its range: specks, threads and glints at either end do not count. */
  readonly light: LinearRgb;
  /** How much the light of the spot varies, standard deviation over mean; about 0.02 for paper, more where edges cross it. */
  readonly unevenness: number;
}

/** A spot is looked at with so many pixels to a side, at most. */
const SIDE = 48;
/** The share of pixels left out at either end. */
const TRIM = 0.2;

/** The spot inside a frame. */
export function spotIn(pixels: Pixels, frame: Frame): Spot {
  const side = (length: number) => Math.max(1, Math.min(SIDE, Math.round(length)));
  return spotOf(cutOut(pixels, frame, side(frame.width), side(frame.height)));
}

/** The square spot round a point that was tapped; `reach` in pixels to each side, kept inside the picture. */
export function spotRound(pixels: Pixels, x: number, y: number, reach: number): Spot {
  const within = (at: number, side: number) => Math.max(reach, Math.min(side - reach, at));
  const [width, height] = [Math.min(2 * reach, pixels.width), Math.min(2 * reach, pixels.height)];
  return spotIn(pixels, {
    x: within(x, pixels.width),
    y: within(y, pixels.height),
    width,
    height,
    angle: 0,
  });
}

/** The spot a plane of linear light shows. */
function spotOf(plane: Plane): Spot {
  const pixels = Array.from({ length: plane.width * plane.height }, (_, pixel) => linearAt(plane, pixel));
  const brightness = pixels.map(([red, green, blue]) => red + green + blue);
  const mean = brightness.reduce((sum, one) => sum + one, 0) / brightness.length;
  const variance = brightness.reduce((sum, one) => sum + (one - mean) ** 2, 0) / brightness.length;
  const order = pixels.map((_, pixel) => pixel).sort((one, other) => brightness[one]! - brightness[other]!);
  const cut = Math.floor(order.length * TRIM);
  const counted = order.slice(cut, order.length - cut);
  const channel = (at: 0 | 1 | 2) =>
    counted.reduce((sum, pixel) => sum + pixels[pixel]![at], 0) / counted.length;
  return {
    light: [channel(0), channel(1), channel(2)],
    unevenness: mean > 0 ? Math.sqrt(variance) / mean : 0,
  };
}
