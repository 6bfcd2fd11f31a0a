// From what was read between four corners to what a pictured block of the document holds: its bands, and its picture squared up.
import type { Point } from '../../geometry/point';
import { apothem } from '../../geometry/wedge';
import type { PicturedWedge, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import type { Pixels } from '../pixels/pixels';
import { longestSide, type Relit, rectified } from '../plane/rectify';
import type { ReadBand } from './readLook';
import { shapeOf } from './shape';

/** The least that the document holds of a band. */
const LEAST: Inches = 0.001;

/** Bands as the document holds them; what runs past the middle is left out. */
export function picturedWedge(bands: readonly ReadBand[], wedge: WedgePlan): PicturedWedge {
  let room = apothem(wedge);
  const shown = bands.flatMap(({ fabric, width, sure }) => {
    const seen = Math.min(width, room);
    room -= seen;
    return seen < LEAST ? [] : [{ fabric, width: seen, sure: Math.max(0, Math.min(1, sure)) }];
  });
  return { bands: shown };
}

/**
 * The finished block alone, flat, its longer side `most` pixels or as many as the picture has. `allowance`: inches of cloth that
 * lie round it inside the corners. `relit` takes out its light.
 */
export function squaredUp(
  pixels: Pixels,
  corners: readonly Point[],
  bend: number,
  wedge: WedgePlan,
  allowance: Inches,
  most: number,
  relit?: Relit,
): Pixels {
  const { halfWidth, halfHeight } = shapeOf(wedge, 0);
  const side = Math.max(2, Math.min(most, Math.round(longestSide(corners))));
  const long = Math.max(halfWidth, halfHeight);
  const flat = {
    width: Math.max(1, Math.round((side * halfWidth) / long)),
    height: Math.max(1, Math.round((side * halfHeight) / long)),
    across: halfWidth / (halfWidth + allowance),
    down: halfHeight / (halfHeight + allowance),
  };
  return rectified(pixels, corners, bend, flat, relit);
}
