// Planning backwards: cuts against an exact integer programme (HiGHS), and the law that no plan needs more cloth than it lists.
import fc from 'fast-check';
import highsLoader from 'highs';
import { describe, expect, it } from 'vitest';
import { type ClothForSale, clothToBuy, toBuyWords } from '../../../src/cutting/plan/clothToBuy';
import { bestFill, cutCloth } from '../../../src/cutting/plan/cutCloth';
import { type ClothBasket, largestTop } from '../../../src/cutting/plan/largestTop';
import { planStrips, usualWidths } from '../../../src/cutting/plan/planStrips';
import { makeSets } from '../../../src/cutting/sets/randomSets';
import { checkReferences } from '../../../src/model/check';
import { speak } from '../../../src/model/phrase';
import type { ClothOnHand, Fabric } from '../../../src/model/project';
import { readDocument } from '../../../src/model/reading/read';
import { usualWedge } from '../../geometry/strips';
import { runs } from '../../runs';
import { plainFabrics, projectOf, stripsOf } from '../fabrics';
import { mostBlocks } from './topProgramme';

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
  fabrics: plainFabrics(6), clothOnHand: [], stripsOnHand: [], wedge: usualWedge, widths: usualWidths('in'), ...more,
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
      { seed, numRuns: runs(8, 100) },
    );
    expect(yes).toBeGreaterThan(runs(1, 15));
    expect(no).toBeGreaterThan(runs(1, 15));
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
  it('from one roll of 40 precut 2 1/2 in strips is eight sets, enough for eleven blocks', () => {
    // A set 8 high takes 3, 3 and 2 strips or the like: about 4.8 precut strips. It gives 11 wedges (plane geometry).
    const roll = plainFabrics(4).map((fabric) =>
      cloth({ id: fabric.id, fabric: fabric.id, kind: 'precut strips', depth: 2.5, count: 10 }),
    );
    const top = largestTop(basket({ clothOnHand: roll }));
    expect(top.sets).toMatchObject([{ length: 40, count: 8 }]);
    expect(top.blocks).toBe(11);
    expect(speak(top.words[0]!)).toBe('The fabric on hand makes 8 strip sets, enough for 11 blocks.');
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
          lookalikes: 10,
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
            lookalikes: 10,
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
      { seed, numRuns: runs(3, 12) },
    );
  });

  it('is at least what planning forwards listed: the strips of a plan make its blocks', () => {
    for (const blocks of [1, 4, 6, 9]) {
      const fabrics = plainFabrics(5);
      const plan = planStrips({
        blocks, wedge: usualWedge, widths: usualWidths('in'), fabrics: fabrics.map((one) => one.id), length: 40,
      })!; // biome-ignore format: short
      const clothOnHand = plan.cloth.map(({ fabric, inches }) =>
        cloth({ id: fabric, fabric, depth: inches }),
      );
      const top = largestTop(basket({ fabrics, clothOnHand }));
      expect(top.blocks).toBeGreaterThanOrEqual(blocks);
    }
  });

  it('trims and halves longer pieces where shorter sets then make a block', () => {
    const usual = (rows: readonly (readonly [length: number, depth: number])[]) =>
      largestTop(
        basket({
          clothOnHand: rows.map(([stripLength, depth], at) =>
            cloth({ id: `c${at}`, fabric: `f${at + 1}`, depth, stripLength }),
          ),
        }),
      );
    // 42 trimmed by 4 goes with 38; 40 halved goes with 20, as three pieces of 20 do.
    expect(usual([[42, 11], [38, 11]]).blocks).toBeGreaterThanOrEqual(usual([[38, 11], [38, 11]]).blocks); // biome-ignore format: short
    expect(usual([[38, 11], [38, 11]])).toMatchObject({ blocks: 2, sets: [{ length: 38, count: 2 }] }); // biome-ignore format: short
    expect(usual([[40, 9], [20, 9]])).toMatchObject({ blocks: 1, sets: [{ length: 20, count: 2 }], exact: true }); // biome-ignore format: short
    expect(usual([[20, 9], [20, 9], [20, 9]])).toMatchObject({ blocks: 1, exact: true }); // biome-ignore format: short
  });

  it('is never more than the integer programme finds, is that where it says so, and mostly is it anyway', () => {
    const two = [{ width: 1.5, part: 1 }, { width: 2, part: 1 }]; // biome-ignore format: short
    const piece = fc.record({
      fabric: fc.constantFrom('f1', 'f2', 'f3'),
      length: fc.constantFrom(14, 17, 20.5, 24, 27.5, ...[38].slice(0, runs(0, 1))),
      depth: fc.constantFrom(2, 4, 5.5, 7, 9, 11, 12.5),
    });
    let [same, proved, all, some] = [0, 0, 0, 0];
    fc.assert(
      fc.property(fc.array(piece, { minLength: 2, maxLength: 4 }), (pieces) => {
        const clothOnHand = pieces.map(({ fabric, length, depth }, at) =>
          cloth({ id: `c${at}`, fabric, depth, stripLength: length }),
        );
        const top = largestTop(basket({ clothOnHand, widths: two }));
        const most = mostBlocks(pieces, two, usualWedge, [7.5, 8, 8.5], 4);
        expect(top.blocks, JSON.stringify(pieces)).toBeLessThanOrEqual(most);
        if (top.exact) expect(top.blocks, JSON.stringify(pieces)).toBe(most);
        all += 1;
        if (top.blocks === most) same += 1;
        if (top.exact) proved += 1;
        if (most > 0) some += 1;
      }),
      { seed, numRuns: runs(3, 40) },
    );
    expect(some).toBeGreaterThan(runs(0, 8));
    expect(same / all).toBeGreaterThan(runs(0.6, 0.8));
    expect(proved / all).toBeGreaterThan(runs(0.4, 0.6));
  }, 120_000);

  it('lets no fabric lie beside itself: one fabric alone makes no set, and a scarce second one bounds the top', () => {
    const alone = largestTop(basket({ clothOnHand: [cloth({ depth: 72 })] }));
    expect(alone).toMatchObject({ blocks: 0, sets: [], withoutRule: 8 });
    expect(speak(alone.words[1]!)).toMatch(/^Fabric 1 alone makes no set: neighbours in a set must differ\./);
    const beside = largestTop(
      basket({ clothOnHand: [cloth({ depth: 72 }), cloth({ fabric: 'f2', depth: 9 })] }),
    );
    expect(beside).toMatchObject({ blocks: 2, withoutRule: 9 });
    const strips = (fabric: string) =>
      beside.strips.reduce((sum, row) => sum + (row.fabric === fabric ? row.count : 0), 0);
    // Two sets of eight and nine strips at the most: every other one, four and five.
    expect(strips('f1')).toBeLessThanOrEqual(9);
    expect(strips('f1') - strips('f2')).toBeLessThanOrEqual(2);
  });

  it('says what runs out first: of the fabrics used up, those with fewest strips in the plan', () => {
    const fabrics = plainFabrics(3);
    const clothOnHand = [
      cloth({ id: 'a', fabric: 'f1', depth: 18 }),
      cloth({ id: 'b', fabric: 'f2', depth: 9 }),
      cloth({ id: 'c', fabric: 'f3', depth: 18 }),
    ];
    const top = largestTop(basket({ fabrics, clothOnHand }));
    expect(top.runsOut?.fabrics).toEqual(['f2']);
    expect(top.left.find((row) => row.fabric === 'f2')!.inches).toBeLessThan(1);
    const strips = (id: string) =>
      top.strips.reduce((sum, row) => sum + (row.fabric === id ? row.count : 0), 0);
    expect(strips('f2')).toBeLessThan(strips('f1'));
    expect(speak(top.words.at(-1)!)).toMatch(/^Used evenly, Fabric 2 runs out first, after \d of \d sets\.$/);
    // A strip of each fabric could still be cut: nothing has run out.
    const roomy = [1, 2, 3].map((at) => cloth({ id: `r${at}`, fabric: `f${at}`, depth: 6 }));
    expect(largestTop(basket({ fabrics, clothOnHand: roomy })).runsOut).toBeNull();
  });

  it('is nothing without cloth, and says so', () => {
    const top = largestTop(basket({}));
    expect(top).toMatchObject({ blocks: 0, sets: [], strips: [], runsOut: null });
    expect(speak(top.words[0]!)).toBe('The fabric on hand does not make a strip set 7 1/2" high.');
  });

  it('counts strips on hand as cloth of their own width', () => {
    const fabrics = plainFabrics(6);
    const top = largestTop(basket({ fabrics, stripsOnHand: stripsOf(fabrics, [[1, 4], [1.5, 4], [2, 2]]) })); // biome-ignore format: short
    expect(top.sets[0]!.count).toBeGreaterThanOrEqual(7);
  });
});

describe('what to buy for more blocks', () => {
  const fabrics = plainFabrics(3);
  const clothOnHand = [
    cloth({ id: 'a', fabric: 'f1', depth: 18 }),
    cloth({ id: 'b', fabric: 'f2', depth: 9 }),
    cloth({ id: 'c', fabric: 'f3', depth: 18 }),
  ];
  const there = basket({ fabrics, clothOnHand });
  const yards: ClothForSale = { usableWidth: 40, unit: 'yard', buying: { straighten: 1, shrinkage: 3 } };
  const metres: ClothForSale = { ...yards, unit: 'metre' };

  /** Blocks with so much more of each fabric, washed and straightened. */
  const withBought = (rows: readonly { fabric: Fabric; inches: number }[]) =>
    largestTop({
      ...there,
      clothOnHand: [
        ...clothOnHand,
        ...rows
          .map(({ fabric, inches }) =>
            cloth({ id: `new ${fabric.id}`, fabric: fabric.id, depth: inches * 0.97 - 1 }),
          )
          .filter((row) => row.depth > 0),
      ],
    }).blocks;

  it.each([
    ['yards', yards, 4.5],
    ['metres', metres, 10 / 2.54],
  ] as const)('is so much of each fabric in %s, enough, and no step of any too much', (_, sale, step) => {
    for (const blocks of [6, 14, 9].slice(0, runs(2, 3))) {
      const { fabrics: rows, enough } = clothToBuy(there, blocks, sale);
      expect(enough).toBe(false);
      expect(rows.length).toBeGreaterThan(0);
      for (const row of rows) expect(row.inches / step).toBeCloseTo(Math.round(row.inches / step), 9);
      expect(withBought(rows)).toBeGreaterThanOrEqual(blocks);
      for (const row of rows) {
        const less = rows.map((one) => (one === row ? { ...one, inches: one.inches - step } : one));
        expect(withBought(less), row.fabric.id).toBeLessThan(blocks);
      }
    }
  });

  it('tops up what there is least of first', () => {
    const { fabrics: rows } = clothToBuy(there, 14, yards);
    const amount = (id: string) => rows.find((row) => row.fabric.id === id)?.inches ?? 0;
    expect(amount('f2')).toBeGreaterThan(amount('f1'));
    expect(amount('f2')).toBeGreaterThan(amount('f3'));
  });

  it('is nothing where there is enough, a second fabric where there is one, and not more than 50 yards', () => {
    expect(clothToBuy(there, 4, yards)).toMatchObject({ enough: true, fabrics: [] });
    expect(speak(clothToBuy(there, 1, yards).words)).toBe('The fabric on hand is enough for 1 block.');
    expect(clothToBuy(there, 100_000, yards)).toMatchObject({ enough: false, fabrics: [] });
    const alone = clothToBuy(
      basket({ fabrics: plainFabrics(1), clothOnHand: [cloth({ depth: 72 })] }),
      2,
      yards,
    );
    expect(speak(alone.words)).toBe('Neighbours in a set must differ: add a second fabric first.');
  });

  it('is said in yards or metres by fabric', () => {
    const [row] = clothToBuy(there, 9, yards).fabrics;
    expect(speak(toBuyWords(row!, 'yard'))).toMatch(/^Fabric \d: (\d+ )?(\d\/\d )?yd$/);
    expect(speak(toBuyWords(row!, 'metre'))).toMatch(/^Fabric \d: [\d.]+ m$/);
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
