// Fabrics that stand in: light to dark, told apart, and named by the colour they have.
import { expect, it, test } from 'vitest';
import { LOOKALIKE_THRESHOLD } from '../../src/cloth/likeness';
import { colourName, standIns } from '../../src/cloth/standIns';
import { value } from '../../src/colour/spaces';
import { speak } from '../../src/model/phrase';
import { difference } from '../colour/difference';

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
