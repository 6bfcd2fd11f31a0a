// Making sets of all strips: no set more can be laid from what is left, and the rule that leaves each strip is the true one.
// Both are held against a search of the test's own that tries every choice of strips.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeSets } from '../../../src/cutting/sets/randomSets';
import type { LeavingRule } from '../../../src/cutting/sets/whyLeft';
import { availableWedges } from '../../../src/cutting/wedges/yield';
import { speak } from '../../../src/model/phrase';
import type { StripOnHand, StripSet, WedgePlan } from '../../../src/model/project';
import { flatHeight, usualWedge } from '../../geometry/strips';
import { runs } from '../../runs';
import { plainFabrics } from '../fabrics';
import { aSetOf, isTooShort, type SetRules } from './everyChoice';
import { anyStripBasket, makingOf, oddStrips } from './oddStrips';

const seed = 62_010;

function wedgesIn(sets: readonly StripSet[], wedge: WedgePlan): number {
  return sets.reduce((sum, set) => {
    const { up, down } = availableWedges(set, wedge);
    return sum + up + down;
  }, 0);
}

const ALL: SetRules = { neighboursDiffer: true, lengths: true };

describe('sets of all strips', () => {
  it('of eight fabrics with five odd strips each: five sets and 53 wedges by hand, no fewer here', () => {
    for (const anySeed of [1, 2, 3, 4]) {
      const { sets } = makeSets({ ...oddStrips(), seed: anySeed });
      expect(sets.length).toBeGreaterThanOrEqual(5);
      expect(wedgesIn(sets, usualWedge)).toBeGreaterThanOrEqual(53);
    }
  });

  it.each([7.75, 8])(
    'of the same strips for wedges %f in high: the fifth set is of both lengths',
    (cutHeight) => {
      const { sets } = makeSets(oddStrips({ ...usualWedge, cutHeight }));
      expect(sets).toHaveLength(5);
      expect(sets.map((set) => set.length).filter((length) => length === 42)).toHaveLength(2);
    },
  );

  it('leave no strips from which one set more can be laid', () => {
    let [some, left] = [0, 0];
    fc.assert(
      fc.property(anyStripBasket, (basket) => {
        const making = makingOf(basket);
        const made = makeSets(making);
        if (made.sets.length > 0) some += 1;
        if (made.left.length > 0) left += 1;
        expect(aSetOf(made.left, making.wedge, ALL)).toBeNull();
      }),
      { seed, numRuns: runs(18, 200) },
    );
    expect(some).toBeGreaterThan(runs(10, 100));
    expect(left).toBeGreaterThan(runs(10, 100));
  }, 600_000);

  it('are high enough, as long as their shortest strip, and no fabric lies beside itself', () => {
    fc.assert(
      fc.property(anyStripBasket, (basket) => {
        const making = makingOf(basket);
        const { sets, left } = makeSets(making);
        // Strips of one fabric and width are told apart by their lengths: what is not left is in the sets, longest in the longest.
        const key = (one: { fabric: string; width: number }) => `${one.fabric} ${one.width}`;
        const used = new Map<string, number[]>();
        for (const row of making.stripsOnHand) {
          const rest = left.filter((one) => one.id === row.id).reduce((sum, one) => sum + one.count, 0);
          const lengths = Array.from({ length: row.count - rest }, () => row.length);
          used.set(
            key(row),
            [...(used.get(key(row)) ?? []), ...lengths].sort((one, other) => other - one),
          );
        }
        for (const set of [...sets].sort((one, other) => other.length - one.length)) {
          expect(flatHeight(set.strips, making.wedge.seam)).toBeGreaterThan(making.wedge.cutHeight - 1e-9);
          set.strips.forEach((strip, at) => {
            expect(used.get(key(strip))?.shift()).toBeGreaterThan(set.length - 1e-9);
            if (at > 0) expect(strip.fabric).not.toBe(set.strips[at - 1]!.fabric);
          });
          const { up, down } = availableWedges(set, making.wedge);
          expect(up + down).toBeGreaterThan(1);
        }
        expect([...used.values()].flat()).toEqual([]);
      }),
      { seed: seed + 1, numRuns: runs(15, 100) },
    );
  }, 600_000);
});

describe('the rule that leaves a strip', () => {
  const found = new Map<LeavingRule, number>();

  it('is the true one: without it a set with that strip can be laid, or no single rule stands in the way', () => {
    fc.assert(
      fc.property(anyStripBasket, (basket) => {
        const making = makingOf(basket);
        const { wedge } = making;
        const { left, whyLeft } = makeSets(making);
        expect(countsOf(whyLeft.flatMap((one) => one.rows))).toEqual(countsOf(left));
        for (const { rule, rows, words } of whyLeft) {
          found.set(rule, (found.get(rule) ?? 0) + 1);
          expect(speak(words)).toMatch(/^Left: .+: .+\.$/);
          for (const row of rows) {
            expect(row.width <= 2 * wedge.seam).toBe(rule === 'narrow');
            if (rule === 'narrow') continue;
            expect(isTooShort(row.length, wedge)).toBe(rule === 'short');
            if (rule === 'short') continue;
            const beside = aSetOf(left, wedge, { ...ALL, neighboursDiffer: false }, row) !== null;
            const longer = aSetOf(left, wedge, { ...ALL, lengths: false }, row) !== null;
            const free = aSetOf(left, wedge, { neighboursDiffer: false, lengths: false }, row) !== null;
            const named = beside ? 'neighbours' : longer ? 'lengths' : free ? 'both' : 'few';
            expect(rule).toBe(named);
          }
        }
      }),
      { seed: seed + 2, numRuns: runs(15, 200) },
    );
    for (const rule of ['narrow', 'short', 'neighbours', 'few'] as const) {
      expect(found.get(rule), rule).toBeGreaterThan(runs(2, 20));
    }
  }, 600_000);

  it('is said in a sentence', () => {
    const [, other] = plainFabrics(2);
    const left = (rows: readonly (readonly [width: number, length: number, count: number])[], more = 0) => {
      const stripsOnHand = rows.map(([width, length, count], at) => ({
        id: `r${at}`, fabric: 'f1', width, length, count,
      })); // biome-ignore format: short
      if (more > 0) stripsOnHand.push({ id: 'more', fabric: other!.id, width: 1.5, length: 40, count: more });
      const { whyLeft } = makeSets({ ...oddStrips(), stripsOnHand });
      return whyLeft.map(({ words }) => speak(words));
    };
    expect(left([[1.25, 40, 3]])).toEqual([
      'Left: 3 strips of Fabric 1 1 1/4": too few strips are left for one more set: sewn together they are 2 3/4" high, and a set is 7 1/2".',
    ]);
    expect(left([[1.5, 40, 9]])).toEqual([
      'Left: 9 strips of Fabric 1 1 1/2": in one more set Fabric 1 would lie beside itself.',
    ]);
    expect(left([[0.5, 40, 1], [2, 8, 2]], 1)).toEqual([
      'Left: 1 strip of Fabric 2 1 1/2": one strip is too few for one more set: it is 1 1/2" wide, and a set is 7 1/2" high.',
      // Two wedges need b + p: on a set an inch above the wedge 6.5473 + (6.5473 − 8 1/2 · 0.41421) = 9.5738 (plane geometry).
      'Left: 2 strips of Fabric 1 2" × 8": shorter than 9 5/8", which a set needs for two wedges.',
      'Left: 1 strip of Fabric 1 1/2": cut 1/2" wide or less, a strip vanishes in its two seams.',
    ]); // biome-ignore format: a table
  });

  it('where the sets wanted are made is that they are enough', () => {
    const { whyLeft } = makeSets({ ...oddStrips(), want: { sets: 2 } });
    expect(whyLeft.map(({ rule }) => rule)).toEqual(['enough']);
  });
});

function countsOf(rows: readonly StripOnHand[]): Record<string, number> {
  return Object.fromEntries(rows.map((row) => [row.id, row.count]));
}
