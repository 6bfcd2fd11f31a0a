// Fabrics that stand in: light to dark, told apart, and named by the colour they have.
import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { LOOKALIKE_THRESHOLD } from '../../src/cloth/likeness';
import { colourName, freshColours, standIns } from '../../src/cloth/standIns';
import { value } from '../../src/colour/spaces';
import { speak } from '../../src/model/phrase';
import { difference } from '../colour/difference';
import { runs } from '../runs';

it.each([1, 2, 5, 8, 12, 20, 40, 60])(
  '%i of them run from light to dark, under names of their own',
  (count) => {
    const made = standIns(count);
    const values = made.map(({ colour }) => value(colour));
    expect(values).toEqual(values.toSorted((one, other) => other - one));
    expect(new Set(made.map(({ name }) => speak(name))).size).toBe(count);
    if (count > 1) expect(values[0]! - values.at(-1)!).toBeGreaterThan(50);
  },
);

it.each([2, 5, 8, 12, 16, 20])('of %i no two read as one', (count) => {
  const made = standIns(count).map(({ colour }) => colour);
  made.forEach((one, at) => {
    for (const other of made.slice(at + 1))
      expect(difference(one, other)).toBeGreaterThan(LOOKALIKE_THRESHOLD);
  });
});

// Named colours of the web (CSS Color Module Level 4, section 6.1), named as a quilter would.
test.each([
  ['#ffffff', 'very light grey'],
  ['#000080', 'very dark blue'],
  ['#808080', 'medium grey'],
  ['#008000', 'dark green'],
  ['#ffb6c1', 'light pink'],
  ['#8b4513', 'dark brown'],
])('%s is %s', (hex, name) => {
  expect(speak(colourName(hex))).toBe(name);
});

it.each([12, 30, 20].slice(0, runs(2, 3)))(
  '%i new fabrics read as fabrics of their own, with any fabric that is there',
  (count) => {
    const hex = fc
      .integer({ min: 0, max: 0xffffff })
      .map((number) => `#${number.toString(16).padStart(6, '0')}`);
    fc.assert(
      fc.property(fc.array(hex, { maxLength: 2 }), (taken) => {
        const fresh = freshColours(taken, count);
        expect(fresh).toHaveLength(count);
        fresh.forEach((one, at) => {
          for (const other of [...taken, ...fresh.slice(0, at)])
            expect(difference(one, other)).toBeGreaterThan(LOOKALIKE_THRESHOLD);
        });
      }),
      { numRuns: 60 },
    );
  },
);

it('never gives a colour twice while it has others, however many fabrics there are', () => {
  const fresh = freshColours(['#efe9dc'], 60);
  expect(new Set(fresh).size).toBe(60);
});
