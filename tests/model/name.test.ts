import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LONGEST_NAME, nameWith } from '../../src/model/name';

test('a name with something behind it says both', () => {
  expect(nameWith('Winter', ', copy')).toBe('Winter, copy');
});

test('a name too long for what stands behind it gives way with dots, and the whole may always be kept', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'grapheme', maxLength: 130 }),
      fc.string({ maxLength: 40 }),
      (name, ending) => {
        const whole = nameWith(name, ending);
        expect(whole.length).toBeLessThanOrEqual(LONGEST_NAME);
        expect(whole.endsWith(ending)).toBe(true);
        expect(() => encodeURIComponent(whole)).not.toThrow();
        if (whole !== `${name}${ending}`) expect(whole).toContain('…');
      },
    ),
  );
});
