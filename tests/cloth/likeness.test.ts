import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as cloth from '../../src/cloth/likeness';
import { value } from '../../src/colour/spaces';
import { anyHex, anyMix, SEED } from '../colour/arbitraryColours';
import { difference } from '../colour/difference';

const plain = (hex: string): cloth.ColourMix => [{ hex, share: 1 }];

describe('The mean of a print', () => {
  it('adds light as the eye does: half black and half white is the grey of half the light', () => {
    // The encoding of half the light is 0.7354 of full scale by IEC 61966-2-1, 188 of 255.
    const mean = cloth.meanColour([
      { hex: '#000000', share: 0.5 },
      { hex: '#ffffff', share: 0.5 },
    ]);
    expect(mean).toBe('#bcbcbc');
    expect(value(mean)).toBeGreaterThan(75);
  });

  it('of a plain cloth is its colour, and of any print lies between its darkest and lightest', () => {
    fc.assert(
      fc.property(anyHex, anyMix, (hex, mix) => {
        expect(cloth.meanColour(plain(hex))).toBe(hex);
        const values = mix.map((part) => value(part.hex));
        const mean = value(cloth.meanColour(mix));
        // Half an 8-bit step of rounding is at most 0.2 L*.
        expect(mean).toBeGreaterThan(Math.min(...values) - 0.2);
        expect(mean).toBeLessThan(Math.max(...values) + 0.2);
      }),
      { seed: SEED },
    );
  });
});

describe('A mix', () => {
  it('is refused where its shares do not make a whole', () => {
    expect(() => cloth.mixDistance([{ hex: '#aa0000', share: 0.8 }], plain('#aa0000'))).toThrow(/sum to 1/);
    expect(() =>
      cloth.meanLight([
        { hex: '#aa0000', share: 1.5 },
        { hex: '#aa0000', share: -0.5 },
      ]),
    ).toThrow(/share/);
  });
});

describe('The distance between two prints', () => {
  it('of two plain cloths is their CIEDE2000', () => {
    fc.assert(
      fc.property(anyHex, anyHex, (one, other) => {
        expect(cloth.mixDistance(plain(one), plain(other))).toBeCloseTo(difference(one, other), 9);
        expect(cloth.clothDistance(plain(one), plain(other))).toBeCloseTo(difference(one, other), 9);
      }),
      { seed: SEED },
    );
  });

  it('is the same both ways, zero on itself, and at most that of the most different pair of colours', () => {
    fc.assert(
      fc.property(anyMix, anyMix, (one, other) => {
        const distance = cloth.mixDistance(one, other);
        expect(distance).toBeCloseTo(cloth.mixDistance(other, one), 8);
        expect(cloth.mixDistance(one, one)).toBe(0);
        const pairs = one.flatMap((part) => other.map((against) => difference(part.hex, against.hex)));
        expect(distance).toBeLessThanOrEqual(Math.max(...pairs) + 1e-9);
        expect(distance).toBeGreaterThanOrEqual(Math.min(...pairs) - 1e-9);
      }),
      { seed: SEED },
    );
  });

  it('does not change when one colour of a print is listed as two halves, or in another order', () => {
    fc.assert(
      fc.property(anyMix, anyMix, (one, other) => {
        const halved = one
          .flatMap(({ hex, share }) => [
            { hex, share: share / 2 },
            { hex, share: share / 2 },
          ])
          .reverse();
        expect(cloth.mixDistance(halved, other)).toBeCloseTo(cloth.mixDistance(one, other), 8);
      }),
      { seed: SEED },
    );
  });

  it('counts the share that changes: a tenth of white figures turned black moves a tenth of the cloth by 100', () => {
    const ground = { hex: '#336699', share: 0.9 };
    const white = [ground, { hex: '#ffffff', share: 0.1 }];
    const black = [ground, { hex: '#000000', share: 0.1 }];
    // At most 10 (the white moved to black); passing it on through the ground may be cheaper, never below the difference in one step.
    const throughGround = 0.1 * (difference('#ffffff', '#336699') + difference('#336699', '#000000'));
    expect(cloth.mixDistance(white, black)).toBeCloseTo(Math.min(10, throughGround), 6);
  });
});

describe('Likeness', () => {
  it('falls smoothly from 1 at no difference to 0 at the threshold and stays there', () => {
    expect(cloth.likenessAt(0, 10)).toBe(1);
    expect(cloth.likenessAt(5, 10)).toBe(0.5);
    expect(cloth.likenessAt(10, 10)).toBe(0);
    expect(cloth.likenessAt(80, 10)).toBe(0);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: 1, max: 30, noNaN: true }),
        (distance, threshold) => {
          const here = cloth.likenessAt(distance, threshold);
          const further = cloth.likenessAt(distance + 0.01, threshold);
          expect(further).toBeLessThanOrEqual(here);
          // The steepest slope of the grade is 1.5 per threshold.
          expect(here - further).toBeLessThanOrEqual((1.5 * 0.01) / threshold + 1e-12);
        },
      ),
      { seed: SEED },
    );
  });

  it('refuses a threshold of nothing', () => {
    expect(() => cloth.likenessAt(1, 0)).toThrow(/threshold/);
    expect(() => cloth.likenessAt(1, Number.NaN)).toThrow(/threshold/);
  });

  it('is symmetric, between 0 and 1, and 1 for a cloth and itself', () => {
    fc.assert(
      fc.property(anyMix, anyMix, fc.integer({ min: 1, max: 60 }), (one, other, threshold) => {
        const both = cloth.likeness(one, other, threshold);
        expect(both).toBeCloseTo(cloth.likeness(other, one, threshold), 6);
        expect(both).toBeGreaterThanOrEqual(0);
        expect(both).toBeLessThanOrEqual(1);
        expect(cloth.likeness(one, one, threshold)).toBe(1);
      }),
      { seed: SEED },
    );
  });

  it('has as its default one step of the ten-step value scale about middle grey', () => {
    // CIEDE2000's lightness weight is 1 at L* 50, so greys at L* 45 and 55 differ by 10: the 8-bit greys nearest to them.
    expect(difference('#6b6b6b', '#848484')).toBeCloseTo(cloth.LOOKALIKE_THRESHOLD, 0);
  });

  it('takes two navies for nearly one, a navy and an orange for two', () => {
    expect(cloth.likeness(plain('#1a2a5a'), plain('#20305a'))).toBeGreaterThan(0.8);
    expect(cloth.likeness(plain('#1a2a5a'), plain('#e07b20'))).toBe(0);
  });

  it('does not take a red and white check for the pink it melts into, but does a soft rose one', () => {
    const check = (one: string, other: string): cloth.ColourMix => [
      { hex: one, share: 0.5 },
      { hex: other, share: 0.5 },
    ];
    const bold = check('#c00000', '#ffffff');
    const soft = check('#d08090', '#e8b0b8');
    expect(cloth.meanDistance(bold, plain(cloth.meanColour(bold)))).toBeLessThan(0.5);
    expect(cloth.likeness(bold, plain(cloth.meanColour(bold)))).toBe(0);
    expect(cloth.likeness(soft, plain(cloth.meanColour(soft)))).toBeGreaterThan(0.5);
  });
});
