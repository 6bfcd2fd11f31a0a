import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gradation } from '../../src/colour/gradation';
import { value } from '../../src/colour/spaces';
import { anyHex, SEED } from './arbitraryColours';

describe('A gradation', () => {
  it('begins and ends with the two cloths it was asked for', () => {
    fc.assert(
      fc.property(anyHex, anyHex, fc.integer({ min: 2, max: 12 }), (from, to, count) => {
        const run = gradation(from, to, count);
        expect(run).toHaveLength(count);
        expect([run[0], run.at(-1)]).toEqual([from, to]);
      }),
      { seed: SEED },
    );
  });

  it('rises in even steps of value', () => {
    for (const [from, to] of [
      ['#102040', '#f0e8d0'],
      ['#5a0020', '#ffc0a0'],
      ['#000000', '#ffffff'],
    ] as const) {
      const values = gradation(from, to, 8).map(value);
      const step = (values[7]! - values[0]!) / 7;
      // An 8-bit step is up to 0.5 L*; chroma-js stops its search within 0.01.
      for (let index = 1; index < 8; index += 1)
        expect(Math.abs(values[index]! - values[index - 1]! - step)).toBeLessThan(1);
    }
  });

  it('refuses what is not a colour and a run of one', () => {
    expect(() => gradation('navy', '#ffffff', 3)).toThrow(/navy/);
    expect(() => gradation('#000000', '#ffffff', 1)).toThrow(/gradation/);
  });
});
