// One seeded picture of cloth with a white card, and what is true of it.
import { labD65Of } from '../../../src/colour/spaces';
import type { Pixels } from '../../../src/photo/pixels/pixels';
import { chance, daylightWhite, falloffOf, lampWhite, photographed, type Way } from './clothLight';
import { type ClothScene, clothScene, meanIn } from './clothScene';

interface ClothPicture extends ClothScene {
  readonly pixels: Pixels;
  readonly kelvin: number;
  /** CIELAB of the mean of the fabric by D65, `INSET` pixels inside its edge. */
  readonly truth: ReturnType<typeof labD65Of>;
}

export const INSET = 10;

/** Lamps of 2800 to 7500 K or daylight, light up to 2 : 1 across, half to full exposure, noise of 1 to 4 bytes, JPEG 60. */
export async function clothPicture(seed: number, way: Way): Promise<ClothPicture> {
  const random = chance(seed);
  const scene = clothScene(seed, random);
  const kelvin = 2800 + random() * 4700;
  const daylight = way !== 'spectra' && kelvin > 4000 && random() < 0.5;
  const lamp = { kelvin, white: daylight ? daylightWhite(kelvin) : lampWhite(kelvin) };
  const falloff = falloffOf(random, 1 + random());
  const shot = { lamp, way, falloff, exposure: 0.5 + 0.5 * random(), noise: 1 + 3 * random(), quality: 60 };
  const { x, y, width, height } = scene.cloth;
  const box = { x: x + INSET, y: y + INSET, width: width - 2 * INSET, height: height - 2 * INSET };
  return {
    ...scene,
    kelvin,
    pixels: await photographed(scene.plane, shot, random),
    truth: labD65Of(meanIn(scene.plane, box)),
  };
}
