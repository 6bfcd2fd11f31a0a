// Strips as they pile up: odd widths and lengths, few of each. For the laws of sets made of all of them.
import fc from 'fast-check';
import type { SetMaking } from '../../../src/cutting/sets/randomSets';
import type { StripOnHand, WedgePlan } from '../../../src/model/project';
import { usualWedge } from '../../geometry/strips';
import { plainFabrics } from '../fabrics';

/** Few strips of few fabrics: some lengths near one another, some too short, some too narrow. */
export const anyStripBasket = fc.record({
  count: fc.integer({ min: 1, max: 5 }),
  wedge: fc.constantFrom<WedgePlan>(
    usualWedge,
    { ...usualWedge, cutHeight: 5 },
    { ...usualWedge, perBlock: 6, cutHeight: 6.25 },
    { ...usualWedge, perBlock: 12, cutHeight: 8 },
  ),
  rows: fc.array(
    fc.tuple(
      fc.nat(4),
      fc.constantFrom(0.5, 1, 1.25, 1.375, 1.5, 1.75, 2, 2.2, 2.5, 3),
      fc.constantFrom(42, 42, 40, 36, 36, 21, 12, 10.5, 8),
      fc.integer({ min: 1, max: 4 }),
    ),
    { minLength: 1, maxLength: 12 },
  ),
  seed: fc.nat(99),
});

type StripBasket = typeof anyStripBasket extends fc.Arbitrary<infer Basket> ? Basket : never;

/** All sets that can be made of it. */
export function makingOf({ count, wedge, rows, seed: anySeed }: StripBasket): SetMaking {
  const fabrics = plainFabrics(count);
  const stripsOnHand = rows.map(([at, width, length, number], index): StripOnHand => {
    return { id: `r${index}`, fabric: fabrics[at % count]!.id, width, length, count: number };
  });
  return { fabrics, lookalikes: 10, stripsOnHand, wedge, keep: [], want: 'most', seed: anySeed };
}

/** Eight fabrics, each with two strips of 1 1/4 and one each of 1 3/8, 1 3/4 and 2.2; four fabrics 42 long and four 36. */
export function oddStrips(wedge: WedgePlan = usualWedge): SetMaking {
  const fabrics = plainFabrics(8);
  const stripsOnHand = fabrics.flatMap(({ id: fabric }, at) =>
    ([[1.25, 2], [1.375, 1], [1.75, 1], [2.2, 1]] as const).map(([width, count]) => ({
      id: `${fabric} ${width}`, fabric, width, count, length: at < 4 ? 42 : 36,
    })),
  ); // biome-ignore format: a table
  return { fabrics, lookalikes: 10, stripsOnHand, wedge, keep: [], want: 'most', seed: 1 };
}
