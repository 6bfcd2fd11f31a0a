// Random baskets for the laws of planning, and what sets really give: counted from sets laid out, not from a plan.
import fc from 'fast-check';
import type { ClothBasket } from '../../../src/cutting/plan/largestTop';
import { usualWidths } from '../../../src/cutting/plan/planStrips';
import { makeSets } from '../../../src/cutting/sets/randomSets';
import { availableWedges, type WedgeCount } from '../../../src/cutting/wedges/yield';
import type { ClothOnHand, Fabric, StripOnHand, StripSet, WedgePlan } from '../../../src/model/project';
import { usualWedge } from '../../geometry/strips';
import { runs } from '../../runs';
import { plainFabrics } from '../fabrics';

export const anyWedge: fc.Arbitrary<WedgePlan> = fc
  .record({
    perBlock: fc.constantFrom<WedgePlan['perBlock']>(8, 8, 6, 10, 12),
    cutHeight: fc.constantFrom(7.5, 7.5, 5, 6.25, 8.25),
    seam: fc.constantFrom(0.25, 0.25, 0.1875),
  })
  .map(({ seam, ...rest }) => ({ ...usualWedge, ...rest, seam, assemblySeam: seam }));

export const anyWidths: fc.Arbitrary<ClothBasket['widths']> = fc.constantFrom(
  usualWidths('in'),
  usualWidths('in'),
  [{ width: 1, part: 4 }, { width: 1.5, part: 2 }, { width: 2, part: 1 }],
  [{ width: 1.25, part: 2 }, { width: 1.75, part: 1 }, { width: 2.25, part: 1 }],
  [{ width: 1.5, part: 1 }, { width: 2, part: 1 }],
); // biome-ignore format: a table

const anyCloth = fc.array(
  fc.tuple(
    fc.nat(5),
    fc.constantFrom<readonly [ClothOnHand['kind'], number]>(
      ['yardage', 40], ['yardage', 40], ['yardage', 42], ['yardage', 44], ['fat quarter', 21], ['remnant', 27.5],
    ),
    fc.constantFrom(4.5, 7, 9, 12.5, 18, 18.5, 27, 36),
    fc.integer({ min: 1, max: 2 }),
  ),
  { minLength: 1, maxLength: 6 },
); // biome-ignore format: a table
const anyStrips = fc.array(
  fc.tuple(fc.nat(5), fc.constantFrom(1, 1.5, 2, 2.5), fc.constantFrom(40, 42, 21), fc.integer({ min: 1, max: 6 })),
  { maxLength: 4 },
); // biome-ignore format: short

/** Two to six fabrics, up to a dozen pieces of cloth and some strips. */
export const anyBasket: fc.Arbitrary<ClothBasket> = fc
  .record({
    count: fc.integer({ min: 2, max: 6 }),
    wedge: anyWedge,
    widths: anyWidths,
    alike: fc.constantFrom(false, false, true),
    cloth: anyCloth,
    strips: anyStrips,
  })
  .map(({ count, wedge, widths, alike, cloth, strips }) => {
    const fabrics = plainFabrics(count);
    const [, [kind, stripLength], depth] = cloth[0]!;
    const rows = alike
      ? fabrics.map((fabric, at) => ({ id: `c${at}`, fabric: fabric.id, kind, stripLength, depth, count: 1 }))
      : cloth.map(([at, [of, length], deep, number], index) => ({
          id: `c${index}`, fabric: fabrics[at % count]!.id, kind: of, stripLength: length, depth: deep, count: number,
        })); // biome-ignore format: short
    return {
      fabrics,
      clothOnHand: rows,
      stripsOnHand: alike
        ? []
        : strips.map(([at, width, length, number], index) => ({
            id: `s${index}`, fabric: fabrics[at % count]!.id, width, length, count: number,
          })),
      wedge,
      widths,
    }; // biome-ignore format: short
  });

export function blocksOf({ up, down }: WedgeCount, wedge: WedgePlan): number {
  return Math.floor(Math.min(up, down) / (wedge.perBlock / 2));
}

export function wedgesOf(sets: readonly StripSet[], wedge: WedgePlan): WedgeCount {
  return sets.reduce(
    (sum, set) => {
      const { up, down } = availableWedges(set, wedge);
      return { up: sum.up + up, down: sum.down + down };
    },
    { up: 0, down: 0 },
  );
}

interface Cut {
  readonly fabric: string;
  readonly width: number;
  readonly length: number;
  readonly count: number;
}

/**
 * Most blocks the tool's own sets give from these strips: as many as can be, and enough for one more than planned; one seed each
 * every day, two in the long run, and then enough for the planned blocks too. Sets in which a fabric lies beside itself do not count: those of a plan never need that.
 */
export function mostMade(
  fabrics: readonly Fabric[],
  strips: readonly Cut[],
  wedge: WedgePlan,
  planned: number,
): number {
  const stripsOnHand: StripOnHand[] = strips.map((strip, at) => ({ ...strip, id: `r${at}` }));
  const made = [1, 2].slice(0, runs(1, 2)).flatMap((seed) =>
    (['most', { blocks: planned + 1 }, { blocks: Math.max(1, planned) }] as const)
      .slice(0, runs(2, 3))
      .map((want) => {
        const { sets } = makeSets({ fabrics, lookalikes: 10, stripsOnHand, wedge, keep: [], want, seed });
        return blocksOf(wedgesOf(sets.filter((set) => !besideItself(set)), wedge), wedge); // biome-ignore format: short
      }),
  );
  return Math.max(...made);
}

function besideItself({ strips }: StripSet): boolean {
  return strips.some((strip, at) => at > 0 && strips[at - 1]!.fabric === strip.fabric);
}
