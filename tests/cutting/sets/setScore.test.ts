// What a set score takes for one cloth, against the list of clashes: whatever the person's threshold and whichever fabrics
// are background.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { analyse } from '../../../src/balance/analyse';
import { wishesOf } from '../../../src/balance/score/wishes';
import { clothsOf } from '../../../src/cloth/cloths';
import { rimPairCost, SET_WEIGHTS, setCost, setScoring } from '../../../src/cutting/sets/setScore';
import { createBlock } from '../../../src/model/create';
import type { Fabric, Project } from '../../../src/model/project';
import { runs } from '../../runs';
import { plainFabrics, projectOf, stripSet, stripsOf } from '../fabrics';

const seed = 31_700;

/** Greys and one hue in few steps, so that pairs of every likeness come up. */
const shade = fc.integer({ min: 40, max: 200 });
const top = fc.record({
  shades: fc.array(fc.tuple(shade, fc.boolean()), { minLength: 2, maxLength: 5 }),
  lookalikes: fc.integer({ min: 0, max: 40 }),
});

function hex(grey: number): string {
  return `#${grey.toString(16).padStart(2, '0').repeat(3)}`;
}

/** A set of each fabric alone, and a block in which every fabric lies beside every fabric on the rim. */
function pairsOf(shades: readonly (readonly [number, boolean])[], lookalikes: number): Project {
  const fabrics = plainFabrics(shades.length).map(
    (fabric, at): Fabric => ({ ...fabric, colour: hex(shades[at]![0]), background: shades[at]![1] }),
  );
  const stripSets = fabrics.map((fabric, at) => ({
    ...stripSet(`s${at}`, [{ fabric: fabric.id, width: 8 }]),
    length: 4000,
  }));
  const plain = projectOf({ fabrics, stripSets });
  const project = { ...plain, preferences: { ...plain.preferences, lookalikes } };
  const pairs = fabrics.flatMap((_, one) => fabrics.map((_fabric, other) => [one, other] as const));
  const blocks = pairs.map(([one, other], at) => ({
    ...createBlock(project),
    id: `b${at}`,
    number: at + 1,
    places: Array.from({ length: 8 }, (_, place) =>
      place < 2
        ? { set: `s${place === 0 ? one : other}`, tip: place === 0 ? ('up' as const) : ('down' as const) }
        : null,
    ),
  }));
  return { ...project, blocks };
}

it('what the set score takes for alike is what the list of clashes takes for alike', () => {
  const seen = { alike: 0, background: 0, apart: 0 };
  fc.assert(
    fc.property(top, ({ shades, lookalikes }) => {
      const project = pairsOf(shades, lookalikes);
      const { fabrics, wedge } = project;
      const scoring = setScoring(clothsOf(project), stripsOf(fabrics, [[8, 1]]), wedge);
      const listed = new Map(
        analyse(project, wishesOf(project.preferences))
          .clashes.filter((clash) => clash.kind === 'rim')
          .map((clash) => [clash.fabrics.join(), clash.likeness]),
      );
      fabrics.forEach((fabric, one) => {
        fabrics.forEach((next, other) => {
          const weight = one === other ? SET_WEIGHTS.rimPair : SET_WEIGHTS.alikeRimPair;
          const likeness = listed.get(`${fabric.id},${next.id}`);
          const cost = rimPairCost(scoring, one, other) / weight;
          if (likeness === undefined) expect(cost).toBeLessThan(0.25);
          else expect(cost).toBeCloseTo(likeness, 9);
          if (fabric.background || next.background) expect(cost).toBe(0);
          seen[fabric.background || next.background ? 'background' : likeness ? 'alike' : 'apart'] += 1;
        });
      });
    }),
    { seed, numRuns: runs(20, 60) },
  );
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(runs(8, 50));
});

it('neighbours in a set cost by the same likeness, and a fabric sewn to itself is a seam for nothing, background or not', () => {
  fc.assert(
    fc.property(top, ({ shades, lookalikes }) => {
      const project = pairsOf(shades, lookalikes);
      const { fabrics, wedge } = project;
      const scoring = setScoring(clothsOf(project), stripsOf(fabrics, [[1, 1], [2, 1], [8, 1]]), wedge); // biome-ignore format: a row
      fabrics.forEach((_, one) => {
        fabrics.forEach((_next, other) => {
          const of = (fabricAt: number, width: number) => ({ fabricAt, width });
          const beside = setCost([of(one, 8), of(other, 2)], scoring);
          // The same strips without a look at who lies beside whom: a second scoring that tells all cloths apart.
          const apart = setCost([of(one, 8), of(other, 2)], {
            ...scoring,
            alike: new Float64Array(scoring.alike.length),
          });
          const grade = rimPairCost(scoring, one, other) / SET_WEIGHTS.alikeRimPair;
          if (one !== other) expect(beside - apart).toBeCloseTo(SET_WEIGHTS.alikeNeighbours * grade, 9);
          else expect(beside).toBeGreaterThanOrEqual(SET_WEIGHTS.sameNeighbours);
        });
      });
    }),
    { seed, numRuns: 30 },
  );
});
