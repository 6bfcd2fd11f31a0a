import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as mixture from '../../src/cloth/mixture';
import { value } from '../../src/colour/spaces';
import { anyHex, SEED } from '../colour/arbitraryColours';

const anyAreas = fc.array(fc.record({ hex: anyHex, area: fc.integer({ min: 1, max: 9 }) }), {
  minLength: 1,
  maxLength: 12,
});

/** Every piece cut into squares of one: unweighted statistics of these must equal weighted ones of the pieces. */
const unitValues = (areas: readonly mixture.ColouredArea[]): number[] =>
  areas
    .flatMap(({ hex, area }) => Array.from({ length: area }, () => value(hex)))
    .sort((one, other) => one - other);

describe('Value over a surface', () => {
  it('weighs by area: a piece counts as that many unit squares', () => {
    fc.assert(
      fc.property(anyAreas, (areas) => {
        const values = unitValues(areas);
        const mean = values.reduce((sum, each) => sum + each, 0) / values.length;
        const variance = values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / values.length;
        const found = mixture.valueStatistics(areas)!;
        expect(found.area).toBe(values.length);
        expect(found.mean).toBeCloseTo(mean, 9);
        expect(found.deviation).toBeCloseTo(Math.sqrt(variance), 6);
        expect([found.darkest, found.lightest]).toEqual([values[0], values.at(-1)]);
      }),
      { seed: SEED },
    );
  });

  it('gives half black and half white the mean 50 and the widest spread there is, 50', () => {
    const found = mixture.valueStatistics([
      { hex: '#000000', area: 3 },
      { hex: '#ffffff', area: 3 },
    ])!;
    expect(found.mean).toBeCloseTo(50, 9);
    expect(found.deviation).toBeCloseTo(50, 9);
  });

  it('ranks the surface: each quantile is the value of that unit square from the dark end', () => {
    fc.assert(
      fc.property(anyAreas, fc.integer({ min: 0, max: 100 }), (areas, percent) => {
        const values = unitValues(areas);
        // Inverse of the cumulative distribution (type 1 of Hyndman and Fan, 'Sample quantiles in statistical packages', 1996).
        const rank = Math.max(1, Math.ceil((percent * values.length) / 100));
        expect(mixture.valueQuantile(areas, percent / 100)).toBe(values[rank - 1]);
      }),
      { seed: SEED },
    );
  });

  it('sorts the surface into steps that add up to all of it, and puts black first and white last', () => {
    fc.assert(
      fc.property(anyAreas, fc.integer({ min: 1, max: 20 }), (areas, steps) => {
        const shares = mixture.valueHistogram(areas, steps)!;
        expect(shares).toHaveLength(steps);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
      }),
      { seed: SEED },
    );
    // #777777 has L* 50.03 and #767676 L* 49.64 (CIE 15): the middle boundary lies between them.
    const greys = ['#000000', '#767676', '#777777', '#ffffff'].map((hex, index) => ({
      hex,
      area: index + 1,
    }));
    expect(mixture.valueHistogram(greys)).toEqual([0.1, 0, 0, 0, 0.2, 0.3, 0, 0, 0, 0.4]);
  });

  it('has no figures for no surface, and refuses areas that are none', () => {
    for (const none of [[], [{ hex: '#aa0000', area: 0 }]]) {
      expect(mixture.valueStatistics(none)).toBeNull();
      expect(mixture.valueHistogram(none)).toBeNull();
      expect(mixture.valueQuantile(none, 0.5)).toBeNull();
    }
    expect(() => mixture.valueStatistics([{ hex: '#aa0000', area: -1 }])).toThrow(/area/);
    expect(() => mixture.valueStatistics([{ hex: '#aa0000', area: Number.NaN }])).toThrow(/area/);
    expect(() => mixture.valueQuantile([{ hex: '#aa0000', area: 1 }], 1.2)).toThrow(/between 0 and 1/);
    expect(() => mixture.valueHistogram([{ hex: '#aa0000', area: 1 }], 0)).toThrow(/steps/);
  });
});

describe('The warmth of a colour', () => {
  it('calls orange and red warm, blue and turquoise cool, and leaves greys at nothing', () => {
    for (const warm of ['#ff0000', '#ff8000', '#c0562b', '#ffd700', '#8b4513'])
      expect(mixture.warmth(warm), warm).toBeGreaterThan(0.5);
    for (const cool of ['#0000ff', '#00a0ff', '#00ffff', '#4169e1', '#008080'])
      expect(mixture.warmth(cool), cool).toBeLessThan(-0.4);
    for (const neutral of ['#000000', '#808080', '#ffffff'])
      expect(mixture.warmth(neutral)).toBeCloseTo(0, 6);
  });

  it('measures warmth by the formula of Ou, Luo, Woodcock and Wright on CSS red', () => {
    // Lab under D65 of #ff0000 is 53.2371, 80.0901, 67.2033: C* 104.5518, h 40.0° (colorjs.io). 0.02 · 104.5518^1.07 · cos(−10.0°).
    expect(mixture.warmth('#ff0000')).toBeCloseTo(
      0.02 * 104.5518 ** 1.07 * Math.cos((10.0 * Math.PI) / 180),
      3,
    );
  });
});
