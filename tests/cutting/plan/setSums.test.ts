// All sums of set patterns, against the plain way that lays every pattern on every sum; and how many steps the largest take.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { usualWidths, withoutSpare } from '../../../src/cutting/plan/planStrips';
import { MOST_STEPS, sumsOf } from '../../../src/cutting/plan/setSums';
import { setPatterns, totalsCost } from '../../../src/cutting/plan/setTotals';
import { USUAL } from '../../../src/model/lengths';
import { runs } from '../../runs';

const seed = 54_000;
const noCost = () => 0;

/** The sums of so many patterns in the order they are reached, each with the patterns that reached it first. */
function plainly(patterns: readonly (readonly number[])[], sets: number): [strips: string, by: number[]][] {
  let sums = new Map<string, { strips: readonly number[]; by: number[] }>([
    ['', { strips: patterns[0]!.map(() => 0), by: [] }],
  ]);
  for (let set = 0; set < sets; set += 1) {
    const next: typeof sums = new Map();
    for (const { strips, by } of sums.values()) {
      patterns.forEach((pattern, at) => {
        const sum = strips.map((count, width) => count + pattern[width]!);
        if (!next.has(sum.join())) next.set(sum.join(), { strips: sum, by: [at, ...by] });
      });
    }
    sums = next;
  }
  return [...sums].map(([strips, { by }]) => [strips, by]);
}

describe('sums of set patterns', () => {
  it('are the same, in the same order and by the same sets, as when every pattern is laid on every sum', () => {
    const random = fc.record({
      widths: fc.uniqueArray(fc.constantFrom(0.75, 1, 1.25, 1.5, 2, 2.5, 0.984, 1.575), {
        minLength: 1,
        maxLength: 4,
      }),
      height: fc.constantFrom(4.5, 6, 8, 8.25),
      seam: fc.constantFrom(0.1875, 0.25, 0.295),
      sets: fc.integer({ min: 1, max: 5 }),
    });
    fc.assert(
      fc.property(random, ({ widths, height, seam, sets }) => {
        const { patterns } = setPatterns(widths, height, seam);
        const some = patterns.slice(0, 40);
        const sums = sumsOf(some, 10, noCost);
        const { strips, exact } = sums.layer(sets);
        expect(exact).toBe(true);
        const plain = plainly(some, sets);
        const found = plain.map((_, sum) => [
          strips.slice(sum * widths.length, (sum + 1) * widths.length).join(),
          sums.patternsOf(sets, sum),
        ]);
        expect(strips.length).toBe(plain.length * widths.length);
        expect(found).toEqual(plain);
      }),
      { seed, numRuns: runs(20, 200) },
    );
  });

  it('take a bounded number of steps for wedges and seams of every size, whatever the widths', () => {
    const own = [[0.5, 0.6, 0.7], [0.5, 0.75, 12], [0.5, 0.5, 0.5], [1, 1.25, 1.5, 2, 2.5]]; // biome-ignore format: short
    const usual = (['in', 'cm'] as const).map((unit) => usualWidths(unit).map((one) => one.width));
    for (const widths of [...usual, ...own])
      for (const height of [25, 40.5])
        for (const seam of [1 / 16, USUAL.cm.seam]) {
          const { patterns } = setPatterns(widths, height, seam);
          if (patterns.length === 0) continue;
          const even = widths.map((width) => ({ width, part: 1 }));
          const sums = sumsOf(patterns, 10, (counts) => totalsCost(counts, even));
          sums.layer(10);
          expect(sums.steps(), `${widths.join(', ')}, ${height} high, seam ${seam}`).toBeLessThan(
            4 * MOST_STEPS,
          );
        }
  });

  it('hold only sums of so many patterns, also where the most promising alone go on', () => {
    const widths = usualWidths('cm').map((one) => one.width);
    const { patterns } = setPatterns(widths, 25.5, USUAL.cm.seam);
    const sums = sumsOf(patterns, 10, (counts) => totalsCost(counts, usualWidths('cm')));
    const { strips, exact } = sums.layer(10);
    expect(exact).toBe(false);
    for (const sum of [0, 1, 1000, strips.length / 3 - 1]) {
      const chosen = sums.patternsOf(10, sum).map((at) => patterns[at]!);
      expect(chosen.length).toBe(10);
      const together = widths.map((_, at) => chosen.reduce((all, pattern) => all + pattern[at]!, 0));
      expect(Array.from(strips.subarray(sum * 3, sum * 3 + 3))).toEqual(together);
    }
  });
});

describe('sets that can be left out', () => {
  it('are found by trying one of those alike', () => {
    const sets = Array.from({ length: 1600 }, (_, at) => ({ wedges: at % 7 === 0 ? 3 : 2 }));
    const all = sets.reduce((sum, one) => sum + one.wedges, 0);
    let asked = 0;
    const kept = withoutSpare(sets, (set) => set.wedges, (rest) => {
      asked += 1;
      return rest.reduce((sum, one) => sum + one.wedges, 0) >= all - 5;
    }); // biome-ignore format: short
    expect(kept.reduce((sum, one) => sum + one.wedges, 0)).toBe(all - 5);
    expect(asked).toBeLessThan(10);
  });
});
