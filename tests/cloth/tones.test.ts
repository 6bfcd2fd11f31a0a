// Light, medium and dark of one quilt, against a top cut into squares that are sorted by hand.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toneLimits } from '../../src/cloth/tones';
import { value } from '../../src/colour/spaces';
import { type Tone, toneOf } from '../../src/colour/tone';
import { anyHex, SEED } from '../colour/arbitraryColours';

const RUNS = { seed: SEED, numRuns: 400 };

const anyTop = fc.uniqueArray(fc.record({ hex: anyHex, area: fc.integer({ min: 1, max: 30 }) }), {
  minLength: 1,
  maxLength: 14,
  selector: ({ hex }) => value(hex),
});

/** Every colour cut into squares, all laid in a row from dark to light: a colour has the tone of the third its middle lies in. */
function byHand(top: readonly { hex: string; area: number }[]): Tone[] {
  const row = top
    .toSorted((one, other) => value(one.hex) - value(other.hex))
    .flatMap(({ hex, area }) => Array.from({ length: area }, () => hex));
  return top.map(({ hex }) => {
    const middle = row.indexOf(hex) * 2 + (row.lastIndexOf(hex) - row.indexOf(hex) + 1);
    return middle * 3 < row.length * 2 ? 'dark' : middle * 3 < row.length * 4 ? 'medium' : 'light';
  });
}

const tones = (top: readonly { hex: string; area: number }[]) => {
  const limits = toneLimits(top)!;
  return top.map(({ hex }) => toneOf(value(hex), limits));
};

describe('Light, medium and dark', () => {
  it('are the thirds of this quilt by area', () => {
    fc.assert(
      fc.property(anyTop, (top) => {
        expect(tones(top)).toEqual(byHand(top));
      }),
      RUNS,
    );
  });

  it('do not depend on the unit of areas, the order of pieces, or how a fabric is cut up', () => {
    fc.assert(
      fc.property(anyTop, fc.double({ min: 0.01, max: 500, noNaN: true }), (top, scale) => {
        const scaled = top.map(({ hex, area }) => ({ hex, area: area * scale }));
        const cut = top
          .toReversed()
          .flatMap(({ hex, area }) => Array.from({ length: area }, () => ({ hex, area: 1 })));
        expect(toneLimits(scaled)).toEqual(toneLimits(top));
        expect(toneLimits(cut)).toEqual(toneLimits(top));
      }),
      RUNS,
    );
  });

  it('rise with value, and where all is one fabric it is medium', () => {
    fc.assert(
      fc.property(anyTop, (top) => {
        const limits = toneLimits(top)!;
        expect(limits.medium).toBeLessThanOrEqual(limits.light);
      }),
      RUNS,
    );
    expect(tones([{ hex: '#101010', area: 3 }])).toEqual(['medium']);
    expect(
      tones([
        { hex: '#101010', area: 8 },
        { hex: '#202020', area: 1 },
      ]),
    ).toEqual(['medium', 'light']);
    expect(tones(['#dddddd', '#111111', '#777777'].map((hex) => ({ hex, area: 1 })))).toEqual([
      'light',
      'dark',
      'medium',
    ]);
  });

  it('are not there without a surface', () => {
    expect(toneLimits([])).toBeNull();
    expect(toneLimits([{ hex: '#123456', area: 0 }])).toBeNull();
  });
});
