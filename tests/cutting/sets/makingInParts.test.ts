// Sets made in parts: however the parts are driven the sets are the same, no part is long, and the share told is true.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type MadeSets, makeSets, makingSets, type SetMaking } from '../../../src/cutting/sets/randomSets';
import type { WedgePlan } from '../../../src/model/project';
import { usualWedge } from '../../geometry/strips';
import { runs } from '../../runs';
import { plainFabrics, stripsOf } from '../fabrics';
import { anyStripBasket, makingOf } from './oddStrips';

const seed = 92_000;

const wants = fc.oneof(
  fc.constant<SetMaking['want']>('most'),
  fc.record({ sets: fc.integer({ min: 1, max: 4 }) }),
  fc.record({ blocks: fc.integer({ min: 1, max: 6 }) }),
);
const makings = fc.tuple(anyStripBasket, wants).map(([basket, want]) => ({ ...makingOf(basket), want }));

/** Many strips of many fabrics, more than the sets can take, so that every stage has much to do. */
function pile(want: SetMaking['want'], wedge: WedgePlan): SetMaking {
  const fabrics = plainFabrics(40);
  const stripsOnHand = stripsOf(fabrics, [[1, 3], [1.25, 3], [1.5, 3], [2, 2], [0.75, 2]]) // biome-ignore format: short
    .map((row, at) => ({ ...row, length: [42, 40, 36, 21][at % 4]! }));
  return { fabrics, lookalikes: 10, stripsOnHand, wedge, keep: [], want, seed: 7 };
}

const WANTS: SetMaking['want'][] = ['most', { sets: 6 }, { blocks: 10 }];

/** Every part of a making: the share told, and how often it looks at the wedge, which every trial and every look at a strip does. */
function partsOf(want: SetMaking['want']): { share: number | null; looks: number }[] {
  let looks = 0;
  const wedge = new Proxy(usualWedge, {
    get: (plan, key) => {
      looks += 1;
      return Reflect.get(plan, key);
    },
  });
  const parts: { share: number | null; looks: number }[] = [];
  for (const share of makingSets(pile(want, wedge))) {
    parts.push({ share, looks });
    looks = 0;
  }
  return parts;
}

const made = new Map(WANTS.map((want) => [want, partsOf(want)]));

describe('making sets in parts', () => {
  it('gives the same sets in one go and interrupted anywhere, by other makings and by stops', () => {
    let interruptions = 0;
    fc.assert(
      fc.property(
        fc.array(makings, { minLength: 2, maxLength: 3 }),
        fc.array(fc.tuple(fc.nat(2), fc.integer({ min: 1, max: 40 }), fc.boolean()), { minLength: 1 }),
        (asked, turns) => {
          const going = asked.map((making) => makingSets(making) as Generator<unknown, MadeSets, boolean>);
          const made = going.map((): MadeSets | null => null);
          const part = (at: number, stop: boolean) => {
            const step = going[at]!.next(stop);
            if (step.done) made[at] ??= step.value;
          };
          for (let turn = 0; made.includes(null); turn += 1) {
            const [who, parts, stop] = turns[turn % turns.length]!;
            // Whose turn it is moves on with each round, so that all come to their end.
            const at = (who + Math.floor(turn / turns.length)) % going.length;
            for (let one = 0; one < parts && made[at] === null; one += 1) part(at, stop);
            interruptions += 1;
          }
          expect(made).toEqual(asked.map(makeSets));
        },
      ),
      { seed, numRuns: runs(3, 40) },
    );
    expect(interruptions).toBeGreaterThan(runs(50, 400));
  });

  it.each(WANTS)(
    'tells the share of the trials, which never falls, and nothing where none are made: %j',
    (want) => {
      const shares = made.get(want)!.map(({ share }) => share);
      const known = shares.filter((share) => share !== null);
      expect(shares[0]).toBeNull();
      expect(shares.at(-1)).toBeNull();
      // The search in one piece, from nothing to all but its last part.
      const [first, last] = [shares.indexOf(0), shares.findLastIndex((share) => share !== null)];
      expect(shares.slice(first, last + 1)).toEqual(known);
      expect(known.length).toBeGreaterThan(20);
      const steps = known.slice(1).map((share, at) => share - known[at]!);
      // Every part makes as many trials; the last one of each start perhaps fewer.
      const most = Math.max(...steps);
      expect(Math.min(...steps)).toBeGreaterThan(0);
      expect(steps.filter((step) => step < most - 1e-9).length).toBeLessThanOrEqual(2);
      expect(known.at(-1)! + most).toBeGreaterThanOrEqual(1 - 1e-9);
      expect(known.at(-1)!).toBeLessThan(1);
    },
  );

  it.each(WANTS)('does little between two pauses: %j', (want) => {
    const looks = made.get(want)!.map((part) => part.looks);
    expect(looks.reduce((sum, one) => sum + one, 0)).toBeGreaterThan(100_000);
    expect(Math.max(...looks)).toBeLessThan(10_000);
  });
});
