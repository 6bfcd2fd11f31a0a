// The usual sizes of a maker who cuts by centimetres are round centimetres, and a project made for her holds no others.
import { describe, expect, it } from 'vitest';
import { mendHeight } from '../../src/cutting/sets/mendHeight';
import { sizeOffers } from '../../src/cutting/top/sizeOffers';
import { cornerSquare } from '../../src/cutting/yardage/triangleSquares';
import { createProject } from '../../src/model/create';
import { USUAL } from '../../src/model/lengths';
import { writeProject } from '../../src/model/reading/read';
import { readProject } from '../../src/model/reading/readText';
import { type LengthUnit, lengthFieldText, parseLength } from '../../src/model/units';

/** Numbers of a project that are no lengths. */
const NO_LENGTHS =
  /\.(version|perBlock|rows|columns|wallLightness|seed|lookalikes|shrinkage|stripsPerRoll|count|extra)$/;

/** Every number in a plain value, with its path. */
function numbers(value: unknown, path = ''): [path: string, number: number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) => numbers(one, `${path}.${key}`));
}

const lengths = (value: unknown) => numbers(value).filter(([path]) => !NO_LENGTHS.test(path));

/** A round number of centimetres: whole halves; of seams and what is made with them quarters. */
function expectRound(path: string, inches: number): void {
  const parts = inches * 2.54 * (/seam/i.test(path) ? 4 : 2);
  expect(Math.abs(parts - Math.round(parts)), `${path}: ${inches * 2.54} cm`).toBeLessThan(1e-9);
}

describe('usual sizes', () => {
  it('are round centimetres for who cuts by centimetres', () => {
    expect(lengths(USUAL.cm)).toHaveLength(37);
    for (const [path, inches] of lengths(USUAL.cm)) expectRound(path, inches);
  });

  it('are whole eighths of an inch for who cuts by the inch', () => {
    for (const [path, inches] of lengths(USUAL.in)) expect((inches * 8) % 1, path).toBe(0);
  });

  it('are all there in both units, near each other: the one is what the other is elsewhere', () => {
    const [inch, metric] = [lengths(USUAL.in), lengths(USUAL.cm)];
    expect(metric.map(([path]) => path)).toEqual(inch.map(([path]) => path));
    for (const [at, [path, inches]] of metric.entries()) {
      const ratio = inches / inch[at]![1];
      expect(ratio, path).toBeGreaterThan(0.75);
      expect(ratio, path).toBeLessThan(1.25);
    }
  });

  it.each<LengthUnit>(['in', 'cm'])(
    'stand in a field in %s as they are, and are read back exactly',
    (unit) => {
      for (const [path, inches] of lengths(USUAL[unit])) {
        const text = lengthFieldText(inches, unit);
        expect(text, path).toMatch(unit === 'cm' ? /^\d+(\.\d{1,2})?$/ : /^\d*( ?\d+\/\d+)?$/);
        expect(parseLength(text, unit), path).toBe(inches);
      }
    },
  );
});

describe('a project made in centimetres', () => {
  const project = createProject('p', 'Metric', 'cm');

  it('has every length on a round centimetre', () => {
    expect(lengths(project).length).toBeGreaterThanOrEqual(10);
    for (const [path, inches] of lengths(project)) expectRound(path, inches);
  });

  it('shares no length with one made in inches', () => {
    const inch = new Map(lengths(createProject('p', 'Inches')));
    for (const [path, inches] of lengths(project)) expect(inches, path).not.toBe(inch.get(path));
  });

  it('comes back from its file as it is', () => {
    expect(readProject(writeProject(project))).toEqual({
      ok: true,
      value: project,
      pictures: new Map(),
      remarks: [],
    });
  });

  it('is offered tops of round sashing and borders', () => {
    const offers = sizeOffers(project, USUAL.cm.top);
    expect(offers.length).toBeGreaterThan(0);
    for (const { sashing, borders } of offers)
      for (const width of [sashing.width, ...borders]) expectRound('width', width);
  });

  it('is mended by a strip of a round width, and its comfortable corner squares are whole centimetres', () => {
    const { wedge } = project;
    const strips = [{ fabric: 'f1', width: 5 / 2.54 }];
    const mend = mendHeight({ label: 'A', strips, length: 40 }, wedge, [], 'cm')!;
    expectRound('width', mend.leastWidth);
    const { comfortable, fits } = cornerSquare(wedge, 'cm');
    expect(comfortable * 2.54).toBeCloseTo(Math.round(comfortable * 2.54), 9);
    expect((comfortable - fits) * 2.54).toBeGreaterThan(0);
  });
});

describe('a file from before the usual sizes went by the unit', () => {
  it('opens with what it says, and with inches where it says nothing', () => {
    const old = createProject('p', 'Old');
    const { buying: _, ...without } = { ...old, preferences: { ...old.preferences, unit: 'cm' as const } };
    const read = readProject(JSON.stringify(without));
    expect(read.ok && read.value).toEqual({ ...without, buying: old.buying });
  });
});
