// Reads a block from pixels when its corners are known. corners.ts finds the corners, readLook.ts reads what is seen.
import type { Point } from '../../geometry/point';
import type { WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import type { InParts } from '../../model/work/parts';
import type { Pixels, Plane } from '../pixels/pixels';
import { shrinking } from '../pixels/resize';
import { homographyThrough } from '../plane/homography';
import { type Lens, lensOf, straightened } from '../plane/lens';
import { shapeTo } from './corners';
import { type LitBlock, lightIn } from './daylight';
import { cornerStep, lookAt } from './look';
import { type Knowledge, readLook } from './readLook';
import { shapeCorners, shapeOf } from './shape';
import type { Light } from './sunlight';

/** Pixels to the side of a block for its reading, and rings to the wedge. */
const READ_SIDE = 800;
const RINGS = 128;

/** A block with inches of cloth that lie round the finished block, inside the corners. */
export interface ReadByCorners extends LitBlock {
  readonly allowance: Inches;
}

/**
 * Reads the block between four corners (top left, top right, bottom right, bottom left, in pixels as photographed). Null where three
 * of them lie on a line. `light` is that of other blocks of the sitting, where this one is to be read by it. Goes on in parts.
 */
export function* readBlock(
  pixels: Pixels,
  corners: readonly Point[],
  knowledge: Knowledge,
  bend = 0,
  light?: Light,
): InParts<ReadByCorners | null> {
  const { plane, scale, left, top } = yield* cutOut(pixels, corners, READ_SIDE);
  const lens: Lens = lensWithin(pixels, bend, scale, left, top);
  const inPlane = corners.map(({ x, y }) =>
    straightened(lens, { x: (x - left) * scale, y: (y - top) * scale }),
  );
  const { wedge } = knowledge.project;
  const allowance = allowanceSeen(plane, inPlane, lens, wedge);
  const shape = shapeOf(wedge, allowance);
  const toPlane = homographyThrough(shapeCorners(shape), inPlane);
  if (!toPlane) return null;
  yield null;
  const read = yield* readLook(lookAt(plane, toPlane, lens, shape, RINGS, plane), knowledge, light);
  const within = { x: left, y: top, width: plane.width / scale, height: plane.height / scale };
  return { ...read, light: lightIn(within, read.light), allowance };
}

/** Steps in which the allowance is tried, and how far beyond the seam of the plan. */
const ALLOWANCES = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1, 1.125, 1.25, 1.375, 1.5];

/** How much cloth lies round the finished block: with it the seams of the corner triangles are where colours change most. */
function allowanceSeen(plane: Plane, corners: readonly Point[], lens: Lens, wedge: WedgePlan): Inches {
  const clear = ALLOWANCES.map((share) => {
    const allowance = share * wedge.outerSeam;
    const shape = shapeOf(wedge, allowance);
    const usual = share === 0 || share === 1 ? 1.06 : 1;
    return { allowance, worth: usual * cornerStep(plane, shapeTo(shape, corners), lens, shape) };
  });
  return clear.reduce((best, one) => (one.worth > best.worth ? one : best)).allowance;
}

/** The part of a picture round some points, made smaller so that it is about `side` pixels to a side of their quadrilateral. */
function* cutOut(
  pixels: Pixels,
  corners: readonly Point[],
  side: number,
): InParts<{ plane: Plane; scale: number; left: number; top: number }> {
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const margin = 0.06 * Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)) + 4;
  const within = (at: number, most: number) => Math.max(0, Math.min(most, Math.round(at)));
  const left = within(Math.min(...xs) - margin, pixels.width - 2);
  const top = within(Math.min(...ys) - margin, pixels.height - 2);
  const width = Math.max(2, within(Math.max(...xs) + margin, pixels.width) - left);
  const height = Math.max(2, within(Math.max(...ys) + margin, pixels.height) - top);
  const long = Math.max(
    ...corners.map((one, at) =>
      Math.hypot(one.x - corners[(at + 1) % 4]!.x, one.y - corners[(at + 1) % 4]!.y),
    ),
  );
  const scale = Math.min(1, side / long);
  const [w, h] = [Math.max(2, Math.round(width * scale)), Math.max(2, Math.round(height * scale))];
  const plane = yield* shrinking(pixels, { x: left, y: top, width, height }, w, h);
  return { plane, scale: w / width, left, top };
}

function lensWithin(pixels: Pixels, bend: number, scale: number, left: number, top: number): Lens {
  const whole = lensOf(pixels, bend);
  return {
    middle: { x: (whole.middle.x - left) * scale, y: (whole.middle.y - top) * scale },
    half: whole.half * scale,
    bend,
  };
}
