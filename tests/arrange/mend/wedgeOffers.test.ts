import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wedgeOffers } from '../../../src/arrange/mend/wedgeOffers';
import { analyse } from '../../../src/balance/analyse';
import { rimClashes, wedgeClashes } from '../../../src/balance/clashes/wedgeClashes';
import { DEFAULT_WEIGHTS, inPoints, weighted } from '../../../src/balance/score/weights';
import { wishesOf } from '../../../src/balance/score/wishes';
import { wedgeLedger } from '../../../src/cutting/wedges/ledger';
import { apply } from '../../../src/editing/apply';
import { putWedge, tradeWedges } from '../../../src/editing/commands/blocks';
import { findBlock } from '../../../src/model/find';
import { moved } from '../../../src/model/moves';
import type { Project } from '../../../src/model/project';
import { clashList } from '../../balance/clashList';
import { after, withWedges, workshopProject } from '../../editing/workshopProject';
import { runs } from '../../runs';
import { awkwardTop } from '../awkwardTop';

function offersFor(project: Project, place: number) {
  const block = findBlock(project, 'b1')!;
  return wedgeOffers(analyse(project), block, place);
}

test('a place between two Brick rims is offered what brings another cloth to the rim first', () => {
  const project = withWedges(workshopProject(), 's1 up', 's1 down', 's2 up');
  const first = offersFor(project, 1).leftOver[0]!;
  expect(first.wedge).toEqual({ set: 's2', tip: 'down' });
  expect(first.rightTip).toBe(true);
  expect(first.inside.filter((one) => one.onRim)).toEqual([]);
});

test('an offer of the wrong tip says which rim it would meet, and at which place', () => {
  const project = withWedges(workshopProject(), 's1 up');
  const offer = offersFor(project, 1).leftOver.find(
    (one) => one.wedge.set === 's2' && one.wedge.tip === 'up',
  )!;
  expect(offer.rightTip).toBe(false);
  expect(offer.nests).toBe(false);
  const rim = offer.inside.find((one) => one.onRim)!;
  expect(rim.fabric).toBe('f2');
  expect(rim.place).toBe(1);
  expect(rim.likeness).toBe(1);
});

test('the clashes of a wedge in its block are those the analysis lists, look-alikes too, at any threshold', () => {
  let alike = 0;
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 0, max: 40 }), (seed, lookalikes) => {
      const plain = awkwardTop(seed, 8);
      const project = { ...plain, preferences: { ...plain.preferences, lookalikes } };
      const { clashes, model } = analyse(project, wishesOf(project.preferences));
      const block = project.blocks[seed % 20]!;
      const at = seed % 8;
      const wedge = block.places[at];
      if (!wedge) return;
      const met = wedgeClashes(project, model, block, at, wedge);
      const listed = clashes.filter(
        (one) =>
          (one.kind === 'rim' || one.kind === 'radial') &&
          one.blocks[0] === block.id &&
          one.places.includes(at + 1),
      );
      const row = (kind: string, inches: number, likeness: number, fabrics: readonly string[]) =>
        [kind, inches.toFixed(6), likeness.toFixed(6), ...fabrics.toSorted()].join(' ');
      expect(
        met
          .map((one) => row(one.onRim ? 'rim' : 'radial', one.inches, one.likeness, [one.fabric, one.other]))
          .sort(),
      ).toEqual(listed.map((one) => row(one.kind, one.inches, one.likeness, one.fabrics)).sort());
      alike += met.filter((one) => one.likeness < 1).length;
    }),
    { seed: 11, numRuns: runs(15, 100) },
  );
  expect(alike).toBeGreaterThan(runs(6, 50));
});

test('no wedge is offered that is not there', () => {
  let project = workshopProject();
  for (let place = 0; wedgeLedger(project).find((row) => row.set.id === 's1')!.left.up > 0; place += 1) {
    const at = { block: `b${1 + Math.floor(place / 8)}`, place: place % 8 };
    project = after(project, (now) => putWedge(now, at.block, at.place, { set: 's1', tip: 'up' }));
  }
  const block = findBlock(project, 'b2')!;
  const offers = wedgeOffers(analyse(project), block, 7);
  expect(offers.leftOver.some((one) => one.wedge.set === 's1' && one.wedge.tip === 'up')).toBe(false);
  for (const offer of offers.leftOver) {
    expect(apply(project, putWedge(project, 'b2', 7, offer.wedge)).ok).toBe(true);
  }
});

test('a trade on offer changes the rims of the other block by what it says', () => {
  let project = withWedges(workshopProject(), 's1 up', 's1 down', 's2 up', 's2 down');
  project = after(
    project,
    (now) => putWedge(now, 'b2', 0, { set: 's2', tip: 'up' }),
    (now) => putWedge(now, 'b2', 1, { set: 's2', tip: 'down' }),
    (now) => putWedge(now, 'b2', 2, { set: 's1', tip: 'up' }),
    (now) => putWedge(now, 'b2', 3, { set: 's1', tip: 'down' }),
  );
  const offers = offersFor(project, 0).inTrade;
  expect(offers.length).toBeGreaterThan(0);
  for (const offer of offers) {
    const traded = after(project, (now) => tradeWedges(now, { block: 'b1', place: 0 }, offer.from));
    const rims = (one: Project) =>
      clashList(one).filter(
        (clash) => clash.kind === 'rim' && clash.likeness === 1 && clash.blocks[0] === 'b2',
      ).length;
    expect(rims(traded) - rims(project)).toBe(offer.rimsElsewhere);
    expect(findBlock(traded, 'b1')!.places[0]).toEqual(offer.wedge);
  }
});

test('rims that meet are counted for the blocks concerned, before and after a trade', () => {
  const project = withWedges(workshopProject(), 's1 up', 's2 up', 's1 down');
  // Places 1 and 2 both have Brick on the rim; with places 2 and 3 exchanged none do.
  const block = findBlock(project, 'b1')!;
  const moves = [
    { kind: 'place' as const, block: 'b1', place: 1, wedge: block.places[2]! },
    { kind: 'place' as const, block: 'b1', place: 2, wedge: block.places[1]! },
  ];
  expect(rimClashes(project, ['b1', 'b2'], moves)).toEqual({ now: 1, after: 0 });
});

test('what the rim of a wedge would lie against beyond its block is what the analysis finds once it is there', () => {
  let met = 0;
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e6 }), (seed) => {
      const project = awkwardTop(seed, 8);
      const analysis = analyse(project);
      const block = project.blocks[(seed + 7) % 20]!;
      const at = seed % 8;
      for (const offer of wedgeOffers(analysis, block, at).leftOver.slice(-4)) {
        const moves = [{ kind: 'place' as const, block: block.id, place: at, wedge: offer.wedge }];
        const found = clashList(moved(project, moves)).filter(
          (one) =>
            (one.kind === 'facing' || one.kind === 'setting') &&
            one.places[one.blocks.indexOf(block.id)] === at + 1,
        );
        if (offer.outside) met += 1;
        expect(found.length > 0).toBe(offer.outside !== null);
        if (offer.outside) {
          expect(found.map((one) => one.likeness)).toContain(offer.outside.likeness);
          expect([...found[0]!.fabrics]).toContain(offer.outside.fabric);
        }
      }
    }),
    { seed: 4, numRuns: runs(4, 25) },
  );
  expect(met).toBeGreaterThan(runs(1, 10));
});

test('an offer tells the score of the whole top by the person’s own weights', () => {
  const plain = awkwardTop(6, 8);
  const weights = { ...DEFAULT_WEIGHTS, valueSpread: 6 };
  const project = { ...plain, preferences: { ...plain.preferences, weights } };
  const analysis = analyse(project);
  const [offer] = wedgeOffers(analysis, project.blocks[2]!, 3).leftOver;
  const moves = [{ kind: 'place' as const, block: 'b2', place: 3, wedge: offer!.wedge }];
  const then = analyse(moved(project, moves)).terms;
  expect(offer!.top!.now).toBeCloseTo(inPoints(weighted(analysis.terms, weights), weights), 7);
  expect(offer!.top!.after).toBeCloseTo(inPoints(weighted(then, weights), weights), 7);
});
