// Plans count wedges at the height each set really has: the figures of the trade, and the laws that no sets the tool itself
// makes of a plan's strips beat it, that no set of a plan can be left out, and that its strips make its sets.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ClothForSale, clothToBuy } from '../../../src/cutting/plan/clothToBuy';
import { cutCloth } from '../../../src/cutting/plan/cutCloth';
import { type ClothBasket, type LargestTop, largestTop } from '../../../src/cutting/plan/largestTop';
import { planStrips, usualWidths } from '../../../src/cutting/plan/planStrips';
import { totalsTable } from '../../../src/cutting/plan/setTotals';
import { makeSets } from '../../../src/cutting/sets/randomSets';
import type { StripSet, WedgePlan } from '../../../src/model/project';
import { usualWedge } from '../../geometry/strips';
import { runs } from '../../runs';
import { plainFabrics, stripSet } from '../fabrics';
import { anyBasket, anyWedge, anyWidths, blocksOf, mostMade, wedgesOf } from './baskets';

const seed = 61_500;

/** Sets as they are planned: so many strips of each width, sewn in any order; the tip there is less of comes first. */
function laid(
  rows: readonly { readonly length: number; readonly perSet: readonly (readonly number[])[] }[],
  widths: ClothBasket['widths'],
  wedge: WedgePlan,
): StripSet[] {
  const sets: StripSet[] = [];
  for (const { length, perSet } of rows) {
    for (const counts of perSet) {
      const strips = counts.flatMap((count, at) =>
        Array.from({ length: count }, () => ({ fabric: 'f1', width: widths[at]!.width })),
      );
      const { up, down } = wedgesOf(sets, wedge);
      sets.push(stripSet(`s${sets.length}`, strips, { length, firstTip: up <= down ? 'up' : 'down' }));
    }
  }
  return sets;
}

/** Blocks of the plan's sets without one of them, laid anew so that the tips balance. */
function blocksWithout(
  rows: Parameters<typeof laid>[0],
  out: number,
  widths: ClothBasket['widths'],
  wedge: WedgePlan,
): number {
  const each = rows.flatMap(({ length, perSet }) => perSet.map((set) => ({ length, perSet: [set] })));
  return blocksOf(wedgesOf(laid(each.toSpliced(out, 1), widths, wedge), wedge), wedge);
}

describe('the figures of 7 1/2 in wedges from strips 40 long, 11 wedges to a set 8 high (trade notes 2, plane geometry)', () => {
  it.each([[6, 5], [8, 6], [12, 9], [24, 18], [80, 59]])('%i blocks need %i sets', (blocks, sets) => {
    const fabrics = plainFabrics(6).map((fabric) => fabric.id);
    const plan = planStrips({ blocks, wedge: usualWedge, widths: usualWidths('in'), fabrics, length: 40 })!;
    expect(plan.sets).toBe(sets);
    expect(plan.wedges.up + plan.wedges.down).toBe(11 * sets);
  }); // biome-ignore format: a table

  it.each([[16.5, 11], [18.5, 12], [27.5, 19], [35, 24]])('six fabrics, %f in of each, make %i blocks', (depth, blocks) => {
    const fabrics = plainFabrics(6);
    const clothOnHand = fabrics.map(({ id }) => ({
      id, fabric: id, kind: 'yardage' as const, stripLength: 40, depth, count: 1,
    }));
    const top = largestTop({ fabrics, clothOnHand, stripsOnHand: [], wedge: usualWedge, widths: usualWidths('in') });
    expect(top.blocks).toBe(blocks);
  }); // biome-ignore format: a table
});

describe('a plan for the largest top', () => {
  let [all, proved, some, several] = [0, 0, 0, 0];

  it('is not beaten by the sets made of its strips, gives its blocks as planned, and no set can be left out', () => {
    fc.assert(
      fc.property(anyBasket, (basket) => {
        const { fabrics, wedge, widths } = basket;
        const top = largestTop(basket);
        expect(mostMade(fabrics, top.strips, wedge, top.blocks)).toBeLessThanOrEqual(top.blocks);
        const sets = laid(top.sets, widths, wedge);
        expect(blocksOf(wedgesOf(sets, wedge), wedge)).toBe(top.blocks);
        sets.forEach((_, at) => {
          expect(blocksWithout(top.sets, at, widths, wedge)).toBeLessThan(top.blocks);
        });
        all += 1;
        if (top.exact) proved += 1;
        if (top.blocks > 0) some += 1;
        if (top.sets.length > 1) several += 1;
      }),
      { seed, numRuns: runs(8, 60) },
    );
    expect(some / all).toBeGreaterThan(runs(0.5, 0.7));
    expect(proved / all).toBeGreaterThan(0.3);
    expect(several).toBeGreaterThan(runs(0, 3));
  }, 600_000);

  it('has strips from which its blocks are really made', () => {
    fc.assert(
      fc.property(anyBasket, fc.nat(99), (basket, anySeed) => {
        const { fabrics, wedge } = basket;
        const top: LargestTop = largestTop(basket);
        fc.pre(top.blocks > 0);
        const stripsOnHand = top.strips.map((strip, at) => ({ ...strip, id: `r${at}` }));
        const made = makeSets({ fabrics, lookalikes: 10, stripsOnHand, wedge, keep: [], want: { blocks: top.blocks }, seed: anySeed });
        expect(blocksOf(wedgesOf(made.sets, wedge), wedge)).toBe(top.blocks);
      }),
      { seed, numRuns: runs(3, 40) },
    ); // biome-ignore format: short
  }, 600_000);

  it('where it says proved, is not beaten by the same cloth cut otherwise in its proportion, for sets of any height', () => {
    let [tried, fitted] = [0, 0];
    fc.assert(
      fc.property(anyBasket, fc.constantFrom(0, 0.25, 0.5, 0.75, 1), (basket, spare) => {
        const { fabrics, wedge, widths } = basket;
        const top = largestTop(basket);
        fc.pre(top.exact);
        tried += 1;
        // All pieces longest first, as far as they are of about one length; as many sets of this height as can be cut.
        const rows = [...basket.clothOnHand, ...basket.stripsOnHand.map((row) => ({ ...row, depth: row.width, stripLength: row.length }))];
        const longest = Math.max(...rows.map((row) => row.stripLength));
        const used = rows.filter((row) => row.stripLength > longest - 2);
        const length = Math.min(...used.map((row) => row.stripLength));
        const pieces = used.flatMap((row) => Array.from({ length: row.count }, () => ({ depth: row.depth, fabric: row.fabric })));
        const totals = totalsTable(widths, wedge.cutHeight + spare, wedge.seam);
        const cut = widths.map((one) => one.width);
        for (let sets = 1; sets < 60; sets += 1) {
          const total = totals(sets)!;
          const { enough, cuts } = cutCloth(pieces, cut, total.counts, 2_000_000);
          if (!enough) break;
          const most = total.sets.reduce((sum, set) => sum + Math.ceil(set.reduce((all_, one) => all_ + one, 0) / 2), 0);
          const strips = pieces.flatMap(({ fabric }, at) =>
            cut.map((width, column) => ({ fabric, width, length, count: cuts[at]![column]! })),
          ).filter((row) => row.count > 0);
          const given = fabrics.map(({ id }) => strips.reduce((sum, row) => sum + (row.fabric === id ? row.count : 0), 0));
          // Of one fabric no more than every other strip, as in every plan.
          if (Math.max(...given) > most) continue;
          fitted += 1;
          if (sets % 3 === 0 || sets < 3) expect(mostMade(fabrics, strips, wedge, top.blocks)).toBeLessThanOrEqual(top.blocks);
        }
      }),
      { seed: seed + 1, numRuns: runs(3, 25) },
    ); // biome-ignore format: short
    expect(fitted).toBeGreaterThan(runs(0.3, 1) * tried);
  }, 600_000);
});

describe('a plan for wanted blocks', () => {
  const wanted = fc.record({
    blocks: fc.integer({ min: 1, max: 30 }),
    wedge: anyWedge,
    widths: anyWidths,
    length: fc.constantFrom(18, 21, 36, 40, 41.5, 42, 44),
    count: fc.integer({ min: 3, max: 8 }),
  });

  it('gives its blocks as planned, no set can be left out, and its strips make them with no more sets', () => {
    fc.assert(
      fc.property(wanted, fc.nat(99), ({ blocks, wedge, widths, length, count }, anySeed) => {
        const fabrics = plainFabrics(count);
        const plan = planStrips({ blocks, wedge, widths, fabrics: fabrics.map((one) => one.id), length })!;
        const rows = [{ length, perSet: plan.perSet }];
        const given = wedgesOf(laid(rows, widths, wedge), wedge);
        expect(given.up + given.down).toBe(plan.wedges.up + plan.wedges.down);
        expect(blocksOf(given, wedge)).toBeGreaterThanOrEqual(blocks);
        plan.perSet.forEach((_, at) => {
          expect(blocksWithout(rows, at, widths, wedge)).toBeLessThan(blocks);
        });
        const stripsOnHand = plan.strips.map((strip, at) => ({ ...strip, id: `r${at}`, length }));
        const made = makeSets({
          fabrics,
          lookalikes: 10,
          stripsOnHand,
          wedge,
          keep: [],
          want: { blocks },
          seed: anySeed,
        });
        expect(blocksOf(wedgesOf(made.sets, wedge), wedge)).toBeGreaterThanOrEqual(blocks);
        expect(made.sets.length).toBeLessThanOrEqual(plan.sets);
        expect(made.notes).toEqual([]);
      }),
      { seed, numRuns: runs(4, 40) },
    );
  }, 600_000);
});

describe('what to buy for more blocks, of any basket', () => {
  it('makes the blocks by the same count, and a step less of any fabric does not', () => {
    const sale: ClothForSale = { usableWidth: 40, unit: 'yard', buying: { straighten: 1, shrinkage: 3 } };
    fc.assert(
      fc.property(anyBasket, fc.integer({ min: 1, max: 4 }), (basket, more) => {
        const blocks = largestTop(basket).blocks + more;
        const { fabrics: rows } = clothToBuy(basket, blocks, sale);
        expect(rows.length).toBeGreaterThan(0);
        const withBought = (bought: readonly { fabric: { id: string }; inches: number }[]) =>
          largestTop({
            ...basket,
            clothOnHand: [
              ...basket.clothOnHand,
              ...bought.map(({ fabric, inches }) => ({
                id: `new ${fabric.id}`, fabric: fabric.id, kind: 'yardage' as const, stripLength: 40, count: 1,
                depth: inches * 0.97 - 1,
              })).filter((row) => row.depth > 0),
            ],
          }).blocks;
        expect(withBought(rows)).toBeGreaterThanOrEqual(blocks);
        for (const row of rows) {
          const less = rows.map((one) => (one === row ? { ...one, inches: one.inches - 4.5 } : one));
          expect(withBought(less), row.fabric.id).toBeLessThan(blocks);
        }
      }),
      { seed, numRuns: runs(2, 12) },
    ); // biome-ignore format: short
  }, 600_000);
});
