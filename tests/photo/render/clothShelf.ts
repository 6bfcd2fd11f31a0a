// A shelf of folded fabrics for tests: level bands in the deep shadow of a shelf, each darker towards its fold, with noise and JPEG.
import { pixelsOf } from '../../../src/photo/pixels/linear';
import { blankPlane, type Pixels, type Plane } from '../../../src/photo/pixels/pixels';
import type { PixelBox } from '../../../src/photo/pixels/resize';
import { chance, throughJpeg } from './clothLight';
import { clothPlane, lay, someCloth } from './clothScene';

interface ClothShelf {
  readonly pixels: Pixels;
  /** Where each fabric lies. */
  readonly boxes: readonly PixelBox[];
}

const WIDTH = 480;

/** Four to seven fabrics of random kinds, each 44 to 84 pixels high and as wide as the shelf less its ends. */
export async function clothShelf(seed: number): Promise<ClothShelf> {
  const random = chance(seed);
  const heights = Array.from({ length: 4 + Math.floor(4 * random()) }, () => 44 + Math.floor(40 * random()));
  const plane = blankPlane(WIDTH, heights.reduce((sum, height) => sum + height, 0) + 20, 3);
  plane.data.fill(0.003);
  let y = 10;
  const boxes = heights.map((height, at) => {
    const x = 8 + Math.floor(20 * random());
    const box = { x, y, width: WIDTH - x - 8 - Math.floor(20 * random()), height };
    const cloth = clothPlane(someCloth(seed * 11 + at, random), box.width, height, 40 + 30 * random());
    lay(plane, folded(cloth, random), x, y);
    y += height;
    return box;
  });
  const pixels = pixelsOf(plane);
  for (let at = 0; at < pixels.data.length; at += 1)
    if (at % 4 !== 3) pixels.data[at]! += Math.round((random() + random() - 1) * 5);
  return { pixels: await throughJpeg(pixels, 75), boxes };
}

/** Round at the fold: darker above and much darker below, and a little darker to one side. */
function folded(cloth: Plane, random: () => number): Plane {
  const side = (random() - 0.5) * 0.4;
  return {
    ...cloth,
    data: cloth.data.map((light, at) => {
      const pixel = Math.floor(at / 3);
      const down = Math.floor(pixel / cloth.width) / cloth.height;
      const across = (pixel % cloth.width) / cloth.width - 0.5;
      const round = 1 - (0.5 * Math.max(0, down - 0.7)) / 0.3 - (0.25 * Math.max(0, 0.15 - down)) / 0.15;
      return light * round * (1 + side * across);
    }),
  };
}
