// One wedge more, tried out: a set that is made so much longer or higher gives it, one that stays a sixteenth short does not.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lengthForFirst, oneMoreWedge } from '../../../src/cutting/wedges/oneMore';
import { wedgeCuts } from '../../../src/cutting/wedges/yield';
import type { StripSet } from '../../../src/model/project';

const wedge = { perBlock: 8, cutHeight: 7.5, seam: 0.25, assemblySeam: 0.25, outerSeam: 0.25 } as const;

function plainSet(height: number, length: number): StripSet {
  return {
    id: 's1', label: 'A', strips: [{ fabric: 'f1', width: height }], length, pressing: 'last', firstTip: 'up',
    progress: 'planned', cut: null, locked: false,
  }; // biome-ignore format: a table
}

test('a set 7 1/2 high and 40 long needs more length for its eleventh wedge, or half an inch of height', () => {
  // Trade notes (plane geometry): 40 usable gives 10 wedges at H = 7 1/2 and 11 at H = 8.
  const more = oneMoreWedge(plainSet(7.5, 40), wedge)!;
  expect(wedgeCuts(plainSet(7.5, 40), wedge)).toHaveLength(10);
  expect(more.taller).not.toBeNull();
  expect(more.taller!).toBeLessThanOrEqual(0.5);
  expect(more.longer).toBeCloseTo(1, 9);
});

test('the length said to be needed for the first wedge gives one, a sixteenth less none', () => {
  const needed = lengthForFirst(plainSet(7.5, 0), wedge)!;
  expect(wedgeCuts(plainSet(7.5, needed), wedge)).toHaveLength(1);
  expect(wedgeCuts(plainSet(7.5, needed - 1 / 16), wedge)).toHaveLength(0);
  expect(lengthForFirst(plainSet(7.5, needed), wedge)).toBeNull();
});

test('a set that is too low for its wedge has no "one more": it wants mending first', () => {
  expect(oneMoreWedge(plainSet(7, 40), wedge)).toBeNull();
});

test('so much longer or higher gives exactly one wedge more, a sixteenth less does not', () => {
  fc.assert(
    fc.property(fc.integer({ min: 120, max: 230 }), fc.integer({ min: 112, max: 1600 }), (height, length) => {
      const set = plainSet(height / 16, length / 16);
      const now = wedgeCuts(set, wedge).length;
      const more = oneMoreWedge(set, wedge)!;
      const given = (higher: number, longer: number) =>
        wedgeCuts(plainSet(set.strips[0]!.width + higher, set.length + longer), wedge).length;
      expect(given(0, more.longer)).toBe(now + 1);
      expect(given(0, more.longer - 1 / 16)).toBe(now);
      if (more.taller === null) expect(given(30, 0)).toBe(now);
      else {
        expect(given(more.taller, 0)).toBeGreaterThan(now);
        expect(given(more.taller - 1 / 16, 0)).toBe(now);
      }
    }),
    { seed: 12 },
  );
});
