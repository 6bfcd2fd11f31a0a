// One colour by daylight and the spot round a tap, as tests ask for them: through what the product does with a whole plane and a frame.
import type { LinearRgb } from '../../../src/colour/spaces';
import { type Light, planeByDaylight } from '../../../src/photo/light/light';
import { type Spot, spotIn } from '../../../src/photo/light/patch';
import { linearAt } from '../../../src/photo/pixels/linear';
import { blankPlane, type Pixels } from '../../../src/photo/pixels/pixels';

/** Colours by daylight of linear light as photographed. */
export function byDaylight(light: Light): (photographed: LinearRgb) => LinearRgb {
  return (photographed) => {
    const plane = blankPlane(1, 1, 3);
    plane.data.set(photographed);
    return linearAt(planeByDaylight(plane, light), 0);
  };
}

/** The square spot round a point; `reach` in pixels to each side, kept inside the picture. */
export function spotRound(pixels: Pixels, x: number, y: number, reach: number): Spot {
  const within = (at: number, side: number) => Math.max(reach, Math.min(side - reach, at));
  const [width, height] = [Math.min(2 * reach, pixels.width), Math.min(2 * reach, pixels.height)];
  return spotIn(pixels, { x: within(x, pixels.width), y: within(y, pixels.height), width, height, angle: 0 });
}
