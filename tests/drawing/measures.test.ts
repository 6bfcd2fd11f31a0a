// The measures drawn along a top, added up.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eachOnce, type Measure, measuresOf, roundedSumWords } from '../../src/drawing/measures';
import { layOut } from '../../src/geometry/setting';
import { speak } from '../../src/model/phrase';
import type { Project } from '../../src/model/project';
import { formatLength, parseLength } from '../../src/model/units';
import { runs } from '../runs';
import { randomProject } from './samples';

const QUILTS = fc.record({
  seed: fc.integer({ min: 1, max: 9999 }),
  perBlock: fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
  rows: fc.integer({ min: 1, max: 5 }),
  columns: fc.integer({ min: 1, max: 5 }),
  sashing: fc.constantFrom('none' as const, 'between' as const, 'around' as const),
  wide: fc.integer({ min: 1, max: 12 }).map((quarters) => quarters / 4),
  borders: fc.array(
    fc.integer({ min: 2, max: 40 }).map((quarters) => quarters / 4),
    { maxLength: 3 },
  ),
  ends: fc.option(fc.integer({ min: 2, max: 40 }).map((quarters) => quarters / 4)),
  onPoint: fc.boolean(),
});

type Quilt = typeof QUILTS extends fc.Arbitrary<infer T> ? T : never;

function quilt({ seed, perBlock, rows, columns, sashing, wide, borders, ends, onPoint }: Quilt): Project {
  const plain = randomProject(seed, perBlock, rows, columns);
  const fabric = plain.fabrics[0]!.id;
  return {
    ...plain,
    setting: {
      ...plain.setting,
      layout: onPoint
        ? { kind: 'onPoint', sides: fabric, corners: fabric, alternate: null, oversize: 0 }
        : plain.setting.layout,
      sashing: { where: sashing, width: wide, fabric },
      borders: borders.map((width) => (ends === null ? { fabric, width } : { fabric, width, ends })),
    },
  } as Project;
}

const lengths = (measures: readonly Measure[]) => measures.map(({ from, to }) => to - from);
const sum = (all: readonly number[]) => all.reduce((total, one) => total + one, 0);

describe('the measures along a top', () => {
  it('follow each other without gaps and add up to its finished size', () => {
    fc.assert(
      fc.property(QUILTS, (one) => {
        const project = quilt(one);
        const top = layOut(project);
        const { across, down } = measuresOf(project);
        for (const [row, whole] of [[across, top.width], [down, top.height]] as const) {
          expect(row[0]!.from).toBe(0);
          row.forEach((measure, at) => {
            expect(measure.to).toBeGreaterThan(measure.from);
            if (at > 0) expect(measure.from).toBe(row[at - 1]!.to);
          });
          expect(sum(lengths(row))).toBeCloseTo(whole, 6);
        } // biome-ignore format: a table
        const blocks = across.filter(({ kind }) => kind === 'block');
        expect(blocks).toHaveLength(one.onPoint ? 0 : one.columns);
        for (const length of lengths(blocks)) expect(length).toBeCloseTo(top.block.width, 6);
        const sides = across.filter(({ kind }) => kind === 'border');
        expect(sum(lengths(sides))).toBeCloseTo(2 * sum(one.borders), 6);
      }),
      { numRuns: runs(67, 200) },
    );
  });

  it('are each written once', () => {
    const project = quilt({ seed: 3, perBlock: 8, rows: 2, columns: 3, sashing: 'around', wide: 1.5, borders: [2, 5], ends: null, onPoint: false }); // biome-ignore format: a fixture
    // From the left: outer border 5", inner 2", sashing 1 1/2", block 14".
    expect(eachOnce(measuresOf(project).across).map(({ kind, border, from, to }) => [kind, border, to - from])).toEqual([
      ['border', 2, 5],
      ['border', 1, 2],
      ['sashing', null, 1.5],
      ['block', null, 14],
    ]); // biome-ignore format: a table
  });

  it('add up, as they are printed, to the size that is printed, or the sum is told', () => {
    const met = { same: 0, told: 0 };
    fc.assert(
      fc.property(QUILTS, fc.constantFrom('in' as const, 'cm' as const), (one, unit) => {
        const project = quilt(one);
        project.preferences = { ...project.preferences, unit };
        const top = layOut(project);
        const { across, down } = measuresOf(project);
        const steps = (inches: number) =>
          Math.round(parseLength(formatLength(inches, unit), unit)! * (unit === 'in' ? 16 : 25.4));
        const [wide, high] = [across, down].map((row) => sum(lengths(row).map(steps)));
        const words = roundedSumWords(project);
        if (wide === steps(top.width) && high === steps(top.height)) {
          met.same += 1;
          expect(words).toBeNull();
        } else {
          met.told += 1;
          const [, first, second] = /come to (.*) × (.*)\.$/.exec(speak(words!, unit))!;
          expect([first, second].map((text) => steps(parseLength(text!, unit)!))).toEqual([wide, high]);
        }
      }),
      { numRuns: runs(67, 200) },
    );
    for (const times of Object.values(met)) expect(times).toBeGreaterThan(0);
  });

  it('say of three blocks of 14 3/4" that the top is no 44 1/4" wide', () => {
    const plain = { sashing: 'none' as const, wide: 1, borders: [], ends: null, onPoint: false };
    const project = quilt({ ...plain, seed: 3, perBlock: 10, rows: 1, columns: 3 });
    const { width } = layOut(project);
    expect([width / 3, width].map((one) => formatLength(one, 'in'))).toEqual(['14 3/4"', '44 3/16"']);
    expect(speak(roundedSumWords(project)!)).toBe(
      'Each size is rounded by itself: added up from rounded parts, the top would come to 44 1/4" × 14".',
    );
  });
});
