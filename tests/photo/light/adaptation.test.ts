// The white point against published numbers and a reference library.
import ColorSpace from 'colorjs.io';
import { expect, it } from 'vitest';
import { transform } from '../../../src/colour/matrix';
import { linearOf, WHITE_D65, xyzOf } from '../../../src/colour/spaces';
import { adaptation, nearestLamp, planckianUv, uvOf } from '../../../src/photo/light/adaptation';
import { byDaylight, castOf, DAYLIGHT, lightOf } from '../../../src/photo/light/light';
import { daylightWhite, lampWhite, linearOfWhite } from '../render/clothLight';

/** ASTM E308 whites as Lindbloom lists them; and his Bradford matrices to D65, brucelindbloom.com, Eqn_ChromAdapt. From memory. */
const D65_E308 = [0.95047, 1, 1.08883] as const;
const PUBLISHED = [
  { name: 'A', white: [1.0985, 1, 0.35585], first: [0.8446965, -0.1179225, 0.3948108] },
  { name: 'D50', white: [0.96422, 1, 0.82521], first: [0.9555766, -0.0230393, 0.0631636] },
] as const; // biome-ignore format: a table

it.each(PUBLISHED)('takes $name to D65 with the published Bradford matrix', ({ white, first }) => {
  const [row] = adaptation(white, D65_E308);
  row.forEach((entry, at) => {
    expect(entry).toBeCloseTo(first[at]!, 5);
  });
});

it('agrees with a reference library (colorjs.io) on colours from D50 to D65', () => {
  // The D50 of CSS Color 4: 0.3457, 0.3585.
  const fifty = [0.3457 / 0.3585, 1, (1 - 0.3457 - 0.3585) / 0.3585] as const;
  const matrix = adaptation(fifty, WHITE_D65);
  for (const rgb of [[1, 1, 1], [0.9, 0.2, 0.1], [0.1, 0.5, 0.3], [0.2, 0.25, 0.8], [0.5, 0.5, 0.5]] as const) {
    const theirs = new ColorSpace('srgb', [...rgb]).to('xyz-d50').coords;
    const ours = transform(matrix, theirs as [number, number, number]);
    const truth = xyzOf(linearOf([...rgb]));
    for (const at of [0, 1, 2] as const) expect(ours[at]).toBeCloseTo(truth[at], 6);
  }
}); // biome-ignore format: a table

it('white seen under any lamp becomes the white of D65, and there and back is nothing', () => {
  for (let kelvin = 2800; kelvin <= 7500; kelvin += 100) {
    const white = lampWhite(kelvin);
    transform(adaptation(white, WHITE_D65), white).forEach((part, at) => {
      expect(part).toBeCloseTo(WHITE_D65[at]!, 12);
    });
    const [x, y, z] = transform(
      adaptation(WHITE_D65, white),
      transform(adaptation(white, WHITE_D65), [0.3, 0.2, 0.1]),
    );
    expect([x, y, z].map((part) => Number(part.toFixed(10)))).toEqual([0.3, 0.2, 0.1]);
  }
  expect(() => adaptation([0, 0, 0], WHITE_D65)).toThrow(RangeError);
});

it('knows the colours of hot bodies: illuminant A of CIE 15, and Planck’s law from 2800 to 7500 K', () => {
  // CIE 15: A is 2856 K, x = 0.44758, y = 0.40745.
  const a = uvOf([0.44758 / 0.40745, 1, (1 - 0.44758 - 0.40745) / 0.40745]);
  planckianUv(2856).forEach((part, at) => {
    expect(part).toBeCloseTo(a[at]!, 3);
  });
  for (let kelvin = 2800; kelvin <= 7500; kelvin += 100) {
    const [u, v] = uvOf(lampWhite(kelvin));
    const [ourU, ourV] = planckianUv(kelvin);
    // The observer of the test is itself an approximation.
    expect(Math.hypot(u - ourU, v - ourV)).toBeLessThan(0.002);
    expect(Math.abs(nearestLamp(lampWhite(kelvin)).kelvin / kelvin - 1)).toBeLessThan(0.03);
  }
});

// CIE 15: chromaticities of the daylight illuminants, and their temperatures.
it.each([
  ['D50', 5003, 0.3457, 0.3585],
  ['D55', 5503, 0.3324, 0.3474],
  ['D65', 6504, 0.3127, 0.329],
  ['D75', 7504, 0.299, 0.3149],
])('%s is daylight of %d K', (_name, kelvin, x, y) => {
  const white = daylightWhite(kelvin);
  expect(white[0] / (white[0] + white[1] + white[2])).toBeCloseTo(x, 3);
  const found = nearestLamp([x / y, 1, (1 - x - y) / y]);
  // Daylight lies a little beside the hot bodies; its temperature is that of the nearest.
  expect(found.off).toBeLessThan(0.006);
  expect(Math.abs(found.kelvin / kelvin - 1)).toBeLessThan(0.02);
});

it('a white card gives cast and exposure, a grey of no known value the cast alone', () => {
  const white = linearOfWhite(lampWhite(3200));
  const most = Math.max(...white);
  const card = white.map((channel) => (0.6 * channel) / most) as [number, number, number];
  const full = lightOf(card, 95);
  const cast = lightOf(card, null);
  if (!full.ok || !cast.ok) throw new Error('not read');
  const seen = byDaylight(full.value)(card);
  // L* 95 is a luminance of 0.8762 (CIE 15).
  for (const channel of seen) expect(channel).toBeCloseTo(0.8762, 4);
  const grey = byDaylight(cast.value)(card);
  expect(Math.max(...grey) - Math.min(...grey)).toBeLessThan(1e-9);
  expect(xyzOf(grey)[1]).toBeCloseTo(xyzOf(card)[1], 9);
  expect(castOf(full.value).kelvin).toBeGreaterThan(3100);
  expect(castOf(full.value).kelvin).toBeLessThan(3300);
});

it('daylight changes nothing', () => {
  byDaylight(DAYLIGHT)([0.2, 0.5, 0.7]).forEach((channel, at) => {
    expect(channel).toBeCloseTo([0.2, 0.5, 0.7][at]!, 12);
  });
  expect(castOf(DAYLIGHT)).toMatchObject({ colour: '#ffffff' });
});

it.each([
  ['overexposed', [0.99, 0.8, 0.7], 95, 'neutral-bright'],
  ['black', [0.001, 0.001, 0.001], null, 'neutral-dark'],
  ['of no value', [0.5, 0.5, 0.5], 140, 'neutral-value'],
] as const)('a patch that is %s is refused with a sentence', (_what, patch, value, code) => {
  const read = lightOf(patch, value);
  expect(read.ok).toBe(false);
  expect(!read.ok && read.problems[0]!.code).toBe(code);
});
