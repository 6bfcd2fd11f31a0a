// The cutting table after a plan is cut: no cloth lost or invented, and the strips on it really make the sets.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { afterCutting } from '../../../src/cutting/plan/afterCutting';
import { largestTop } from '../../../src/cutting/plan/largestTop';
import { usualWidths } from '../../../src/cutting/plan/planStrips';
import { makeSets } from '../../../src/cutting/sets/randomSets';
import { apply } from '../../../src/editing/apply';
import { cutFromCloth } from '../../../src/editing/commands/clothOnHand';
import { speak } from '../../../src/model/phrase';
import type { ClothOnHand, StripOnHand } from '../../../src/model/project';
import { usualWedge } from '../../geometry/strips';
import { runs } from '../../runs';
import { plainFabrics, projectOf } from '../fabrics';

const seed = 77_100;
const fabrics = plainFabrics(4);
/** Ends of strips shorter than this are not kept, inches. */
const LEAST_END = 1;
/** Strips as long as the piece. */
const asLong = (width: number, count: number) => ({ width, count, parts: 1, length: 40 });

function cutUp(clothOnHand: readonly ClothOnHand[], stripsOnHand: readonly StripOnHand[]) {
  const top = largestTop({
    fabrics,
    clothOnHand,
    stripsOnHand,
    wedge: usualWedge,
    widths: usualWidths('in'),
  });
  return { top, after: afterCutting({ clothOnHand, stripsOnHand }, top.pieces, usualWedge.seam) };
}

/** Area of one fabric on the table, square inches. */
function areaOf(fabric: string, cloth: readonly ClothOnHand[], strips: readonly StripOnHand[]): number {
  return (
    cloth.reduce(
      (sum, one) => sum + (one.fabric === fabric ? one.depth * one.stripLength * one.count : 0),
      0,
    ) + strips.reduce((sum, one) => sum + (one.fabric === fabric ? one.width * one.length * one.count : 0), 0)
  );
}

const table = fc.record({
  cloth: fc.array(
    fc.tuple(
      fc.nat(3),
      fc.constantFrom<[ClothOnHand['kind'], number, number]>(
        ['yardage', 40, 9],
        ['yardage', 42, 18.5],
        ['fat quarter', 21, 18],
        ['precut strips', 42, 2.5],
        ['remnant', 30, 7.3],
      ),
      fc.integer({ min: 1, max: 6 }),
    ),
    { maxLength: 5 },
  ),
  strips: fc.array(fc.tuple(fc.nat(3), fc.constantFrom(1, 1.5, 2, 2.5, 3), fc.integer({ min: 1, max: 4 })), {
    maxLength: 5,
  }),
});

describe('the cutting table after a plan is cut', () => {
  it('loses no cloth but scraps too narrow to sew, invents none, and has the strips for its sets', () => {
    fc.assert(
      fc.property(table, (made) => {
        const cloth = made.cloth.map(
          ([at, [kind, stripLength, depth], count], index): ClothOnHand => ({
            id: `c${index}`, fabric: fabrics[at]!.id, kind, stripLength, depth, count,
          }),
        ); // biome-ignore format: short
        const strips = made.strips.map(
          ([at, width, count], index): StripOnHand => ({
            id: `h${index}`, fabric: fabrics[at]!.id, width, length: 40, count,
          }),
        ); // biome-ignore format: short
        const { top, after } = cutUp(cloth, strips);
        for (const { id } of fabrics) {
          const before = areaOf(id, cloth, strips);
          const now = areaOf(id, after.clothOnHand, after.stripsOnHand);
          expect(now).toBeLessThanOrEqual(before + 1e-6);
          // A scrap is narrower than two seams (strips) or a quarter inch (cloth), one for each piece at the most, or an end
          // shorter than an inch.
          const pieces = [...cloth, ...strips].filter((one) => one.fabric === id);
          const scraps = pieces.reduce((sum, one) => sum + one.count * (0.5 * 42 + LEAST_END * 19), 0);
          expect(now).toBeGreaterThanOrEqual(before - scraps - 1e-6);
        }
        for (const rows of [after.clothOnHand, after.stripsOnHand]) {
          expect(new Set(rows.map((row) => row.id)).size).toBe(rows.length);
          for (const row of rows) expect(row.count).toBeGreaterThan(0);
        }
        const wanted = top.sets.reduce((sum, set) => sum + set.count, 0);
        const sets = makeSets({
          fabrics, lookalikes: 10, stripsOnHand: after.stripsOnHand, wedge: usualWedge, keep: [], want: { sets: wanted }, seed: 1,
        }); // biome-ignore format: short
        expect(sets.sets).toHaveLength(wanted);
      }),
      { seed, numRuns: runs(3, 15) },
    );
  });

  it('writes down what is left: less yardage, remnants of fat quarters, halves of precut strips', () => {
    const cloth: ClothOnHand[] = [
      { id: 'c1', fabric: 'f1', kind: 'yardage', stripLength: 40, depth: 18, count: 1 },
      { id: 'c2', fabric: 'f2', kind: 'precut strips', stripLength: 40, depth: 2.5, count: 3 },
    ];
    const after = afterCutting(
      { clothOnHand: cloth, stripsOnHand: [] },
      [
        { of: 'cloth', row: 'c1', strips: [asLong(1, 2), asLong(1.5, 2), asLong(2, 1)] },
        { of: 'cloth', row: 'c2', strips: [asLong(1, 1), asLong(1.5, 1)] },
        { of: 'cloth', row: 'c2', strips: [asLong(2, 1)] },
      ],
      0.25,
    );
    expect(after.cut).toBe(8);
    expect(after.clothOnHand.map(({ kind, depth, count }) => [kind, depth, count])).toEqual([
      ['yardage', 11, 1],
      ['precut strips', 2.5, 1],
      ['remnant', 0.5, 1],
    ]);
    expect(after.stripsOnHand.map(({ fabric, width, count }) => [fabric, width, count])).toEqual([
      ['f1', 1, 2],
      ['f1', 1.5, 2],
      ['f1', 2, 1],
      ['f2', 1, 1],
      ['f2', 1.5, 1],
      ['f2', 2, 1],
    ]);
  });

  it('leaves a strip alone that is used as it lies, and counts both parts of one that is cut narrower', () => {
    const strips: StripOnHand[] = [
      { id: 'h1', fabric: 'f1', width: 2, length: 40, count: 3 },
      { id: 'h2', fabric: 'f2', width: 2.5, length: 40, count: 2 },
    ];
    const after = afterCutting(
      { clothOnHand: [], stripsOnHand: strips },
      [
        { of: 'strips', row: 'h1', strips: [asLong(2, 1)] },
        { of: 'strips', row: 'h2', strips: [asLong(1.5, 1)] },
      ],
      0.25,
    );
    expect(after.stripsOnHand.map(({ fabric, width, count }) => [fabric, width, count])).toEqual([
      ['f1', 2, 3],
      ['f2', 2.5, 1],
      ['f2', 1.5, 1],
      ['f2', 1, 1],
    ]);
  });

  it('is one change to the project, and refused when the cloth on hand is no longer what it was', () => {
    const cloth: ClothOnHand[] = [
      { id: 'c1', fabric: 'f1', kind: 'yardage', stripLength: 40, depth: 36, count: 1 },
    ];
    const project = projectOf({ fabrics, clothOnHand: cloth });
    const { after } = cutUp(cloth, []);
    const outcome = apply({ ...project, setting: { ...project.setting } }, cutFromCloth(project, after));
    if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
    expect(speak(outcome.change.label)).toBe(`cut ${after.cut} strips from the fabric`);
    const later = { ...project, clothOnHand: [...cloth, { ...cloth[0]!, id: 'c2' }] };
    const refused = apply(later, cutFromCloth(project, after));
    expect(refused.ok ? '' : speak(refused.problems[0]!.message)).toBe(
      'The fabric on hand has changed meanwhile.',
    );
  });
});

describe('strips cut across', () => {
  it('go on hand in the length of their set, and the end beside them where it can be sewn', () => {
    const cloth: ClothOnHand[] = [
      { id: 'c1', fabric: 'f1', kind: 'yardage', stripLength: 42, depth: 9, count: 1 },
    ];
    const halves = { width: 2, count: 3, parts: 2, length: 20 };
    const after = afterCutting({ clothOnHand: cloth, stripsOnHand: [] }, [{ of: 'cloth', row: 'c1', strips: [halves] }], 0.25); // biome-ignore format: short
    expect(after.cut).toBe(6);
    expect(after.stripsOnHand.map(({ width, length, count }) => [width, length, count])).toEqual([
      [2, 20, 6],
      [2, 2, 3],
    ]);
    expect(after.clothOnHand.map(({ depth }) => depth)).toEqual([3]);
  });
});

describe('the largest top beside sets there are', () => {
  it('counts their wedges with those of the new sets', () => {
    const cloth = ['f1', 'f2'].map(
      (fabric): ClothOnHand => ({ id: fabric, fabric, kind: 'yardage', stripLength: 40, depth: 7, count: 1 }),
    );
    const basket = {
      fabrics,
      clothOnHand: cloth,
      stripsOnHand: [],
      wedge: usualWedge,
      widths: usualWidths('in'),
    };
    const alone = largestTop(basket);
    const beside = largestTop({ ...basket, there: { up: 12, down: 12 } });
    expect(alone.sets).toMatchObject([{ length: 40, count: 1 }]);
    expect(alone.blocks).toBe(1);
    expect(beside.blocks).toBe(4);
    expect(speak(beside.words[0]!)).toBe(
      'The fabric that is left makes 1 more strip set. With the sets you have that is enough for 4 blocks.',
    );
  });
});
