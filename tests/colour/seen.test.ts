// The filters of the ways of seeing. Grey and the colour visions are held to published numbers in vision.test.ts.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { filterSteps, squintBlur, WAYS } from '../../src/colour/seen';
import { value } from '../../src/colour/spaces';
import { TONE_GREYS, TONES, toneOf } from '../../src/colour/tone';
import { anyHex, SEED } from './arbitraryColours';
import { seenAs } from './throughFilter';

const RUNS = { seed: SEED, numRuns: 300 };

describe('Squinting', () => {
  it('melts what a half-closed eye does not tell apart: ten times the stroke of a 20/20 letter', () => {
    // A letter of the line 20/20 is 5 minutes of arc high, at 20 feet 8.87 mm, its strokes a fifth of it (Snellen chart; from memory).
    const stroke = 8.87 / 5;
    expect((2 * squintBlur(20 * 12) * 25.4) / 10).toBeCloseTo(stroke, 2);
  });

  it('makes one of two points that are nearer than that, and leaves two where they are farther apart', () => {
    const isTwo = (apart: number, deviation: number) => {
      const light = (at: number) =>
        [-1, 1].reduce(
          (sum, side) => sum + Math.exp(-((at - (side * apart) / 2) ** 2) / (2 * deviation ** 2)),
          0,
        );
      return light(0) < light(deviation / 50);
    };
    const distances = fc.double({ min: 12, max: 1200, noNaN: true });
    fc.assert(
      fc.property(distances, fc.double({ min: 0.01, max: 3, noNaN: true }), (distance, part) => {
        fc.pre(Math.abs(part - 1) > 0.01);
        const least = distance * Math.tan((10 * Math.PI) / (180 * 60));
        expect(isTwo(least * part, squintBlur(distance))).toBe(part > 1);
      }),
      RUNS,
    );
  });

  it('goes with the distance, and refuses none', () => {
    expect(squintBlur(240)).toBeCloseTo(2 * squintBlur(120), 12);
    for (const distance of [0, -1, Number.NaN, Infinity])
      expect(() => squintBlur(distance)).toThrow(/distance/);
  });
});

describe('Three tones', () => {
  it('show every colour in the tone of its value, between any limits', () => {
    const limits = fc
      .tuple(fc.double({ min: 0, max: 100, noNaN: true }), fc.double({ min: 0, max: 100, noNaN: true }))
      .map(([one, other]) => ({ medium: Math.min(one, other), light: Math.max(one, other) }));
    fc.assert(
      fc.property(anyHex, limits, (hex, tones) => {
        // The grey picture has 256 levels, so that a value within half a level of a limit may fall on either side.
        const near = [tones.medium, tones.light].some((limit) => Math.abs(value(hex) - limit) < 0.3);
        const shown = seenAs('tones', hex, { tones });
        if (!near) expect(shown).toBe(TONE_GREYS[toneOf(value(hex), tones)]);
        else expect(Object.values(TONE_GREYS)).toContain(shown);
      }),
      RUNS,
    );
  });

  it('leave out what no fabric is', () => {
    const none = { medium: -Infinity, light: Infinity };
    for (const hex of ['#000000', '#808080', '#ffffff'])
      expect(seenAs('tones', hex, { tones: none })).toBe(TONE_GREYS.medium);
    expect(seenAs('tones', '#000000', { tones: null })).toBe(TONE_GREYS.medium);
  });

  it('are told from each other on a screen by more than 30 of value', () => {
    const values = TONES.map((tone) => value(TONE_GREYS[tone]));
    expect(values[1]! - values[0]!).toBeGreaterThan(30);
    expect(values[2]! - values[1]!).toBeGreaterThan(30);
  });
});

it('in colour nothing is filtered, and no way touches how far fabric is seen through', () => {
  const eyes = { distance: 120, severity: 0.6, tones: { medium: 30, light: 60 } };
  expect(filterSteps('colour', eyes)).toEqual([]);
  for (const way of WAYS)
    for (const step of filterSteps(way, eyes))
      if (step.kind === 'matrix') {
        expect(step.values).toHaveLength(20);
        expect(step.values.slice(15)).toEqual([0, 0, 0, 1, 0]);
      } else if (step.kind === 'levels') expect(step.table).toHaveLength(256);
});
