// Cloth beside the lengths that are cut along it: runs of binding, border and sashing are cut from it where they fit, before
// more cloth is bought for them.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stripsAlike } from '../../../src/cutting/yardage/lineWords';
import { yardage } from '../../../src/cutting/yardage/yardage';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { randomProject } from '../../drawing/samples';
import { runs } from '../../runs';

const QUILTS = fc.record({
  seed: fc.integer({ min: 1, max: 9999 }),
  rows: fc.integer({ min: 1, max: 3 }),
  columns: fc.integer({ min: 1, max: 3 }),
  unit: fc.constantFrom('in' as const, 'cm' as const),
  length: fc.constantFrom(90, 150, 400),
  border: fc.constantFrom(0, 2, 4),
  oneWay: fc.boolean(),
});
type Quilt = typeof QUILTS extends fc.Arbitrary<infer One> ? One : never;

/** Of fabric c there are strips of sets, as long as is said, a border and the binding. */
function quilt(one: Quilt): Project {
  const project = randomProject(one.seed, 8, one.rows, one.columns);
  return {
    ...project,
    preferences: { ...project.preferences, unit: one.unit },
    buying: { ...project.buying, fatQuarters: false },
    fabrics: project.fabrics.map((fabric) => ({ ...fabric, oneWay: one.oneWay })),
    stripSets: project.stripSets.map((set) => ({ ...set, length: one.length })),
    setting: {
      ...project.setting,
      borders: one.border > 0 ? [{ fabric: 'c', width: one.border }] : [],
      binding: { fabric: 'c', cutWidth: 2.5 },
    },
  };
}

describe('runs beside lengths', () => {
  it('take no cloth of their own where the cloth beside the lengths holds them', () => {
    let held = 0;
    fc.assert(
      fc.property(QUILTS, (one) => {
        const project = quilt(one);
        const [cloth] = yardage(project, 'whole').fabrics.filter(({ fabric }) => fabric.id === 'c');
        const { usableWidth } = project.preferences;
        const widths = project.stripSets.flatMap(({ strips }) => strips.filter(({ fabric }) => fabric === 'c').map(({ width }) => width));
        const beside = usableWidth - widths.reduce((sum, width) => sum + width, 0);
        const pieces = cloth!.lines.filter(({ step }) => step !== 'sets').flatMap((line) => line.pieces);
        // A border of one-way cloth keeps its print upright, so its level sides run across the cloth.
        if (widths.length === 0 || beside < 0 || (one.oneWay && one.border > 0)) return;
        const runs = pieces.map(({ width, height, count, shape }) => (shape === 'run' ? { wide: width, long: height } : { wide: Math.min(width, height), long: Math.max(width, height) * count }));
        const wide = runs.reduce((sum, run) => sum + run.wide, 0);
        const long = Math.max(...runs.map((run) => run.long), 0);
        if (wide > beside || long > one.length) return;
        held += 1;
        const told = stripsAlike(cloth!.layout).map(({ words }) => speak(words)).join('; ');
        expect(cloth!.layout.length, told).toBeCloseTo(one.length, 6);
      }),
      { numRuns: runs(78, 400) },
    );
    expect(held).toBeGreaterThan(runs(15, 60));
  });

  it('of the same quilt with shorter sets, which leave nothing beside, are cut across and take as much as ever', () => {
    fc.assert(
      fc.property(QUILTS, (one) => {
        const project = quilt({ ...one, border: 0, length: 20 as 90 });
        for (const { lines } of yardage(project, 'whole').fabrics) {
          for (const line of lines) {
            if (line.step !== 'binding') continue;
            expect(line.cuts.every(({ across, along }) => along <= 2.6 && across <= project.preferences.usableWidth)).toBe(true);
          }
        }
      }),
      { numRuns: 100 },
    );
  });
}); // biome-ignore format: laws
