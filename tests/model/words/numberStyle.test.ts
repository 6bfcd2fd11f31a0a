// Figures as they are written where people live. The marks of each language are checked against Intl itself (Unicode CLDR), and those
// named here against the CLDR charts (from memory).
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { phrase, speak } from '../../../src/model/phrase';
import { ENGLISH_NUMBERS, inStyle, numberStyleOf } from '../../../src/model/words/numberStyle';

describe('the style of numbers', () => {
  it.each([
    ['en-US', '1,234.5', '12,345.5'],
    ['de-DE', '1.234,5', '12.345,5'],
    ['fr-FR', '1\u00a0234,5', '12\u00a0345,5'],
    ['pl-PL', '1234,5', '12\u00a0345,5'],
    ['sv-SE', '1\u00a0234,5', '12\u00a0345,5'],
    ['ar-EG', '1,234.5', '12,345.5'],
  ])('of %s writes %s and %s', (language, four, five) => {
    const style = numberStyleOf(language);
    expect(inStyle('1234.5', style)).toBe(four);
    expect(inStyle('12345.5', style)).toBe(five);
  });

  it('is what the language itself writes, of every amount', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('en', 'de', 'de-CH', 'es', 'pt', 'pl', 'nl', 'da', 'cs', 'ja', 'ru', 'he'),
        fc.integer({ min: 0, max: 99_999_999 }),
        (language, hundredths) => {
          const amount = hundredths / 100;
          const itself = amount
            .toLocaleString(language, { numberingSystem: 'latn' })
            .replace(/\s/gu, '\u00a0');
          expect(inStyle(String(amount), numberStyleOf(language))).toBe(itself);
        },
      ),
    );
  });

  it('is English for what is no language', () => {
    expect(numberStyleOf('no language at all')).toEqual(ENGLISH_NUMBERS);
  });

  it('leaves fractions, signs and letters alone', () => {
    expect(inStyle('2400 1/2"', numberStyleOf('de'))).toBe('2.400 1/2"');
    expect(inStyle('£1250.00, −3.5', numberStyleOf('de'))).toBe('£1.250,00, −3,5');
  });
});

describe('a sentence', () => {
  const sentence = phrase(
    '{name}: {count} pieces, {width} wide, {area}, seams {seam}, {cost} for {blocks}.',
    {
      name: 'Moss 1500.5',
      count: 1500,
      width: { inches: 5.7 },
      area: { squareInches: 1000.25 },
      seam: { seam: 0.298 },
      cost: { figure: '1200.50 EUR' },
      blocks: { list: [1000, 'B 2.5'] },
    },
  );

  it('says its figures in the style asked for, and leaves names as they are', () => {
    const german = speak(sentence, 'cm', undefined, undefined, numberStyleOf('de'));
    expect(german).toBe(
      'Moss 1500.5: 1.500 pieces, 14,5 cm wide, 6.453 cm², seams 7,6 mm, 1.200,50 EUR for 1.000 and B 2.5.',
    );
  });

  it('is in English unless asked', () => {
    expect(speak(sentence)).toBe(
      'Moss 1500.5: 1,500 pieces, 5 11/16" wide, 1,000.3 sq in, seams 0.298", 1,200.50 EUR for 1,000 and B 2.5.',
    );
  });

  it('says the figures of a sentence inside it the same way', () => {
    const outer = phrase('So: {inner}', { inner: phrase('{count}', { count: 1234.5 }) });
    expect(speak(outer, 'in', undefined, undefined, numberStyleOf('de'))).toBe('So: 1.234,5');
  });
});
