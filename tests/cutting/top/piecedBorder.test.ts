// A pieced border from strips left over: it takes no more than is left, its pieces fill the runs it is drawn with, and the
// spacer it suggests makes whole pieces fit. Lengths of strips against pieces are counted here by hand.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stripKey, stripsLeftBeside } from '../../../src/cutting/sets/stripsUnused';
import { piecedBorder } from '../../../src/cutting/top/piecedBorder';
import { apply } from '../../../src/editing/apply';
import { addSpacer, pieceBorder } from '../../../src/editing/commands/edges';
import { layOut } from '../../../src/geometry/setting';
import { createProject } from '../../../src/model/create';
import type { Border, Project } from '../../../src/model/project';
import { runs } from '../../runs';

function withStrips(
  rows: readonly (readonly [fabric: string, width: number, count: number])[],
  border: Partial<Border> = {},
  cutHeight = 7.5,
): Project {
  const base = createProject('p', 'Scraps');
  return {
    ...base,
    fabrics: ['f1', 'a', 'b', 'c'].map((id) => ({ ...base.fabrics[0]!, id })),
    wedge: { ...base.wedge, cutHeight },
    stripsOnHand: rows.map(([fabric, width, count], at) => ({
      id: `h${at}`,
      fabric,
      width,
      length: 40,
      count,
    })),
    setting: { ...base.setting, borders: [{ fabric: 'f1', width: 3, ...border }] },
  };
}

describe('a pieced border from what is left', () => {
  it('counts pieces as a maker would: a 40 in strip gives 11 pieces for a 3 in border, each two seams shorter than the strip was wide', () => {
    // 3 finished + two seams of 1/4 = 3 1/2 cut; 40 / 3 1/2 = 11. Strips cut 1 1/2 finish 1, cut 2 finish 1 1/2.
    const plan = piecedBorder(
      withStrips([
        ['a', 1.5, 2],
        ['b', 2, 3],
      ]),
      0,
      1,
    );
    expect(plan.stock.map(({ count, finished }) => [count, finished])).toEqual([
      [22, 1],
      [33, 1.5],
    ]);
    expect(plan.available).toBeCloseTo(22 + 49.5, 9);
    // 28 × 42: twice 42 at the sides, twice 28 + 6 at top and bottom.
    expect(plan.needed).toBeCloseTo(2 * 42 + 2 * 34, 9);
    expect(plan.keys).toBeNull();
  });

  it('fits a 28 × 42 top in whole pieces, none fabric beside itself while others are left', () => {
    const project = withStrips([
      ['a', 1.5, 6],
      ['b', 2, 6],
      ['c', 1, 6],
    ]);
    const plan = piecedBorder(project, 0, 7);
    expect(plan.fits).toBe(true);
    expect(plan.spacer).toBeNull();
    const done = apply(project, pieceBorder(0, [...plan.keys!]));
    if (!done.ok) throw new Error('refused');
    const drawn = layOut(done.project).pieces.filter((piece) => piece.border === 0);
    // Drawn, every piece has its full width: nothing was cut off.
    expect(drawn.map((piece) => piece.width + 0.5)).toEqual(
      plan.keys!.map((key) => expect.closeTo(key.width, 6)),
    );
    const beside = plan.keys!.filter((key, at) => key.fabric === plan.keys![at + 1]?.fabric).length;
    expect(beside / plan.keys!.length).toBeLessThan(0.1);
  });

  it('takes no more pieces of any fabric and width than its strips give, whatever is left and whatever the seed', () => {
    const row = fc.tuple(
      fc.constantFrom('a', 'b', 'c'),
      fc.constantFrom(1, 1.25, 1.5, 2, 2.5),
      fc.integer({ min: 1, max: 9 }),
    );
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 1, max: 20 }),
        fc.nat(1000),
        (rows, eighths, seed) => {
          const project = withStrips(rows, { width: 1 + eighths / 8 });
          const plan = piecedBorder(project, 0, seed);
          if (!plan.keys) return;
          const finished = plan.keys.reduce((sum, key) => sum + key.width - 0.5, 0);
          expect(finished).toBeGreaterThanOrEqual(plan.needed - 1e-6);
          const used = new Map<string, number>();
          for (const key of plan.keys) {
            const name = stripKey(key.fabric, key.width);
            used.set(name, (used.get(name) ?? 0) + 1);
          }
          for (const [name, count] of used) {
            const strips = stripsLeftBeside(project.stripsOnHand, []).filter(
              (one) => stripKey(one.fabric, one.width) === name,
            );
            const given = strips.reduce(
              (sum, one) => sum + one.count * Math.floor((40 + 1e-9) / (1.5 + eighths / 8)),
              0,
            );
            expect(count).toBeLessThanOrEqual(given);
          }
        },
      ),
      { seed: 20260301, numRuns: runs(40, 120) },
    );
  });

  it('fits in centimetres what fits in inches: the same figures in either unit', () => {
    const inCentimetres = (project: Project): Project => {
      const cm = (length: number) => length / 2.54;
      return {
        ...project,
        wedge: {
          ...project.wedge,
          cutHeight: cm(project.wedge.cutHeight),
          seam: cm(project.wedge.seam),
          assemblySeam: cm(project.wedge.assemblySeam),
          outerSeam: cm(project.wedge.outerSeam),
        },
        stripsOnHand: project.stripsOnHand.map((row) => ({
          ...row,
          width: cm(row.width),
          length: cm(row.length),
        })),
        setting: {
          ...project.setting,
          borders: project.setting.borders.map((border) => ({ ...border, width: cm(border.width) })),
        },
        preferences: { ...project.preferences, unit: 'cm' },
      };
    };
    const row = fc.tuple(
      fc.constantFrom('a', 'b', 'c'),
      fc.constantFrom(1, 1.25, 1.5, 2, 2.5),
      fc.constant(30),
    );
    const told = new Set<boolean>();
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 3 }),
        fc.integer({ min: 1, max: 20 }),
        (rows, eighths) => {
          const project = withStrips(rows, { width: 1 + eighths / 8 });
          const { fits } = piecedBorder(project, 0, 1);
          told.add(fits);
          expect(piecedBorder(inCentimetres(project), 0, 1).fits).toBe(fits);
        },
      ),
      { seed: 20261128, numRuns: runs(34, 100) },
    );
    expect(told.size).toBe(2);
  });

  it('never fits whole where no length divides all pieces', () => {
    const project = withStrips([['a', 1.5, 9], ['b', 0.5 + Math.SQRT2, 9]]); // biome-ignore format: short
    expect(piecedBorder(project, 0, 1)).toMatchObject({ fits: false, spacer: null });
  });

  it('suggests the spacer with which whole pieces fit, where they do not', () => {
    const project = withStrips(
      [
        ['a', 2, 9],
        ['b', 2, 9],
      ],
      { corners: { kind: 'cornerstones', fabric: 'f1' } },
    );
    // 28 and 42 are no multiples of 1 1/2 both: 42 is, 28 is not.
    const plan = piecedBorder(project, 0, 1);
    expect(plan.fits).toBe(false);
    const { side, end } = plan.spacer!;
    expect((28 + 2 * side) / 1.5).toBeCloseTo(Math.round((28 + 2 * side) / 1.5), 9);
    expect((42 + 2 * end) / 1.5).toBeCloseTo(Math.round((42 + 2 * end) / 1.5), 9);
    const spaced = apply(project, addSpacer(0, 'f1', side, end));
    if (!spaced.ok) throw new Error('refused');
    expect(piecedBorder(spaced.project, 1, 1).fits).toBe(true);
  });

  it('names the widest border that what is left is enough for', () => {
    const project = withStrips([
      ['a', 1.5, 9],
      ['b', 2, 6],
    ]);
    const { widest } = piecedBorder(project, 0, 1);
    const at = (width: number) =>
      piecedBorder(
        withStrips(
          [
            ['a', 1.5, 9],
            ['b', 2, 6],
          ],
          { width },
        ),
        0,
        1,
      );
    expect(widest).toBeGreaterThan(0);
    expect(at(widest).available).toBeGreaterThanOrEqual(at(widest).needed);
    expect(at(widest + 0.25).available).toBeLessThan(at(widest + 0.25).needed);
  });

  it('leaves to another pieced border what that has taken', () => {
    const one = withStrips([
      ['a', 1.5, 12],
      ['b', 2, 12],
    ]);
    const plan = piecedBorder(one, 0, 3);
    const two: Project = {
      ...one,
      setting: {
        ...one.setting,
        borders: [
          { ...one.setting.borders[0]!, keys: [...plan.keys!] },
          { fabric: 'f1', width: 3 },
        ],
      },
    };
    const count = (stock: typeof plan.stock) => stock.reduce((sum, kind) => sum + kind.count, 0);
    expect(count(piecedBorder(two, 1, 3).stock)).toBe(count(plan.stock) - plan.keys!.length);
  });
});
