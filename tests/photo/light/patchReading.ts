// Reads the fabric of a rendered picture by its white card, and says how far off it is. For tests and the bench.
import { ciede2000 } from '../../../src/colour/difference';
import { type LinearRgb, labD65Of } from '../../../src/colour/spaces';
import { lightOf, planeByDaylight } from '../../../src/photo/light/light';
import { spotIn } from '../../../src/photo/light/patch';
import { proposeWhite } from '../../../src/photo/light/propose';
import { brightnessOver, evenlyLit } from '../../../src/photo/light/unevenness';
import { cutOut } from '../../../src/photo/pixels/frame';
import { meanOf } from '../../../src/photo/pixels/linear';
import type { Way } from '../render/clothLight';
import { clothPicture, INSET } from '../render/clothPicture';
import { CARD, framed } from '../render/clothScene';

export interface PatchReading {
  readonly way: Way;
  readonly off: number;
  /** Whether the proposed white lies on the card, and how sure it is. */
  readonly proposed: boolean;
  readonly sure: number;
}

export async function readPatch(seed: number, way: Way): Promise<PatchReading> {
  const { pixels, cloth, card, truth } = await clothPicture(seed, way);
  const frame = framed(cloth, INSET);
  const tapped = framed(card, 30);
  const light = lightOf(spotIn(pixels, tapped).light, CARD);
  if (!light.ok) throw new Error(`picture ${seed}: ${light.problems[0]!.code}`);
  const field = brightnessOver(pixels, frame, [framed(card, 6)], seed);
  const even = evenlyLit(cutOut(pixels, frame, 64, 64), frame, field, tapped);
  const mean = meanOf(planeByDaylight(even, light.value)).map((channel) => Math.max(0, channel));
  const white = proposeWhite(pixels);
  const within = (at: number, from: number, length: number) => at > from && at < from + length;
  return {
    way,
    off: ciede2000(truth, labD65Of(mean as unknown as LinearRgb)),
    proposed:
      white !== null &&
      within(white.frame.x, card.x, card.width) &&
      within(white.frame.y, card.y, card.height),
    sure: white?.sure ?? 0,
  };
}

export function quantile(values: readonly number[], part: number): number {
  return values.toSorted((one, other) => one - other)[Math.ceil(part * values.length) - 1]!;
}
