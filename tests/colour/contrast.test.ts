import chroma from 'chroma-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyHex, SEED } from './arbitraryColours';
import { contrastRatio, relativeLuminance } from './contrast';

/** Ratios as published. ACT prints them cut off after its last digit, so a ratio may lie up to one such digit above. */
const ACT = "ACT rule afw4f7 'Text has minimum contrast' (W3C ACT Rules)";
const PUBLISHED: readonly { text: string; ground: string; ratio: number; digit: number; source: string }[] = [
  { text: '#000000', ground: '#ffffff', ratio: 21, digit: 1e-9, source: 'WCAG 2.2, contrast ratio: 1 to 21' },
  { text: '#ffffff', ground: '#ffffff', ratio: 1, digit: 1e-9, source: 'WCAG 2.2, contrast ratio: 1 to 21' },
  { text: '#333333', ground: '#ffffff', ratio: 12.6, digit: 0.1, source: ACT },
  { text: '#000000', ground: '#666666', ratio: 3.6, digit: 0.1, source: ACT },
  { text: '#0000ee', ground: '#ffffff', ratio: 9.39, digit: 0.01, source: ACT },
  { text: '#aaaaaa', ground: '#ffffff', ratio: 2.3, digit: 0.1, source: ACT },
  { text: '#777777', ground: '#eeeeee', ratio: 3.85, digit: 0.01, source: ACT },
  {
    text: '#767676',
    ground: '#ffffff',
    ratio: 4.54,
    digit: 0.01,
    source: 'widely published: the lightest grey that passes AA on white',
  },
];

describe('Contrast by WCAG 2.2', () => {
  it.each(PUBLISHED)('of $text on $ground is $ratio ($source)', ({ text, ground, ratio, digit }) => {
    const found = contrastRatio(text, ground);
    expect(found).toBeGreaterThanOrEqual(ratio - 1e-9);
    expect(found).toBeLessThan(ratio + digit);
  });

  it('passes #767676 on white for text and fails the next lighter grey', () => {
    expect(contrastRatio('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5);
    expect(contrastRatio('#777777', '#ffffff')).toBeLessThan(4.5);
  });

  it('agrees with chroma-js and does not mind which is the text', () => {
    fc.assert(
      fc.property(anyHex, anyHex, (one, other) => {
        expect(contrastRatio(one, other)).toBeCloseTo(chroma.contrast(one, other), 9);
        expect(contrastRatio(one, other)).toBe(contrastRatio(other, one));
        expect(relativeLuminance(one)).toBeCloseTo(chroma(one).luminance(), 9);
      }),
      { seed: SEED },
    );
  });
});
