// Planning backwards: cuts against an exact integer programme (HiGHS), and the law that no plan needs more cloth than it lists.
import fc from 'fast-check';
import highsLoader from 'highs';
import { describe, expect, it } from 'vitest';
import { bestFill, cutCloth } from '../../src/cutting/cutCloth';
import { type ClothBasket, clothToBuy, largestTop } from '../../src/cutting/largestTop';
import { planStrips, USUAL_WIDTHS } from '../../src/cutting/planStrips';
import { makeSets } from '../../src/cutting/randomSets';
import { checkReferences } from '../../src/model/check';
import { speak } from '../../src/model/phrase';
import type { ClothOnHand } from '../../src/model/project';
import { readDocument } from '../../src/model/read';
import { usualWedge } from '../geometry/strips';
import { plainFabrics, projectOf, stripsOf } from './fabrics';

const seed = 54_000;
const highs = await highsLoader();

/** Can these pieces give these strips? Straight from the pieces, as an integer programme. */
function canCut(depths: readonly number[], widths: readonly number[], needed: readonly number[]): boolean {
  const name = (piece: number, at: number) => `x_${piece}_${at}`;
  const lines = [
    ...depths.map(
      (depth, piece) => `${widths.map((width, at) => `${width} ${name(piece, at)}`).join(' + ')} <= ${depth}`,
    ),
    ...needed.map((count, at) => `${depths.map((_, piece) => name(piece, at)).join(' + ')} >= ${count}`),
  ];
  const names = depths.flatMap((_, piece) => widths.map((__, at) => name(piece, at)));
  const text = `Minimize\n ${names.join(' + ')}\nSubject To\n ${lines.join('\n ')}\nGeneral\n ${names.join(' ')}\nEnd`;
  return highs.solve(text).Status === 'Optimal';
}

const cloth = (parts: Partial<ClothOnHand> & { depth: number }): ClothOnHand => ({
  id: `c${parts.depth} ${parts.fabric ?? 'f1'}`, fabric: 'f1', kind: 'yardage', stripLength: 40, count: 1, ...parts,
}); // biome-ignore format: a fixture

const basket = (more: Partial<ClothBasket>): ClothBasket => ({
  fabrics: plainFabrics(6), clothOnHand: [], stripsOnHand: [], wedge: usualWedge, widths: USUAL_WIDTHS, ...more,
}); // biome-ignore format: a fixture

describe('cloth cut into strips', () => {
  const random = fc.record({
    depths: fc.array(fc.constantFrom(1, 1.5, 2, 2.5, 2.75, 4, 5.25, 9), { minLength: 1, maxLength: 7 }),
    widths: fc.uniqueArray(fc.constantFrom(1, 1.25, 1.5, 2, 2.5), { minLength: 1, maxLength: 3 }),
    needed: fc.array(fc.nat(6), { minLength: 3, maxLength: 3 }),
  });

  it('gives what is needed exactly when the integer programme says so, and never more than fits or is needed', () => {
    let [yes, no] = [0, 0];
    fc.assert(
      fc.property(random, ({ depths, widths, needed }) => {
        const need = widths.map((_, at) => needed[at]!);
        const pieces = depths.map((depth) => ({ depth }));
        const cut = cutCloth(pieces, widths, need);
        expect(cut.proved).toBe(true);
        if (need.every((count) => count === 0)) return;
        expect(cut.enough, JSON.stringify({ depths, widths, need })).toBe(canCut(depths, widths, need));
        cut.cuts.forEach((row, piece) => {
          const used = row.reduce((sum, count, at) => sum + count * widths[at]!, 0);
          expect(used).toBeLessThanOrEqual(depths[piece]! + 1e-9);
          for (const count of row) expect(count).toBeGreaterThanOrEqual(0);
        });
        need.forEach((count, at) => {
          const given = cut.cuts.reduce((sum, row) => sum + row[at]!, 0);
          if (cut.enough) expect(given).toBe(count);
          else expect(given).toBeLessThanOrEqual(count);
        });
        if (cut.enough) yes += 1;
        else no += 1;
      }),
      { seed, numRuns: 100 },
    );
    expect(yes).toBeGreaterThan(15);
    expect(no).toBeGreaterThan(15);
  });

  it('splits a 2 1/2 in precut strip into 1 1/2 and 1, or takes 2 from it (common practice, no source)', () => {
    const precut = Array.from({ length: 4 }, () => ({ depth: 2.5 }));
    expect(cutCloth(precut, [1, 1.5, 2], [3, 3, 1])).toMatchObject({ enough: true, proved: true });
    expect(cutCloth(precut, [1, 1.5, 2], [3, 3, 2])).toMatchObject({ enough: false, proved: true });
  });

  it('is filled no further than sums of its widths reach', () => {
    expect(bestFill(2.5, [1, 1.5, 2])).toBe(2.5);
    expect(bestFill(2.75, [1, 1.5, 2])).toBe(2.5);
    expect(bestFill(0.9, [1])).toBe(0);
  });
});

describe('the largest top from the cloth on hand', () => {
  it('from one roll of 40 precut 2 1/2 in strips is eight sets, enough for ten blocks', () => {
    // A set 8 high takes 3, 3 and 2 strips or the like: about 4.8 precut strips.
    const roll = plainFabrics(4).map((fabric) =>
      cloth({ id: fabric.id, fabric: fabric.id, kind: 'precut strips', depth: 2.5, count: 10 }),
    );
    const top = largestTop(basket({ clothOnHand: roll }));
    expect(top.sets).toEqual([{ length: 40, count: 8 }]);
    expect(top.blocks).toBe(10);
    expect(speak(top.words[0]!)).toBe('The cloth on hand makes 8 strip sets, enough for 10 blocks.');
  });

  const random = fc.record({
    yardage: fc.array(fc.tuple(fc.nat(3), fc.constantFrom(4.5, 9, 12.5, 18)), { maxLength: 4 }),
    quarters: fc.array(fc.tuple(fc.nat(3), fc.integer({ min: 1, max: 2 })), { maxLength: 3 }),
    precut: fc.array(fc.tuple(fc.nat(3), fc.integer({ min: 1, max: 8 })), { maxLength: 3 }),
    single: fc.array(fc.tuple(fc.nat(3), fc.constantFrom(1, 1.5, 2, 2.5), fc.integer({ min: 1, max: 5 })), {
      maxLength: 4,
    }),
  });

  it('never needs more cloth than there is of any fabric, and its strips really make its sets', () => {
    fc.assert(
      fc.property(random, ({ yardage, quarters, precut, single }) => {
        const fabrics = plainFabrics(4);
        const clothOnHand = [
          ...yardage.map(([at, depth], index) => cloth({ id: `y${index}`, fabric: fabrics[at]!.id, depth })),
          ...quarters.map(([at, count], index) =>
            cloth({
              id: `q${index}`,
              fabric: fabrics[at]!.id,
              kind: 'fat quarter',
              depth: 18,
              stripLength: 21,
              count,
            }),
          ),
          ...precut.map(([at, count], index) =>
            cloth({ id: `p${index}`, fabric: fabrics[at]!.id, kind: 'precut strips', depth: 2.5, count }),
          ),
        ];
        const stripsOnHand = single.map(([at, width, count], index) => ({
          id: `s${index}`, fabric: fabrics[at]!.id, width, length: 40, count,
        })); // biome-ignore format: short
        const top = largestTop(basket({ fabrics, clothOnHand, stripsOnHand }));
        for (const { fabric, inches } of top.left) {
          expect(inches, `${fabric} is short`).toBeGreaterThanOrEqual(-1e-9);
        }
        const wanted = top.sets.reduce((sum, set) => sum + set.count, 0);
        const asRows = top.strips.map((strip, at) => ({ ...strip, id: `r${at}` }));
        const made = makeSets({
          fabrics,
          stripsOnHand: asRows,
          wedge: usualWedge,
          keep: [],
          want: { sets: wanted },
          seed: 1,
        });
        expect(made.sets.length).toBe(wanted);
        if (top.blocks > 0) {
          const blocks = makeSets({
            fabrics,
            stripsOnHand: asRows,
            wedge: usualWedge,
            keep: [],
            want: { blocks: top.blocks },
            seed: 1,
          });
          expect(blocks.notes.map((note) => speak(note)).filter((say) => say.includes('missing'))).toEqual(
            [],
          );
        }
      }),
      { seed, numRuns: 12 },
    );
  });

  it('is at least what planning forwards listed: the strips of a plan make its blocks', () => {
    for (const blocks of [1, 4, 6, 9]) {
      const fabrics = plainFabrics(5);
      const plan = planStrips({
        blocks, wedge: usualWedge, widths: USUAL_WIDTHS, fabrics: fabrics.map((one) => one.id), length: 40,
      })!; // biome-ignore format: short
      const clothOnHand = plan.cloth.map(({ fabric, inches }) =>
        cloth({ id: fabric, fabric, depth: inches }),
      );
      const top = largestTop(basket({ fabrics, clothOnHand }));
      expect(top.blocks).toBeGreaterThanOrEqual(blocks);
      expect(top.exact).toBe(true);
    }
  });

  it('says which fabric runs out first and what to buy for more, and that much is enough and no eighth too much', () => {
    const fabrics = plainFabrics(3);
    const clothOnHand = [
      cloth({ id: 'a', fabric: 'f1', depth: 18 }),
      cloth({ id: 'b', fabric: 'f2', depth: 9 }),
      cloth({ id: 'c', fabric: 'f3', depth: 18 }),
    ];
    const there = basket({ fabrics, clothOnHand });
    const top = largestTop(there);
    expect(top.runsOutFirst).toBe('f2');
    expect(speak(top.words[2]!)).toBe('Used alike, Fabric 2 runs out first.');
    const buy = clothToBuy(there, 8, 40)!;
    const withBought = (depth: number) =>
      largestTop({ ...there, clothOnHand: [...clothOnHand, cloth({ id: 'new', depth })] }).blocks;
    expect(buy.inches % 4.5).toBe(0);
    expect(withBought(buy.inches)).toBeGreaterThanOrEqual(8);
    expect(withBought(buy.inches - 4.5)).toBeLessThan(8);
    expect(clothToBuy(there, top.blocks, 40)!.inches).toBe(0);
    expect(clothToBuy(there, 100_000, 40)).toBeNull();
  });

  it('is nothing without cloth, and says so', () => {
    const top = largestTop(basket({}));
    expect(top).toMatchObject({ blocks: 0, sets: [], strips: [], runsOutFirst: null });
    expect(speak(top.words[0]!)).toBe('The cloth on hand does not make a strip set 8" high.');
  });

  it('counts strips on hand as cloth of their own width', () => {
    const fabrics = plainFabrics(6);
    const top = largestTop(basket({ fabrics, stripsOnHand: stripsOf(fabrics, [[1, 4], [1.5, 4], [2, 2]]) })); // biome-ignore format: short
    expect(top.sets[0]!.count).toBeGreaterThanOrEqual(7);
  });
});

describe('cloth on hand in a project file', () => {
  it('may be missing (older files), and names the place when its fabric is unknown', () => {
    const { clothOnHand, ...older } = projectOf({});
    expect(clothOnHand).toEqual([]);
    const read = readDocument(older);
    expect(read.ok && read.value.clothOnHand).toEqual([]);
    const wrong = projectOf({ clothOnHand: [cloth({ fabric: 'gone', depth: 9 })] });
    expect(checkReferences(wrong).map((problem) => problem.path)).toEqual(['clothOnHand[0].fabric']);
  });
});
