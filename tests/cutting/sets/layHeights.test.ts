// Strips laid into sets by their widths, against every way to share them out.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { layMost } from '../../../src/cutting/sets/layHeights';
import { wedgesOnLength } from '../../../src/cutting/wedges/yield';
import type { WedgePlan } from '../../../src/model/project';
import { usualWedge } from '../../geometry/strips';
import { runs } from '../../runs';

const seed = 71_200;

/** Most wedges by trying every set that could be taken out of what is left; heights beyond an inch to spare give no more. */
function mostByTrying(
  widths: readonly number[],
  counts: readonly number[],
  length: number,
  wedge: WedgePlan,
): number {
  const known = new Map<string, number>();
  const heightOf = (set: readonly number[]) =>
    set.reduce((sum, count, at) => sum + count * (widths[at]! - 2 * wedge.seam), 2 * wedge.seam);
  const setsWithin = (left: readonly number[]): number[][] =>
    left.reduce<number[][]>(
      (sets, most) => sets.flatMap((set) => Array.from({ length: most + 1 }, (_, count) => [...set, count])),
      [[]],
    );
  const most = (left: readonly number[]): number => {
    const found = known.get(left.join());
    if (found !== undefined) return found;
    let best = 0;
    for (const set of setsWithin(left)) {
      const height = heightOf(set);
      if (height < wedge.cutHeight - 1e-9) continue;
      const wedges = wedgesOnLength(length, Math.min(height, wedge.cutHeight + 1), wedge);
      if (wedges < 2) continue;
      best = Math.max(best, wedges + most(left.map((count, at) => count - set[at]!)));
    }
    known.set(left.join(), best);
    return best;
  };
  return most(counts);
}

it('gives as many wedges as any way to share up to three widths out, and takes no strip twice', () => {
  let several = 0;
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.constantFrom(1, 1.25, 1.5, 2, 2.5), { minLength: 2, maxLength: 3 }),
      fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 3, maxLength: 3 }),
      fc.constantFrom(10, 20, 21, 36, 40, 42),
      fc.constantFrom(3, 4.25, 5),
      (widths, each, length, cutHeight) => {
        const wedge = { ...usualWedge, cutHeight };
        const counts = widths.map((_, at) => each[at]!);
        const sets = layMost(widths.map((width, at) => ({ width, count: counts[at]! })), length, wedge); // biome-ignore format: short
        const wedges = sets.reduce((sum, set) => sum + set.kind.wedges, 0);
        expect(wedges).toBe(mostByTrying(widths, counts, length, wedge));
        counts.forEach((count, at) => {
          expect(sets.reduce((sum, set) => sum + set.counts[at]!, 0)).toBeLessThanOrEqual(count);
        });
        for (const set of sets) {
          const height = set.counts.reduce((sum, count, at) => sum + count * (widths[at]! - 0.5), 0.5);
          expect(wedgesOnLength(length, height, wedge)).toBeGreaterThanOrEqual(set.kind.wedges);
        }
        if (sets.length > 1) several += 1;
      },
    ),
    { seed, numRuns: runs(50, 150) },
  );
  expect(several).toBeGreaterThan(runs(15, 50));
});
