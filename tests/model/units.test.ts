import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLength, formatSeam, lengthFieldText, parseLength } from '../../src/model/units';

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
  ])('%s reads as %f inches', (text, inches) => {
    expect(parseLength(text, 'in')).toBeCloseTo(inches, 12);
  });

  it.each(['', ' ', 'wide', '-3', '1/0', '1 2 3', '1//2', '7"8', 'NaN', 'Infinity', '1e3'])(
    '“%s” is no length',
    (text) => {
      expect(parseLength(text, 'in')).toBeNull();
    },
  );

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
      fc.property(fc.integer({ min: 0, max: 64 * 200 }), (parts) => {
        const inches = parts / 64;
        expect(parseLength(lengthFieldText(inches, 'in'), 'in')).toBeCloseTo(inches, 9);
        expect(Math.abs(parseLength(lengthFieldText(inches, 'cm'), 'cm')! - inches)).toBeLessThanOrEqual(
          0.002,
        );
      }),
    );
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
