// Look-alikes in pairs, against the table of likeness that clashes go by.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { clothTable } from '../../src/cloth/cloths';
import { clothDistance } from '../../src/cloth/likeness';
import { lookalikePairs } from '../../src/cloth/lookalikes';
import { printMix } from '../../src/cloth/print/printMix';
import type { Fabric } from '../../src/model/project';
import { atOnce } from '../../src/model/work/parts';
import { SEED } from '../colour/arbitraryColours';

/** Colours in few steps, so that pairs of every likeness come up. */
const colour = fc
  .tuple(...([0, 1, 2] as const).map(() => fc.integer({ min: 12, max: 20 })))
  .map((steps) => `#${steps.map((step) => (step * 9).toString(16).padStart(2, '0')).join('')}`);
const list: fc.Arbitrary<Fabric[]> = fc
  .array(fc.record({ colour, background: fc.boolean() }), { maxLength: 14 })
  .map((rows) =>
    rows.map((row, at) => ({ id: `f${at}`, name: `Fabric ${at}`, cloth: { kind: 'plain' }, ...row })),
  );

it('are the pairs of the table of likeness, each once, the nearest first', () => {
  fc.assert(
    fc.property(list, fc.double({ min: 0, max: 25, noNaN: true }), (fabrics, limit) => {
      const pairs = atOnce(lookalikePairs(fabrics, limit));
      const table = limit > 0 ? clothTable(fabrics, printMix, limit) : null;
      const size = fabrics.length;
      const expected = fabrics.flatMap((one, f) =>
        fabrics.flatMap((other, g) => {
          const likeness = table?.likeness[f * size + g] ?? 0;
          return f < g && likeness > 0 ? [`${one.id} ${other.id} ${likeness}`] : [];
        }),
      );
      expect(pairs.map(({ one, other, likeness }) => `${one.id} ${other.id} ${likeness}`).sort()).toEqual(
        expected.sort(),
      );
      const distances = pairs.map(({ distance }) => distance);
      expect(distances).toEqual(distances.toSorted((one, other) => one - other));
      for (const { one, other, distance } of pairs)
        expect(distance).toBe(clothDistance(printMix(one), printMix(other)));
    }),
    { seed: SEED, numRuns: 250 },
  );
});

it('pause in a long list, so that the page goes on', () => {
  const fabrics = Array.from(
    { length: 120 },
    (_, at): Fabric => ({
      id: `f${at}`,
      name: '',
      colour: `#${(at * 2000).toString(16).padStart(6, '0')}`,
      cloth: { kind: 'plain' },
      background: false,
    }),
  );
  const finding = lookalikePairs(fabrics, 10);
  let pauses = 0;
  while (!finding.next().done) pauses += 1;
  expect(pauses).toBe(Math.floor((120 * 119) / 2 / 1500));
});
