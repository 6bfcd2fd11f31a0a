// Lengths that the pattern gives as parts and as their sum, added up as a reader does, from the figures as they are printed.
// Whatever cloth must suffice for is never less than what the quilt takes.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Yardage, yardage } from '../../../src/cutting/yardage/yardage';
import { sizeWithSeams } from '../../../src/geometry/allowance';
import { layOut } from '../../../src/geometry/setting';
import type { Phrase } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { parseLength } from '../../../src/model/units';
import { runs } from '../../runs';
import { randomProject } from '../samples';
import { sayIn, told } from './makePdf';

const QUILTS = fc.record({
  seed: fc.integer({ min: 1, max: 9999 }),
  perBlock: fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
  unit: fc.constantFrom('in' as const, 'cm' as const),
  rows: fc.integer({ min: 1, max: 7 }),
  columns: fc.integer({ min: 1, max: 6 }),
  cutHeight: fc.integer({ min: 70, max: 85 }).map((tenths) => tenths / 10),
  width: fc.constantFrom(40, 42.3, 110 / 2.54, 44),
  overhang: fc.constantFrom(0, 3, 4, 10 / 2.54),
  seam: fc.constantFrom(0.25, 0.5, 1 / 2.54),
  pieced: fc.boolean(),
  own: fc.boolean(),
  binding: fc.constantFrom(2.25, 2.5, 6 / 2.54),
  border: fc.constantFrom(0, 2.7, 4, 9 / 2.54),
  spare: fc.constantFrom(0, 2, 5 / 2.54),
});
type Quilt = typeof QUILTS extends fc.Arbitrary<infer One> ? One : never;

function quilt(one: Quilt): Project {
  const project = randomProject(one.seed, one.perBlock, one.rows, one.columns);
  const { backing } = project.buying;
  return {
    ...project,
    wedge: { ...project.wedge, cutHeight: one.cutHeight },
    preferences: { ...project.preferences, unit: one.unit, usableWidth: one.width },
    buying: {
      ...project.buying,
      backing: { ...backing, overhang: one.overhang, seam: one.seam, pieced: one.pieced, fabric: one.own ? 'a' : null },
    },
    setting: {
      ...project.setting,
      borders: one.border > 0 ? [{ fabric: 'b', width: one.border, corners: { kind: 'mitred', spare: one.spare } }] : [],
      binding: { fabric: 'c', cutWidth: one.binding },
    },
  };
} // biome-ignore format: a fixture

/** All sentences of backing, cloth and binding: those of the pattern, and the workings on the screen. */
function sentences(project: Project, list: Yardage): string[] {
  const why: Phrase[] = list.fabrics.flatMap((one) => [...one.why, ...one.lines.flatMap((line) => line.why)]);
  const say = sayIn(project);
  return [...new Set([...told(project, ['setting']), ...why.map((one) => say(one))])];
}

/** A length as it is printed, in sixteenths of an inch or millimetres, so that sums are of whole numbers. */
const LENGTH = String.raw`(\d+(?: \d+\/\d+|\/\d+)?"|[\d.]+ cm)`;

function printed(text: string, unit: 'in' | 'cm'): number {
  const inches = parseLength(text, unit)!;
  return Math.round(unit === 'in' ? inches * 16 : inches * 25.4);
}

interface Sum {
  /** Where L stands in it there is a length, where N stands a count. */
  readonly words: string;
  readonly adds: (...figures: number[]) => boolean;
}

const SUMS: readonly Sum[] = [
  { words: 'op is L × L; with L on every side the backing is L × L', adds: (w, h, o, b, t) => b === w! + 2 * o! && t === h! + 2 * o! },
  { words: 'N widths of L, less L for every seam, cover L', adds: (n, wide, lost, broad) => n! * wide! - (n! - 1) * lost! >= broad! },
  { words: 'is 2 × (L + L) = L', adds: (a, b, sum) => 2 * (a! + b!) === sum },
  { words: 'N strips of L with 1 diagonal join, which takes L, give L for L', adds: (n, long, loss, gives, run) => n! * long! - loss! === gives && gives >= run! },
  { words: 'N strips of L with N diagonal joins of L give L for L', adds: (n, long, joins, loss, gives, run) => n! * long! - joins! * loss! === gives && gives >= run! },
  { words: 'L finished, at each end L for the seam round the point and L to spare, together L', adds: (f, point, spare, long) => f! + 2 * (point! + spare!) === long },
]; // biome-ignore format: one sum a line

function figuresOf({ words }: Pick<Sum, 'words'>, text: string, unit: 'in' | 'cm'): number[][] {
  const pattern = words.replaceAll(/[()+]/g, String.raw`\$&`).replaceAll('L', LENGTH).replaceAll('N', String.raw`(\d+)`);
  const found = text.matchAll(new RegExp(pattern, 'g'));
  return Array.from(found, ([, ...figures]) =>
    figures.map((one) => (/^\d+$/.test(one) ? Number(one) : printed(one, unit))),
  );
} // biome-ignore format: long calls

const figure = (words: string, text: string, unit: 'in' | 'cm') => figuresOf({ words }, text, unit)[0];

describe('lengths and their sums', () => {
  it('of backing, binding and mitres add up as they are printed', () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(QUILTS, (one) => {
        const project = quilt(one);
        for (const text of sentences(project, yardage(project, 'whole'))) {
          for (const sum of SUMS) {
            for (const figures of figuresOf(sum, text, one.unit)) {
              seen.set(sum.words, (seen.get(sum.words) ?? 0) + 1);
              expect(sum.adds(...figures), text).toBe(true);
            }
          }
        }
      }),
      { numRuns: runs(105, 300) },
    );
    for (const { words } of SUMS) expect(seen.get(words) ?? 0, words).toBeGreaterThan(0);
  }, 600_000);

  it('of the cloth to buy add up, length by length and with what is straightened', () => {
    let lengths = 0;
    fc.assert(
      fc.property(QUILTS, (one) => {
        const project = quilt({ ...one, own: false });
        const list = yardage(project, 'whole');
        const say = sayIn(project);
        const bought = [
          ...list.fabrics.map(({ why }) => why),
          [...list.backing!.layout.why, ...list.backing!.apart!.buy.why],
        ].map((why) => why.map((sentence) => say(sentence)).join(' '));
        for (const text of bought) {
          const cut = figure('Together that is L of fabric', text, one.unit);
          const straight = figure('With L to straighten the edge: L', text, one.unit);
          if (cut && straight) expect(cut[0]! + straight[0]!, text).toBe(straight[1]);
        }
        const text = bought.at(-1)!;
        const [together] = figure('Together that is L of fabric', text, one.unit)!;
        const whole = figure('Cut N lengths? of L', text.replace('length of', 'lengths of'), one.unit);
        const cuts = list.backing!.layout.cuts.map(({ along, count }) => ({ along: printed(say('{along}', { along: { inches: along } }), one.unit), count }));
        if (whole) expect(whole[0]! * whole[1]!, text).toBe(together);
        const [first, last] = cuts;
        lengths += 1;
        expect(first!.along * first!.count + (last?.along ?? 0), text).toBe(together);
      }),
      { numRuns: runs(30, 300) },
    );
    expect(lengths).toBe(runs(30, 300));
  }, 600_000);

  it('leave nothing too short', () => {
    fc.assert(
      fc.property(QUILTS, (one) => {
        const project = quilt(one);
        const top = sizeWithSeams(layOut(project), project.wedge.outerSeam);
        const { run, size, cuts, widths, sections } = yardage(project, 'whole').backing!.layout;
        expect(size.width).toBeGreaterThanOrEqual(top.width + 2 * one.overhang - 1e-6);
        expect(size.height).toBeGreaterThanOrEqual(top.height + 2 * one.overhang - 1e-6);
        const [first, last] = cuts;
        expect(first!.across).toBeLessThanOrEqual(one.width + 1e-9);
        if (sections > 1) {
          // The pieces of the last width, sewn end to end, and all widths sewn side by side.
          expect(last!.along * sections - (sections - 1) * 2 * one.seam).toBeGreaterThanOrEqual(first!.along - 1e-6);
          const broad = (widths - 1) * first!.across + last!.across - (widths - 1) * 2 * one.seam;
          expect(broad).toBeGreaterThanOrEqual((run === 'down' ? size.width : size.height) - 1e-6);
        }
        const { width, height } = layOut(project);
        const binding = yardage(project, 'whole').fabrics.flatMap(({ lines }) => lines).find(({ step }) => step === 'binding')!;
        const round = 2 * (width + height) + project.buying.bindingExtra;
        expect(binding.pieces[0]!.height).toBeGreaterThanOrEqual(round - 1e-6);
        const strips = binding.cuts.reduce((sum, { count }) => sum + count, 0);
        const long = binding.cuts.reduce((sum, { count, across, along }) => sum + count * Math.max(across, along), 0);
        expect(long - (strips - 1) * one.binding).toBeGreaterThanOrEqual(round - 1e-6);
      }),
      { numRuns: runs(30, 300) },
    );
  }, 600_000);

  it('of blocks and their top, where they do not add up as they are printed, are said to be rounded', () => {
    const said = told(randomProject(3, 10, 1, 3), ['cover']);
    expect(said).toContain('14 3/4" × 14"');
    expect(said).toContain('44 3/16" × 14"');
    expect([...new Set(said)].filter((one) => one.includes('rounded'))).toEqual([
      'Each size is rounded by itself: added up from rounded parts, the top would come to 44 1/4" × 14".',
    ]);
    expect(told(randomProject(3, 8, 1, 3), ['cover']).filter((one) => one.includes('rounded'))).toEqual([]);
  });

  it('of the last width, pieced, add up to the length it is sewn to', () => {
    let pieced = 0;
    fc.assert(
      fc.property(QUILTS, (one) => {
        const project = quilt({ ...one, pieced: true });
        for (const text of sentences(project, yardage(project, 'whole'))) {
          const found = figure('its N pieces, L × L, end to end', text, one.unit);
          if (!found) continue;
          pieced += 1;
          const [whole] = figure('seam to one length of L', text, one.unit)!;
          const lost = one.unit === 'in' ? one.seam * 32 : one.seam * 50.8;
          expect(Math.abs(found[0]! * found[2]! - (found[0]! - 1) * lost - whole!), text).toBeLessThanOrEqual(0.5 + 1e-6);
        }
      }),
      { numRuns: runs(18, 300) },
    );
    expect(pieced).toBeGreaterThan(runs(1, 20));
  }, 600_000);
}); // biome-ignore format: short lines
