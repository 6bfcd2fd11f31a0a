import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { speak } from '../../src/model/phrase';
import {
  formatLength,
  formatLimit,
  formatSeam,
  type LengthUnit,
  lengthFieldText,
  parseLength,
} from '../../src/model/units';
import { numberStyleOf } from '../../src/model/words/numberStyle';
import { runs } from '../runs';

describe('lengths as makers write them', () => {
  it.each([
    ['14 1/4', 14.25],
    ['14-1/4', 14.25],
    ['14¼', 14.25],
    ['3-5/8', 3.625],
    ['3⅝', 3.625],
    ['½', 0.5],
    ['1/2"', 0.5],
    ['7.5 in', 7.5],
    ['7,5', 7.5],
    ['.5', 0.5],
    [' 12 ', 12],
    ['19.05 cm', 7.5],
    ['7 1⁄2', 7.5],
    ['7 1\u20442"', 7.5],
    ['7\u00a0½', 7.5],
    ['3⅕', 3.2],
    ['20,', 20],
    ['20.', 20],
    ['7,5 in.', 7.5],
    ['1,371.6', 1371.6],
    ['1.371,6', 1371.6],
    ['200 mm', 20 / 2.54],
    ['190,5mm', 7.5],
  ])('%s reads as %f inches', (text, inches) => {
    expect(parseLength(text, 'in')).toBeCloseTo(inches, 12);
  });

  it.each([
    '',
    ' ',
    'wide',
    '-3',
    '1/0',
    '1 2 3',
    '1//2',
    '7"8',
    'NaN',
    'Infinity',
    '1e3',
    ',',
    '.',
    '1,2,3',
    '1.2.3',
    '12,34.5',
    '5 m',
    'mm',
    '1/2/3',
  ])('“%s” is no length', (text) => {
    expect(parseLength(text, 'in')).toBeNull();
  });

  it('a millimetre is a tenth of a centimetre, whatever the unit of the field', () => {
    expect(parseLength('200 mm', 'cm')).toBeCloseTo(20 / 2.54, 12);
    expect(parseLength('20,', 'cm')).toBeCloseTo(20 / 2.54, 12);
    expect(parseLength('7 1⁄2', 'cm')).toBeCloseTo(7.5 / 2.54, 12);
  });

  it('a bare number is in the unit of the field: 2.54 is an inch in centimetres', () => {
    expect(parseLength('2.54', 'cm')).toBeCloseTo(1, 12);
  });

  it.each([
    [14.25, '14 1/4"'],
    [0.5, '1/2"'],
    [7, '7"'],
    [4.1005, '4 1/8"'],
    [0, '0"'],
    [5.99, '6"'],
  ])('%f inches show as %s', (inches, text) => {
    expect(formatLength(inches, 'in')).toBe(text);
  });

  it('centimetres show as decimals (1 in = 2.54 cm exactly, international yard and pound agreement 1959)', () => {
    expect(formatLength(14.25, 'cm')).toBe('36.2 cm');
    expect(formatLength(Number.NaN, 'cm')).toBe('–');
  });

  it('what a field shows reads back as the same length, in both units', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 64 * 2000 }),
        fc.constantFrom('en', 'de', 'fr'),
        (parts, language) => {
          const inches = parts / 64;
          const read = (unit: LengthUnit) =>
            parseLength(lengthFieldText(inches, unit, numberStyleOf(language)), unit)!;
          expect(read('in')).toBeCloseTo(inches, 9);
          expect(Math.abs(read('cm') - inches)).toBeLessThanOrEqual(0.002);
        },
      ),
    );
  });
});

describe('limits', () => {
  const unit = fc.constantFrom<LengthUnit>('in', 'cm');

  it('whoever keeps to the limit as it is written keeps the limit, within a sixteenth or a millimetre of it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 64 * 500 }), unit, (parts, by) => {
        const limit = parts / 64 + 0.003;
        const [least, most] = (['least', 'most'] as const).map(
          (kind) => parseLength(formatLimit(limit, by, kind), by)!,
        );
        expect(least).toBeGreaterThanOrEqual(limit - 1e-6);
        expect(most).toBeLessThanOrEqual(limit + 1e-6);
        expect(least! - most!).toBeLessThanOrEqual(1 / 16 + 1e-6);
      }),
    );
  });

  it('is written as it is where it lies on a sixteenth or a millimetre', () => {
    expect(formatLimit(0.25, 'in', 'least')).toBe('1/4"');
    expect(formatLimit(0.5 + 1 / 64, 'in', 'least')).toBe('9/16"');
    // A quarter inch is 6.35 mm.
    expect(formatLimit(0.25, 'cm', 'least')).toBe('0.7 cm');
    expect(formatLimit(0.25, 'cm', 'most')).toBe('0.6 cm');
    expect(formatLimit(105 / 2.54, 'cm', 'least')).toBe('105.0 cm');
  });
});

describe('seams', () => {
  it.each([
    [0.25, 'in', '1/4"'],
    [0.3125, 'in', '5/16"'],
    [0.2978, 'in', '0.298"'],
    [0.234375, 'in', '0.234"'],
    [0.25, 'cm', '6.4 mm'],
    [0.2978, 'cm', '7.6 mm'],
    [0.7 / 2.54, 'cm', '7 mm'],
    [Number.NaN, 'in', '–'],
  ] as const)('%f inches in %s are said as %s', (seam, unit, text) => {
    expect(formatSeam(seam, unit)).toBe(text);
  });
});

describe('decimals', () => {
  /** Halves up, by fractions: no binary number is rounded. */
  const halfUp = (exact: Fraction, places: number) =>
    exact
      .mul(10 ** places)
      .add(1, 2)
      .floor()
      .div(10 ** places);
  /** A length a maker can mean, exactly: so many parts of an inch, or a decimal. */
  const lengths = fc
    .tuple(fc.integer({ min: 0, max: 400_000 }), fc.constantFrom(1, 2, 3, 4, 8, 16, 32, 64, 10, 20, 1000))
    .map(([count, parts]) => new Fraction(count, parts))
    .filter((exact) => exact.compare(4000) <= 0);
  const inch = new Fraction(254, 100);

  it('of centimetres and millimetres are those of the exact length, halves up', () => {
    fc.assert(
      fc.property(lengths, (exact) => {
        const inches = exact.valueOf();
        const centimetres = exact.mul(inch);
        expect(formatLength(inches, 'cm')).toBe(`${halfUp(centimetres, 1).valueOf().toFixed(1)} cm`);
        expect(formatSeam(inches, 'cm')).toBe(`${halfUp(centimetres.mul(10), 1).valueOf()} mm`);
        expect(lengthFieldText(inches, 'cm')).toBe(String(halfUp(centimetres, 2).valueOf()));
        expect(speak({ say: '{a}', with: { a: { squareInches: inches } } }, 'cm')).toBe(
          `${halfUp(centimetres.mul(inch), 0).valueOf().toLocaleString('en')} cm²`,
        );
      }),
      { seed: 71, numRuns: runs(670, 2000) },
    );
  });

  it('typed in centimetres come back halves up', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 200_000 }), (hundredths) => {
        const exact = new Fraction(hundredths, 100);
        const inches = parseLength(exact.toString(), 'cm')!;
        expect(formatLength(inches, 'cm')).toBe(`${halfUp(exact, 1).valueOf().toFixed(1)} cm`);
        expect(lengthFieldText(inches, 'cm')).toBe(String(exact.valueOf()));
      }),
      { seed: 72, numRuns: 2000 },
    );
  });

  it('of a seam in inches too', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20_000 }), (parts) => {
        const exact = new Fraction(parts, 10_000);
        if (exact.mul(16).d === 1n) return;
        expect(formatSeam(exact.valueOf(), 'in')).toBe(`${halfUp(exact, 3).valueOf().toFixed(3)}"`);
      }),
      { seed: 73, numRuns: 2000 },
    );
  });

  it.each([
    [2.5, '6.4 cm'],
    [1.5, '3.8 cm'],
    [0.25, '0.6 cm'],
    [7.5, '19.1 cm'],
    [-0.001, '0.0 cm'],
  ])('of %f inches show as %s', (inches, text) => {
    expect(formatLength(inches, 'cm')).toBe(text);
  });
});
