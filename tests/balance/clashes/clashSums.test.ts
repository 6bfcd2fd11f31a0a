// Holds the sums of the score to the list of clashes: the sums count every contact, the list leaves out those hardly alike.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { analyse } from '../../../src/balance/analyse';
import { isClash } from '../../../src/balance/clashes/clashRule';
import { clashSums } from '../../../src/balance/clashes/clashSums';
import { visitContacts } from '../../../src/balance/clashes/contacts';
import { awkwardTop, ruledTop } from '../../arrange/awkwardTop';
import { runs } from '../../runs';

it('the sums of clash are what the list of what hangs weighs, and what is less alike than the list tells of', () => {
  const seen = { same: 0, told: 0, untold: 0 };
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 1e6 }),
      fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
      fc.constantFrom(awkwardTop, ruledTop),
      fc.integer({ min: 0, max: 40 }),
      fc.array(fc.boolean(), { minLength: 10, maxLength: 10 }),
      (seed, perBlock, topOf, lookalikes, background) => {
        const plain = topOf(seed, perBlock);
        const fabrics = plain.fabrics.map((one, at) => ({
          ...one,
          background: background[at] === true && at % 3 === 0,
        }));
        const { clashes, model } = analyse({ ...plain, fabrics }, { lookalikes });
        const hung = clashes.filter((clash) => clash.cells.length > 0);
        const weigh = (same: boolean) =>
          hung
            .filter((clash) => (clash.fabrics[0] === clash.fabrics[1]) === same)
            .reduce((sum, clash) => sum + clash.weight, 0);
        let untold = 0;
        visitContacts(model, (contact) => {
          const parts = contact.kind === 'seam' ? contact.clash.stretches : [contact];
          for (const part of parts) {
            if (isClash(part.likeness)) continue;
            const inches = 'length' in part ? part.length : part.inches * part.factor;
            untold += inches * part.likeness;
          }
        });
        const sums = clashSums(model);
        expect(sums.same).toBeCloseTo(weigh(true), 7);
        expect(sums.alike).toBeCloseTo(weigh(false) + untold, 7);
        seen.same += Number(sums.same > 0);
        seen.told += Number(weigh(false) > 0);
        seen.untold += Number(untold > 0);
      },
    ),
    { seed: 20_260_301, numRuns: runs(14, 80) },
  );
  expect(Math.min(seen.same, seen.told, seen.untold)).toBeGreaterThan(runs(3, 20));
});
