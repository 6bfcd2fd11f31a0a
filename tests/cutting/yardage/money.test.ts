// What cloth costs: every line to the cent by exact arithmetic, every total the sum of its lines as they are printed.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kits } from '../../../src/cutting/kits/kits';
import { orderCsv } from '../../../src/cutting/kits/kitTables';
import { fabricYardage } from '../../../src/cutting/yardage/fabricYardage';
import { money } from '../../../src/cutting/yardage/money';
import { totalCost, yardage } from '../../../src/cutting/yardage/yardage';
import { usualBuying } from '../../../src/model/buying';
import { phrase, speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { demo } from '../../demo';
import { runs } from '../../runs';

/** Prices a person writes, some with a third decimal. */
const price = fc.integer({ min: 1, max: 60_000 }).map((mills) => mills / 1000);

const shops = fc.record({
  name: fc.constantFrom('keepers-winter', 'harbour-reading-corner'),
  soldBy: fc.constantFrom('yard' as const, 'metre' as const),
  unit: fc.constantFrom('in' as const, 'cm' as const),
  price,
  own: fc.array(fc.option(price), { minLength: 4, maxLength: 4 }),
  quarter: fc.option(price),
  extra: price,
  cutAs: fc.constantFrom('strips' as const, 'lengths' as const),
  backing: fc.boolean(),
});

function priced(shop: typeof shops extends fc.Arbitrary<infer T> ? T : never): Project {
  const project: Project = { ...demo(shop.name), buying: usualBuying() };
  const { buying } = project;
  project.preferences.unit = shop.unit;
  Object.assign(buying, { soldBy: shop.soldBy, price: shop.price, fatQuarterPrice: shop.quarter });
  Object.assign(buying.kits, { extra: shop.extra, cutAs: shop.cutAs, backing: shop.backing });
  project.fabrics.forEach((fabric, at) => {
    const own = shop.own[at % 4];
    if (own !== null) fabric.price = own!;
  });
  return project;
}

/** Cents of an amount as it is printed. */
function cents(amount: number, project: Project): bigint {
  return BigInt(money(amount, project).figure.replace('.', ''));
}

function sum(amounts: readonly bigint[]): bigint {
  return amounts.reduce((all, one) => all + one, 0n);
}

describe('a total', () => {
  it('of the cutting list is the sum of the lines printed', () => {
    fc.assert(
      fc.property(shops, (shop) => {
        const project = priced(shop);
        const list = yardage(project, 'whole');
        const lines = [...list.fabrics.map((one) => one.cost!), list.backing!.apart!.cost!];
        expect(cents(totalCost(list)!, project)).toBe(sum(lines.map((one) => cents(one, project))));
      }),
      { seed: 81, numRuns: runs(20, 60) },
    );
  });

  it('of a kit is the sum of its lines, on the screen and in the table', () => {
    fc.assert(
      fc.property(shops, (shop) => {
        const project = priced(shop);
        const made = kits(project);
        const lines = [
          ...made.fabrics.map((one) => one.cost!),
          ...(made.backing ? [made.backing.cost!] : []),
          made.extra,
        ];
        expect(cents(made.price!, project)).toBe(sum(lines.map((one) => cents(one, project))));
        expect(cents(made.together!, project)).toBe(BigInt(made.count) * cents(made.price!, project));
        const rows = orderCsv(project, made, (sentence) => speak(sentence))
          .trim()
          .split('\r\n');
        const prices = rows.slice(1).map((row) => cents(Number(row.split(',').at(-1)), project));
        expect(prices.at(-1)).toBe(sum(prices.slice(0, -1)));
      }),
      { seed: 82, numRuns: runs(20, 60) },
    );
  });
});

describe('a line', () => {
  /** Cost of cloth with one piece so long in it, sold by this unit. */
  function costOf(inches: number, soldBy: 'yard' | 'metre', mills: number) {
    const project: Project = { ...demo('keepers-winter'), buying: usualBuying(), clothOnHand: [] };
    Object.assign(project.buying, { soldBy, price: mills / 1000, straighten: 0, fatQuarters: false });
    const piece = {
      step: 'setting', fabric: 'night', what: phrase('Pieces'), shape: 'length',
      width: 30, height: inches, count: 1, onHand: 0, upright: false, why: [],
    } as const; // biome-ignore format: short
    const fabric = project.fabrics.find((one) => one.id === 'night')!;
    const { buy, cost } = fabricYardage(project, fabric, [piece], 'whole');
    if (buy.kind !== 'length') throw new Error('no length bought');
    expect(buy.inches).toBeCloseTo(inches, 9);
    return cents(cost!, project);
  }

  it('is the exact product to the cent, half a cent up', () => {
    const steps = fc.integer({ min: 1, max: 80 });
    const mills = fc.integer({ min: 1, max: 99_999 });
    fc.assert(
      fc.property(steps, mills, (count, price) => {
        // Eighths of a yard and tenths of a metre, in thousandths of the money: whole numbers only.
        const halfUp = (over: bigint, under: bigint) => (2n * over + under) / (2n * under);
        const product = BigInt(count) * BigInt(price);
        expect(costOf(4.5 * count, 'yard', price)).toBe(halfUp(product, 80n));
        expect(costOf((10 * count) / 2.54, 'metre', price)).toBe(halfUp(product, 100n));
      }),
      { seed: 83, numRuns: runs(180, 1000) },
    );
  });

  it('of 0.3 m at 14.25 is 4.28: 4.275 rounded up', () => {
    expect(costOf(30 / 2.54, 'metre', 14_250)).toBe(428n);
  });
});
