// Setting words: lines keep to their width and lose nothing, fractions are set as makers read them.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { line, linesOf, shrunkTo, type Type, textWidth } from '../../../src/drawing/pattern/lettering';
import { STYLES } from '../../../src/drawing/pattern/look';
import { openFont } from '../../../src/drawing/pattern/pdf/openFont';

/** Every letter half as wide as it is high. */
const even: Type = { width: (text, _face, size) => Array.from(text).length * size * 0.5 };
const words = fc.string({ unit: fc.constantFrom(...Array.from('ab 1/4é×\u00a0\n"')), maxLength: 200 });

describe('setting words', () => {
  it('breaks lines no wider than asked', () => {
    fc.assert(
      fc.property(words, fc.double({ min: 0.4, max: 4, noNaN: true }), (text, width) => {
        for (const one of linesOf(text, STYLES.body, width, even)) {
          expect(textWidth(one, STYLES.body, even)).toBeLessThanOrEqual(width + 1e-9);
        }
      }),
      { seed: 5 },
    );
  });

  it('loses no letter when it breaks lines', () => {
    const letters = (text: string) => text.replace(/\s/gu, '');
    fc.assert(
      fc.property(words, fc.double({ min: 0.4, max: 4, noNaN: true }), (text, width) => {
        expect(letters(linesOf(text, STYLES.body, width, even).join(''))).toBe(letters(text));
      }),
      { seed: 6 },
    );
  });

  it('keeps a whole number and its fraction on one line', () => {
    const size = STYLES.body.size;
    expect(linesOf('a strip 14 1/4" wide', STYLES.body, 11 * size * 0.5, even)).toContain(
      '14\u00a01/4" wide',
    );
  });

  it('makes letters smaller only where the text takes more lines than it may, and no smaller than half', () => {
    fc.assert(
      fc.property(words, fc.double({ min: 0.4, max: 4, noNaN: true }), (text, width) => {
        const style = shrunkTo(2, text, STYLES.body, width, even);
        const lines = (size: typeof style) => linesOf(text, size, width, even).length;
        if (lines(STYLES.body) <= 2) expect(style).toEqual(STYLES.body);
        else expect(lines(style) <= 2 || style.size <= STYLES.body.size / 2).toBe(true);
        expect(style.size).toBeGreaterThan(STYLES.body.size * 0.47);
      }),
      { seed: 7 },
    );
  });

  it('raises the upper figure of a fraction and sets both small', () => {
    const runs = line('6 9/16"', STYLES.body, 0, 1, even).flatMap((mark) =>
      mark.kind === 'text' ? [mark] : [],
    );
    expect(runs.map((run) => run.text)).toEqual(['6', ' ', '9', '\u2044', '16', '"']);
    const [whole, , over, , under] = runs;
    expect(over!.at.y).toBeLessThan(whole!.at.y);
    expect(under!.at.y).toBe(whole!.at.y);
    expect(over!.size).toBeLessThan(whole!.size);
    expect(under!.size).toBe(over!.size);
  });

  it('leaves what is no fraction as it is', () => {
    for (const text of ['and/or', '1/2/3', '3.1/4', '2024/25/26']) {
      const runs = line(text, STYLES.body, 0, 1, even);
      expect(runs.map((mark) => (mark.kind === 'text' ? mark.text : '')).join('')).toBe(text);
    }
  });

  it('refuses a typeface file that is none or is cut off', async () => {
    await expect(openFont(new Uint8Array(10))).rejects.toThrow('not a WOFF file');
    const wrong = new Uint8Array(64);
    wrong.set([0x77, 0x4f, 0x46, 0x32]);
    await expect(openFont(wrong)).rejects.toThrow('not a WOFF file');
  });
});
