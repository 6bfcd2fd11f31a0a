// A fabric out of a picture: what is inside a frame, by daylight, as main colours, value, spread, repeat and a seamless tile. In parts,
// so that a person may stop it.

import { formatHex } from '../../colour/parse';
import { encodedOf, type LinearRgb, valueOfLinear } from '../../colour/spaces';
import type { Point } from '../../geometry/point';
import { phrase } from '../../model/phrase';
import { failed, ok, type Result } from '../../model/result';
import type { InParts } from '../../model/work/parts';
import { type Light, planeByDaylight } from '../light/light';
import { type Brightness, evenlyLit } from '../light/unevenness';
import { cuttingOut, type Frame, isInside } from '../pixels/frame';
import { meanOf, oklabPlane, pixelsOf, valuePlane } from '../pixels/linear';
import { checkPixels, type Pixels, type Plane } from '../pixels/pixels';
import { fitted, resizedPlane } from '../pixels/resize';
import { tileOf } from '../tile/tile';
import { figuresOf } from './figures';
import { coloursIn, type MainColour } from './mainColours';
import { type Measurable, type Measured, measured } from './measured';
import { type Repeat, repeatOf } from './repeat';
import { wayUp } from './wayUp';

/** What is to be read of a picture. */
export interface FabricWish {
  readonly frame: Frame;
  /** The light of the sitting; DAYLIGHT where colours are right as they are. */
  readonly light: Light;
  /** Uneven light, and the place at which the light was measured; null where it is even. */
  readonly uneven: { readonly field: Brightness; readonly measuredAt: Point } | null;
  /** Pixels of the picture to the inch; null where the true size is not known. */
  readonly perInch: number | null;
  readonly seed: number;
}

export interface FabricReading extends Measurable, Measured {
  /** The mean, #rrggbb, and its value L*. */
  readonly mean: string;
  readonly value: number;
  /** Main colours, largest share first; shares sum to 1. */
  readonly colours: readonly MainColour[];
  /** Standard deviation of L*: how busy it is. */
  readonly spread: number;
  /** How sure it is that the print has a way up, 0 to 1 (wayUp.ts). */
  readonly wayUp: number;
  /** The seamless tile. */
  readonly tile: Pixels;
}

/** A patch is looked at with its longer side this long; tiles are cut from one a little larger than a tile. */
const LOOKED_AT = 360;
const CUT_FROM = 640;
/** A frame smaller than this many pixels shows too little of a fabric. */
const LEAST_SIDE = 24;

/** Reads a fabric. A problem with a sentence where the frame lies outside the picture or is too small. */
export function* readFabric(pixels: Pixels, wish: FabricWish): InParts<Result<FabricReading>> {
  checkPixels(pixels);
  const { frame, perInch, seed } = wish;
  if (!(Math.min(frame.width, frame.height) >= LEAST_SIDE))
    return failed('frame-small', 'frame', phrase('This part of the picture is too small to show the fabric. Make the frame larger.')); // biome-ignore format: one sentence
  if (!isInside(frame, pixels))
    return failed('frame-outside', 'frame', phrase('Part of the frame lies outside the picture. Move the frame inside.')); // biome-ignore format: one sentence
  const patch = yield* patchOf(pixels, wish);
  const small = reduced(patch);
  const oklab = oklabPlane(small);
  const { colours } = coloursIn(oklab, seed);
  yield null;
  const repeat = repeatOf(oklab);
  const inPatch = repeat && grown(repeat, patch.width / small.width, patch.height / small.height);
  yield null;
  const tile = tileOf(patch, inPatch);
  const light = meanOf(patch).map(inside) as unknown as LinearRgb;
  const value = valuePlane(small);
  const spread = deviation(value);
  const figures = figuresOf(value, spread, colours.length);
  const onPicture = frame.width / patch.width;
  const read = {
    mean: formatHex(encodedOf(light)),
    value: valueOfLinear(light),
    colours,
    spread,
    figures,
    wayUp: wayUp(value),
    tile: pixelsOf(tile.plane),
    pixels: {
      repeat: inPatch && onPicture * Math.hypot(inPatch.first.x, inPatch.first.y),
      tile: { width: onPicture * tile.width, height: onPicture * tile.height },
    },
  };
  return ok(measured(read, perInch));
}

function inside(channel: number): number {
  return Math.max(0, Math.min(1, channel));
}

/** What is inside the frame, by daylight and evenly lit, linear. */
function* patchOf(pixels: Pixels, { frame, light, uneven }: FabricWish): InParts<Plane> {
  const { width, height } = fitted(Math.round(frame.width), Math.round(frame.height), CUT_FROM);
  const cut = yield* cuttingOut(pixels, frame, width, height);
  const even = uneven ? evenlyLit(cut, frame, uneven.field, uneven.measuredAt) : cut;
  return planeByDaylight(even, light);
}

function reduced(plane: Plane): Plane {
  const { width, height } = fitted(plane.width, plane.height, LOOKED_AT);
  return resizedPlane(plane, width, height);
}

function grown({ first, second, likeness }: Repeat, byX: number, byY: number): Repeat {
  return {
    first: { x: first.x * byX, y: first.y * byY },
    second: second && { x: second.x * byX, y: second.y * byY },
    likeness,
  };
}

function deviation({ data }: Plane): number {
  const mean = data.reduce((sum, one) => sum + one, 0) / data.length;
  return Math.sqrt(data.reduce((sum, one) => sum + (one - mean) ** 2, 0) / data.length);
}
