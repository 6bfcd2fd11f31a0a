// Colours of known fabrics after the cast is taken out: pictures rendered by lamps of 2800 to 7500 K and by daylight, with uneven
// light, exposure, noise and JPEG 60. To reach: a median of ΔE00 2, and 4 for 95 of 100.
import { beforeAll, describe, expect, it } from 'vitest';
import { ciede2000 } from '../../../src/colour/difference';
import { type LinearRgb, labD65Of } from '../../../src/colour/spaces';
import { lightOf, planeByDaylight } from '../../../src/photo/light/light';
import { spotIn } from '../../../src/photo/light/patch';
import { proposeWhite } from '../../../src/photo/light/propose';
import { brightnessOver, evenlyLit } from '../../../src/photo/light/unevenness';
import { cutOut } from '../../../src/photo/pixels/frame';
import { meanOf } from '../../../src/photo/pixels/linear';
import { WAYS, type Way } from '../render/clothLight';
import { clothPicture, INSET } from '../render/clothPicture';
import { CARD, framed } from '../render/clothScene';

interface Reading {
  readonly way: Way;
  readonly off: number;
  /** Whether the proposed white lies on the card, and how sure it is. */
  readonly proposed: boolean;
  readonly sure: number;
}

async function read(seed: number): Promise<Reading> {
  const way = WAYS[seed % WAYS.length]!;
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

function quantile(values: readonly number[], part: number): number {
  return values.toSorted((one, other) => one - other)[Math.ceil(part * values.length) - 1]!;
}

describe('450 pictures of fabrics with a white card', () => {
  const readings: Reading[] = [];
  beforeAll(async () => {
    for (let seed = 1; seed <= 450; seed += 1) readings.push(await read(seed));
  }, 1_800_000);
  const offs = (...ways: Way[]) => readings.filter(({ way }) => ways.includes(way)).map(({ off }) => off);
  const told = (name: string, values: readonly number[]) =>
    console.log(
      `${name}: ${values.length}, median ${quantile(values, 0.5).toFixed(2)}, 95 % ${quantile(values, 0.95).toFixed(2)}`,
    );

  it('lit by spectra and by the cones of another model are read within ΔE00 2 (median) and 4 (95 of 100)', () => {
    const all = offs('cones', 'spectra');
    told('cones and spectra', all);
    expect(all.length).toBe(300);
    expect(quantile(all, 0.5)).toBeLessThanOrEqual(2);
    expect(quantile(all, 0.95)).toBeLessThanOrEqual(4);
  });

  // Gains for red, green and blue are no adaptation of an eye; vivid colours by a warm lamp differ most (from 5 on between models).
  it('lit by gains for red, green and blue are read within ΔE00 2 (median) and 8 (95 of 100)', () => {
    const all = offs('gains');
    told('gains', all);
    expect(quantile(all, 0.5)).toBeLessThanOrEqual(2);
    expect(quantile(all, 0.95)).toBeLessThanOrEqual(8);
  });

  it('have the card proposed as white in 98 of 100', () => {
    const right = readings.filter(({ proposed }) => proposed);
    console.log(`white proposed right: ${right.length} of ${readings.length}`);
    expect(right.length).toBeGreaterThanOrEqual(0.98 * readings.length);
  });
});
