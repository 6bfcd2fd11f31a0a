// Steps that hold for one strip, one seam or one piece where there is one, and for several where there are several.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { yardage } from '../../../src/cutting/yardage/yardage';
import type { Project } from '../../../src/model/project';
import { runs } from '../../runs';
import { randomProject } from '../samples';
import { told } from './makePdf';

const QUILTS = fc.record({
  seed: fc.integer({ min: 1, max: 9999 }),
  rows: fc.integer({ min: 1, max: 6 }),
  columns: fc.integer({ min: 1, max: 6 }),
  unit: fc.constantFrom('in' as const, 'cm' as const),
  length: fc.constantFrom(40, 150, 400),
  bound: fc.boolean(),
  border: fc.constantFrom(0, 3),
});

function quilt(one: typeof QUILTS extends fc.Arbitrary<infer One> ? One : never): Project {
  const project = randomProject(one.seed, 8, one.rows, one.columns);
  return {
    ...project,
    preferences: { ...project.preferences, unit: one.unit },
    stripSets: project.stripSets.map((set) => ({ ...set, length: one.length })),
    setting: {
      ...project.setting,
      borders: one.border > 0 ? [{ fabric: 'a', width: one.border }] : [],
      binding: one.bound ? { fabric: 'c', cutWidth: 2.5 } : null,
    },
  };
}

describe('one or several', () => {
  it('seams of the back, strips of the binding and pieces cut from one strip are told as they are', () => {
    const seen = { oneSeam: 0, seams: 0, oneStrip: 0, strips: 0, divided: 0, unbound: 0 };
    fc.assert(
      fc.property(QUILTS, (one) => {
        const project = quilt(one);
        const text = told(project, ['setting']).join('\n');
        const list = yardage(project, 'whole');
        const { widths } = list.backing!.layout;
        if (widths === 2) seen.oneSeam += 1;
        if (widths > 2) seen.seams += 1;
        expect(/Press this seam open.*It runs/.test(text)).toBe(widths === 2);
        expect(/Press these seams open.*They run/.test(text)).toBe(widths > 2);
        const lines = list.fabrics.flatMap((fabric) => fabric.lines);
        const strips = lines.filter(({ step }) => step === 'binding').flatMap(({ cuts }) => cuts).reduce((sum, { count }) => sum + count, 0);
        if (strips === 1) seen.oneStrip += 1;
        if (strips > 1) seen.strips += 1;
        if (strips === 0) seen.unbound += 1;
        expect(/Cut one strip of Cloth c/.test(text)).toBe(strips === 1);
        expect(/Cut strips of Cloth c/.test(text) && /Join them at 45 degrees/.test(text)).toBe(strips > 1);
        expect(text).toMatch(/distance around(, rounded up,)? is 2 × \(/);
        for (const { pieces, cuts, join } of lines) {
          const wanted = pieces.reduce((sum, { count }) => sum + count, 0);
          const cut = cuts.reduce((sum, { count }) => sum + count, 0);
          if (cut > 0 && cut < wanted) {
            if (cut === 1) seen.divided += 1;
            expect(join).not.toBeNull();
          }
        }
      }),
      { numRuns: runs(25, 150) },
    );
    for (const [what, count] of Object.entries(seen)) expect(count, what).toBeGreaterThan(runs(0, 3));
  }, 600_000); // biome-ignore format: one law
});
