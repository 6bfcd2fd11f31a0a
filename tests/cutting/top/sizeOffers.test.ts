// A size wanted: the offers measure what they say, the closest come first, and a size that can be had exactly is offered.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sizeOffers } from '../../../src/cutting/top/sizeOffers';
import { apply } from '../../../src/editing/apply';
import { takeOffer } from '../../../src/editing/commands/takeOffer';
import { layOut } from '../../../src/geometry/setting';
import { createProject } from '../../../src/model/create';
import type { Project } from '../../../src/model/project';
import { isPlain } from '../../../src/model/wallCells';

const base = createProject('p', 'Sizes');
const onPoint: Project = {
  ...base,
  wall: { ...base.wall, cells: Array.from({ length: 8 }, () => null) },
  setting: {
    ...base.setting,
    layout: { kind: 'onPoint', sides: 'f1', corners: 'f1' },
    plain: { fabric: 'f1', cells: 'second' },
    borders: [
      { fabric: 'f1', width: 1 },
      { fabric: 'f1', width: 4, ends: 3 },
    ],
  },
};

describe('a size wanted', () => {
  it('of 32 1/2 × 48 is met exactly by 3 rows of 2 with 1 1/2 sashing around blocks of 14 (trade notes 5)', () => {
    const [first] = sizeOffers(base, { width: 32.5, height: 48 });
    expect([first!.rows, first!.columns, first!.sashing, first!.borders]).toEqual([
      3,
      2,
      { where: 'around', width: 1.5 },
      [],
    ]);
    expect(first!.off.width).toBeCloseTo(0, 9);
    expect(first!.off.height).toBeCloseTo(0, 9);
    expect(first!.blocks).toBe(6);
  });

  it.each([
    ['straight', base],
    ['on point', onPoint],
  ] as const)('%s, is what the top measures once an offer is taken up', (_, project) => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 110 }), fc.integer({ min: 30, max: 110 }), (width, height) => {
        const offers = sizeOffers(project, { width, height });
        expect(offers.length).toBeGreaterThan(0);
        for (const offer of offers) {
          const done = apply(project, takeOffer(offer));
          if (!done.ok) throw new Error('refused');
          const layout = layOut(done.project);
          expect(layout.width).toBeCloseTo(offer.width, 9);
          expect(layout.height).toBeCloseTo(offer.height, 9);
          expect(offer.width - width).toBeCloseTo(offer.off.width, 9);
          const cells = done.project.wall.cells.filter((__, at) => !isPlain(at, done.project));
          expect(cells).toHaveLength(offer.blocks);
        }
      }),
      { seed: 20260302, numRuns: 25 },
    );
  });

  it('of 60 × 72 is met within 2 in both ways by several different settings, no two alike', () => {
    const offers = sizeOffers(base, { width: 60, height: 72 });
    const close = offers.filter(({ off }) => Math.abs(off.width) <= 2 && Math.abs(off.height) <= 2);
    expect(close.length).toBeGreaterThanOrEqual(3);
    expect(
      new Set(offers.map(({ rows, columns, sashing }) => `${rows} ${columns} ${sashing.where}`)).size,
    ).toBe(offers.length);
  });

  it('that no plan can make is not offered: less than a block leaves nothing', () => {
    expect(sizeOffers(base, { width: 5, height: 5 })).toEqual([]);
    expect(
      sizeOffers(
        { ...base, wedge: { ...base.wedge, cutHeight: 1, outerSeam: 0.5 } },
        { width: 60, height: 72 },
      ),
    ).toEqual([]);
  });
});
