import { describe, expect, it } from 'vitest';
import { value } from '../../src/colour/spaces';
import { greyOf } from '../../src/colour/tone';
import { GREY_VALUES } from './conversionTables';

describe('A grey of a value', () => {
  it('is the grey of that value in the table of all 256', () => {
    for (const [level, lightness] of GREY_VALUES.entries())
      expect(greyOf(lightness)).toBe(`#${level.toString(16).padStart(2, '0').repeat(3)}`);
  });

  it('rises in even steps of value, from black to white', () => {
    const scale = Array.from({ length: 10 }, (_, step) => greyOf((100 * step) / 9));
    expect([scale[0], scale.at(-1)]).toEqual(['#000000', '#ffffff']);
    // An 8-bit step is up to 0.5 L*.
    for (const [step, grey] of scale.entries())
      expect(Math.abs(value(grey) - (100 * step) / 9)).toBeLessThan(0.5);
  });
});
