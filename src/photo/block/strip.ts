// One strip of a photographed block by itself: the largest upright patch that is surely of it, flat and by daylight, to make a fabric of.
import { direction } from '../../geometry/block';
import type { Point } from '../../geometry/point';
import { phrase } from '../../model/phrase';
import type { WedgePlan } from '../../model/project';
import { failed, ok, type Result } from '../../model/result';
import type { Inches } from '../../model/units';
import type { Pixels } from '../pixels/pixels';
import { projected, squareTo } from '../plane/homography';
import { bent, lensOf, straightened } from '../plane/lens';
import { longestSide, rectified } from '../plane/rectify';
import { type LightThere, withoutLight } from './daylight';
import { type BlockShape, shapeOf } from './shape';

/** Where a strip lies: its block in the photograph, its place (from 0), and the radii of its seams, inches from the middle of the block. */
export interface StripThere {
  readonly corners: readonly Point[];
  readonly bend: number;
  readonly allowance: Inches;
  readonly place: number;
  readonly outer: Inches;
  readonly inner: Inches;
  /** Taken out of the patch; null where it is not known. */
  readonly light: LightThere | null;
}

export interface StripPatch {
  /** The rim's side up. */
  readonly pixels: Pixels;
  readonly perInch: number;
}

/** Next to seams cloth is bent and shaded, and bands are read to about so much. */
const CLEAR: Inches = 1 / 16;
/** How much of a wedge's width is surely its own. */
const WIDE = 0.84;
/** A patch smaller than this shows too little of a print to go on with. */
const LEAST_PIXELS = 36;
const LEAST_SIDE: Inches = 3 / 8;

/** Cuts a strip out. A problem with a sentence where too little of it is to be seen. */
export function stripPatch(pixels: Pixels, strip: StripThere, wedge: WedgePlan): Result<StripPatch> {
  const { corners, bend, allowance, light } = strip;
  const shape = shapeOf(wedge, allowance);
  const box = patchIn(strip, shape);
  const outline = inPhotograph(pixels, corners, bend, shape, box.outline);
  const perInch = longestSide(outline) / Math.max(box.width, box.height);
  const [width, height] = [Math.round(box.width * perInch), Math.round(box.height * perInch)];
  if (!(Math.min(width, height) >= LEAST_PIXELS && Math.min(box.width, box.height) >= LEAST_SIDE))
    return failed('patch-small', 'patch', phrase('Too little of this strip is to be seen to make a photographed fabric of it: {width} × {height}, {across} × {down} pixels. Photograph it from nearer, or make a plain fabric of its colour.', { width: { inches: Math.max(0, box.width) }, height: { inches: Math.max(0, box.height) }, across: Math.max(0, width), down: Math.max(0, height) })); // biome-ignore format: one sentence
  const flat = { width, height, across: 1, down: 1 };
  return ok({
    pixels: rectified(pixels, outline, bend, flat, light ? withoutLight(light) : undefined),
    perInch,
  });
}

/** The largest rectangle in the strip, the rim's side up: its size, and its corners from the middle of the block. */
function patchIn({ place, outer, inner }: StripThere, { perBlock }: BlockShape) {
  const top = outer - CLEAR;
  const half = Math.tan(Math.PI / perBlock) * WIDE;
  // In a wedge that runs to its point, the largest one ends half way.
  const foot = Math.max(inner + CLEAR, top / 2);
  const out = direction(place, perBlock);
  const at = (radius: number, side: number): Point => ({
    x: out.x * radius - out.y * side * foot * half,
    y: out.y * radius + out.x * side * foot * half,
  });
  return {
    width: 2 * foot * half,
    height: top - foot,
    outline: [at(top, -1), at(top, 1), at(foot, 1), at(foot, -1)],
  };
}

function inPhotograph(
  pixels: Pixels,
  corners: readonly Point[],
  bend: number,
  { halfWidth, halfHeight, allowance }: BlockShape,
  outline: readonly Point[],
): Point[] {
  const lens = lensOf(pixels, bend);
  const to = squareTo(corners.map((corner) => straightened(lens, corner)));
  return outline.map(({ x, y }) =>
    bent(lens, projected(to, { x: x / (halfWidth + allowance), y: y / (halfHeight + allowance) })),
  );
}
