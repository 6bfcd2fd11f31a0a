// How many pixels of a picture make an inch: from two points a known distance apart (a ruler in the picture), or from the width of
// the patch as it was typed.
import type { Point } from '../../geometry/point';
import { phrase } from '../../model/phrase';
import { failed, ok, type Result } from '../../model/result';
import type { Inches } from '../../model/units';

/** Pixels to the inch that a picture of cloth can have: from a whole bolt at arm's length to threads under a lens. */
const FEWEST = 3;
const MOST = 5000;
/** Points nearer than this cannot be told apart by hand. */
const NEAREST = 5;

/** Pixels to the inch from two points in pixels and their distance in truth. A problem with a sentence on bad input. */
export function perInchBetween(one: Point, other: Point, apart: Inches): Result<number> {
  const pixels = Math.hypot(one.x - other.x, one.y - other.y);
  if (!(pixels >= NEAREST))
    return failed('points-together', 'points', phrase('The two points are too close together. Set them farther apart, on a ruler or another length you know.')); // biome-ignore format: one sentence
  return checked(pixels, apart, 'apart');
}

/** Pixels to the inch from the width of a frame in pixels and in truth. */
export function perInchOfWidth(pixels: number, width: Inches): Result<number> {
  return checked(pixels, width, 'width');
}

function checked(pixels: number, length: Inches, path: string): Result<number> {
  if (!(length > 0 && Number.isFinite(length)))
    return failed('no-length', path, phrase('Type a length above 0.'));
  const perInch = pixels / length;
  if (perInch < FEWEST)
    return failed('length-long', path, phrase('At {length}, this part of the picture would have fewer than {fewest} pixels to the inch. Check the length.', { length: { inches: length }, fewest: FEWEST })); // biome-ignore format: one sentence
  if (perInch > MOST)
    return failed('length-short', path, phrase('At {length}, this part of the picture would have more than {most} pixels to the inch. Check the length.', { length: { inches: length }, most: MOST })); // biome-ignore format: one sentence
  return ok(perInch);
}
