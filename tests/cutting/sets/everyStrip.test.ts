// Making sets of all strips: no set more can be laid from what is left, and the rule that leaves each strip is the true one.
// Both are held against a search of the test's own that tries every choice of strips.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeSets } from '../../../src/cutting/sets/randomSets';
import { availableWedges } from '../../../src/cutting/wedges/yield';
import type { StripSet, WedgePlan } from '../../../src/model/project';
import { flatHeight, usualWedge } from '../../geometry/strips';
import { aSetOf, type SetRules } from './everyChoice';
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
      { seed, numRuns: 300 },
    );
    expect(some).toBeGreaterThan(100);
    expect(left).toBeGreaterThan(100);
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
      { seed: seed + 1, numRuns: 150 },
    );
  }, 600_000);
});
