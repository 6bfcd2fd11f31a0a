// One wedge more, tried out: a set that is made so much longer or higher gives it, one that stays a hundredth short does not.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lengthForFirst, oneMoreWedge, oneMoreWords } from '../../../src/cutting/wedges/oneMore';
import { wedgeCuts } from '../../../src/cutting/wedges/yield';
import { speak } from '../../../src/model/phrase';
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
  // n wedges need (n − 1)p + b: 10 × 3.4407 + 6.5473.
  expect(more.longer).toBeCloseTo(0.9543, 3);
});

test('the length said to be needed for the first wedge gives one, a hundredth less none', () => {
  const needed = lengthForFirst(plainSet(7.5, 0), wedge)!;
  expect(wedgeCuts(plainSet(7.5, needed), wedge)).toHaveLength(1);
  expect(wedgeCuts(plainSet(7.5, needed - 0.01), wedge)).toHaveLength(0);
  expect(lengthForFirst(plainSet(7.5, needed), wedge)).toBeNull();
});

test('a set that is too low for its wedge has no "one more": it wants mending first', () => {
  expect(oneMoreWedge(plainSet(7, 40), wedge)).toBeNull();
});

test('so much longer or higher gives exactly one wedge more, a hundredth less does not', () => {
  fc.assert(
    fc.property(fc.integer({ min: 120, max: 230 }), fc.integer({ min: 112, max: 1600 }), (height, length) => {
      const set = plainSet(height / 16, length / 16);
      const now = wedgeCuts(set, wedge).length;
      const more = oneMoreWedge(set, wedge)!;
      const given = (higher: number, longer: number) =>
        wedgeCuts(plainSet(set.strips[0]!.width + higher, set.length + longer), wedge).length;
      expect(given(0, more.longer)).toBe(now + 1);
      expect(given(0, more.longer - 0.01)).toBe(now);
      if (more.taller === null) expect(given(30, 0)).toBe(now);
      else {
        expect(given(more.taller, 0)).toBeGreaterThan(now);
        expect(given(more.taller - 0.01, 0)).toBe(now);
      }
    }),
    { seed: 12 },
  );
});

test('it is told on the ruler it is measured with: sixteenths with inches, millimetres with centimetres, and never short', () => {
  const cm = (amount: number) => amount / 2.54;
  const metric = {
    perBlock: 8,
    cutHeight: cm(20),
    seam: cm(0.75),
    assemblySeam: cm(0.75),
    outerSeam: cm(0.75),
  } as const;
  // t = 0.75/sin 22.5° − 0.75 = 1.2099, b = 2 × 21.2099 × tan 22.5° = 17.5708, p = b − 20.5 × tan 22.5° = 9.0794: eleven wedges need
  // 10p + b = 108.365, which is 3.365 more than 105.
  const words = oneMoreWords(plainSet(cm(20.5), cm(105)), metric)!;
  expect(speak(words, 'cm')).toContain('if the set were 3.4 cm longer');
  // The same way 2.5174" more than 40 for twelve wedges on a set 8" high.
  expect(speak(oneMoreWords(plainSet(8, 40), wedge)!, 'in')).toContain('if the set were 2 9/16" longer');
  fc.assert(
    fc.property(fc.integer({ min: 200, max: 230 }), fc.integer({ min: 300, max: 1500 }), (height, length) => {
      const set = plainSet(cm(height / 10), cm(length / 10));
      const now = wedgeCuts(set, metric).length;
      const said = speak(oneMoreWords(set, metric)!, 'cm');
      const [longer, taller] = [/([\d.]+) cm longer/, /([\d.]+) cm higher/].map((one) => one.exec(said)?.[1]);
      const given = (wide: number, long: number) =>
        wedgeCuts(plainSet(cm(height / 10 + wide), cm(length / 10 + long)), metric).length;
      expect(given(0, Number(longer))).toBe(now + 1);
      expect(given(0, Number(longer) - 0.1)).toBe(now);
      if (taller === undefined) return;
      expect(given(Number(taller), 0)).toBeGreaterThan(now);
      expect(given(Number(taller) - 0.1, 0)).toBe(now);
    }),
    { seed: 13 },
  );
});
