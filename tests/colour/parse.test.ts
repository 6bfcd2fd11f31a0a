import chroma from 'chroma-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatHex, inGamut, isHex, parseHex, srgbOf } from '../../src/colour/parse';
import { anyHex, SEED } from './arbitraryColours';

describe('A colour as it is written', () => {
  it('reads six digits and three digits, in either case', () => {
    expect(parseHex('#FF8000')).toEqual([1, 128 / 255, 0]);
    // CSS Color 4, 'The RGB hexadecimal notations': a single digit stands for itself twice.
    expect(parseHex('#f80')).toEqual(parseHex('#ff8800'));
  });

  it('refuses what is not a hex colour with null, never a half-read colour', () => {
    const wrong = [
      '',
      '#',
      '#12',
      '#12345',
      '#1234567',
      '#ff8000ff',
      '#ggg',
      'ff8000',
      'red',
      ' #ff8000',
      '#ff8000\n',
      'rgb(1,2,3)',
    ];
    for (const text of wrong) {
      expect(parseHex(text), JSON.stringify(text)).toBeNull();
      expect(isHex(text), JSON.stringify(text)).toBe(false);
    }
  });

  it('throws with its own name when unchecked text reaches the core', () => {
    expect(() => srgbOf('sky')).toThrow(/srgbOf: "sky"/);
  });

  it('survives being read and written again, and reads as chroma-js reads it', () => {
    fc.assert(
      fc.property(anyHex, (hex) => {
        expect(formatHex(srgbOf(hex))).toBe(hex);
        expect(srgbOf(hex).map((channel) => channel * 255)).toEqual(chroma(hex).rgb());
      }),
      { seed: SEED },
    );
  });

  it('writes a colour outside the gamut as the nearest channel values, and says beforehand that it is outside', () => {
    expect(formatHex([1.2, -0.1, 0.5])).toBe('#ff0080');
    expect(inGamut([1.2, -0.1, 0.5])).toBe(false);
    expect(inGamut([1, 0, 0.5])).toBe(true);
  });

  it('refuses to write a channel that is not a number', () => {
    expect(() => formatHex([Number.NaN, 0, 0])).toThrow(/formatHex/);
  });
});
