// Spots that are tapped, the light of a sitting, and light that falls unevenly. Random cases print their seed (fast-check).
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { GREY_CARD, lightOf, WHITE_PAPER } from '../../../src/photo/light/light';
import { brightnessAt, brightnessFrom, type Seen } from '../../../src/photo/light/unevenness';
import { byteOfLinear } from '../../../src/photo/pixels/linear';
import { blankPixels, type Pixels } from '../../../src/photo/pixels/pixels';
import { runs } from '../../runs';
import { byDaylight, spotRound } from './spots';

function plainPicture(light: readonly [number, number, number]): Pixels {
  const pixels = blankPixels(80, 60);
  for (let at = 0; at < 80 * 60; at += 1) pixels.data.set(light.map(byteOfLinear), at * 4);
  return pixels;
}

it('a spot is its light, specks and glints apart, also in a corner', () => {
  const pixels = plainPicture([0.5, 0.4, 0.3]);
  for (let at = 0; at < 80 * 60; at += 11) pixels.data.fill(at % 2 === 0 ? 0 : 255, at * 4, at * 4 + 3);
  for (const [x, y] of [[40, 30], [0, 0], [79.9, 59.9]] as const) {
    const { light, unevenness } = spotRound(pixels, x, y, 12);
    [0.5, 0.4, 0.3].forEach((channel, at) => {
      expect(light[at]! / channel).toBeCloseTo(1, 1);
    });
    expect(unevenness).toBeGreaterThan(0.1);
  }
  expect(spotRound(plainPicture([0.5, 0.4, 0.3]), 40, 30, 12).unevenness).toBeLessThan(1e-3);
}); // biome-ignore format: a table

it('white paper and a grey card in one light give the same light, which serves every picture of the sitting', () => {
  // A grey card sends back 18 % of the light, white paper of L* 95 the luminance 0.8762 (CIE 15).
  const lamp = [0.9, 0.7, 0.45] as const;
  const seen = (reflectance: number) =>
    lamp.map((channel) => channel * reflectance) as [number, number, number];
  const white = lightOf(seen(0.8762), WHITE_PAPER);
  const grey = lightOf(seen(0.1842), GREY_CARD);
  if (!white.ok || !grey.ok) throw new Error('not read');
  white.value.white.forEach((channel, at) => {
    expect(grey.value.white[at]! / channel).toBeCloseTo(1, 1);
  });
  const daylight = byDaylight(white.value);
  for (const reflectance of [0.05, 0.3, 0.8])
    for (const channel of daylight(seen(reflectance))) expect(channel).toBeCloseTo(reflectance, 3);
});

it('finds how unevenly light falls on cloth of two colours and two ends of a card, within 3 in 100', () => {
  const slope = fc.double({ min: -0.35, max: 0.35, noNaN: true });
  fc.assert(
    fc.property(slope, slope, (right, down) => {
      const lightAt = (x: number, y: number) =>
        Math.exp((right * (x - 200)) / 200 + (down * (y - 150)) / 200);
      const area = (reflectance: number, left: number, top: number): Seen[] =>
        Array.from({ length: 400 }, (_, at) => {
          const [x, y] = [left + 8 * (at % 20), top + 7 * Math.floor(at / 20)];
          return { x, y, light: 0.4 * reflectance * lightAt(x, y) };
        });
      const field = brightnessFrom([
        area(0.1, 20, 10),
        area(0.6, 200, 140),
        [...area(0.9, 20, 150), ...area(0.9, 240, 0)],
      ]);
      const ratio = brightnessAt(field, 380, 290) / brightnessAt(field, 20, 10);
      expect(Math.abs(ratio / (lightAt(380, 290) / lightAt(20, 10)) - 1)).toBeLessThan(0.03);
    }),
    { numRuns: runs(13, 40) },
  );
});

it('where nothing tells, light is even', () => {
  const field = brightnessFrom([]);
  expect(brightnessAt(field, 0, 0) / brightnessAt(field, 900, 700)).toBe(1);
});
