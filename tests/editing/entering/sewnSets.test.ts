// Sets of wedges that are sewn already: as wide as they show, and counted by what is entered.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wedgeLedger } from '../../../src/cutting/wedges/ledger';
import { enterBlocks, supplyOf } from '../../../src/editing/entering/enterBlocks';
import { addSewnSet, addStandInSets } from '../../../src/editing/entering/sewnSets';
import { wedgeBands } from '../../../src/geometry/bands';
import { setHeight } from '../../../src/geometry/stripSet';
import { createProject } from '../../../src/model/create';
import { WEDGE_COUNTS } from '../../../src/model/project';
import { dice } from '../../balance/tops';
import { runs } from '../../runs';
import { done, refusal } from '../outcomes';
import { workshopProject } from '../workshopProject';

describe('the set of a sewn wedge', () => {
  it('shows its fabrics as wide as they were measured, and has no wedge left', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 4, max: 12 }), { minLength: 1, maxLength: 6 }),
        fc.constantFrom(...WEDGE_COUNTS),
        (eighths, perBlock) => {
          const project = {
            ...workshopProject(),
            stripSets: [],
            blocks: [],
            wall: { rows: 1, columns: 1, cells: [null] },
          };
          const quilt = { ...project, wedge: { ...project.wedge, perBlock, cutHeight: 12 } };
          const shown = eighths.map((width, at) => ({ fabric: `f${2 + (at % 4)}`, width: width / 8 }));
          const after = done(quilt, addSewnSet(shown));
          const set = after.stripSets[0]!;
          expect(setHeight(set.strips, after.wedge.seam)).toBeCloseTo(12, 9);
          const bands = wedgeBands(set.strips, 'up', after.wedge);
          expect(bands.map(({ fabric }) => fabric)).toEqual(shown.map(({ fabric }) => fabric));
          for (const [at, { width }] of shown.slice(0, -1).entries())
            expect(bands[at]!.outer - bands[at]!.inner).toBeCloseTo(width, 9);
          expect(wedgeLedger(after)[0]!.available).toEqual({ up: 0, down: 0 });
        },
      ),
      { numRuns: runs(30, 150) },
    );
  });
  it('is refused where the fabrics before the last reach to the middle', () => {
    const bands = [4, 4, 1].map((width) => ({ fabric: 'f2', width }));
    expect(refusal(workshopProject(), addSewnSet(bands))).toContain('reach to the middle');
  });
});

describe('sets that stand in for those of sewn blocks', () => {
  const named = (count: number) =>
    Array.from({ length: count }, (_, at) => ({
      name: `Fabric ${at + 1}`,
      colour: '#808080',
      cloth: { kind: 'plain' as const },
      background: false,
    }));

  it('are as high as the wedge, hold each fabric once, and no two are the same', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 26 }),
        fc.integer({ min: 1, max: 8 }),
        fc.nat(12),
        (sets, strips, more) => {
          const fabrics = strips + more;
          const after = done(createProject('p', 'Sewn'), addStandInSets(named(fabrics), { sets, strips }));
          expect(after.stripSets).toHaveLength(sets);
          for (const set of after.stripSets) {
            expect(setHeight(set.strips, after.wedge.seam)).toBeCloseTo(after.wedge.cutHeight, 9);
            expect(new Set(set.strips.map(({ fabric }) => fabric)).size).toBe(strips);
          }
          const orders = after.stripSets.map((set) => set.strips.map(({ fabric }) => fabric).join());
          if (sets <= fabrics) expect(new Set(orders).size).toBe(sets);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('hold the fabrics of the quilt in turn where it has its own, and add none', () => {
    const project = workshopProject();
    const quilt = { ...project, stripSets: [], blocks: [], wall: { rows: 1, columns: 1, cells: [null] } };
    const own = quilt.fabrics.filter(({ background }) => !background).map(({ id }) => id);
    for (const strips of [1, own.length, 5]) {
      const after = done(quilt, addStandInSets([], { sets: 3, strips }));
      expect(after.fabrics).toEqual(quilt.fabrics);
      const held = after.stripSets.flatMap((set) => set.strips.map(({ fabric }) => fabric));
      expect(held).toHaveLength(3 * strips);
      expect(held.filter((fabric) => !own.includes(fabric))).toEqual([]);
    }
    const one = done(quilt, addStandInSets([], { sets: 1, strips: own.length }));
    expect(new Set(one.stripSets[0]!.strips.map(({ fabric }) => fabric)).size).toBe(own.length);
  });

  it('give as many wedges as the entered blocks have, with nothing to correct', () => {
    fc.assert(
      fc.property(fc.nat(10_000), (seed) => {
        const random = dice(seed);
        let quilt = done(createProject('p', 'Sewn'), addStandInSets(named(8), { sets: 5, strips: 5 }));
        for (let block = 0; block < 12; block += 1) {
          const places = Array.from({ length: 8 }, (_, at) => ({
            set: quilt.stripSets[random.below(5)]!.id,
            tip: at % 2 === 0 ? ('up' as const) : ('down' as const),
          }));
          const entered = [{ block: null, number: null, places, progress: 'octagon' as const }];
          expect(supplyOf(quilt, entered).short).toEqual([]);
          quilt = done(quilt, enterBlocks(quilt, entered));
        }
        for (const { left } of wedgeLedger(quilt)) expect(left).toEqual({ up: 0, down: 0 });
      }),
      { numRuns: runs(7, 20) },
    );
  });
});
