// Strips → grid → strips, and the grid → CSV → grid: nothing is lost on either way.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvRows, csvText } from '../../../src/cutting/kits/csv';
import { heldLines, shownLines, shownWidths } from '../../../src/cutting/onHand/gridShape';
import { placeTable } from '../../../src/cutting/onHand/placeTable';
import {
  countsIn,
  gridOf,
  isSameInches,
  lengthsOf,
  type StripGrid,
  widthsOf,
} from '../../../src/cutting/onHand/stripGrid';
import { isTable, readCounts, readStripTable, tableRows } from '../../../src/cutting/onHand/stripTable';
import { changeLengths, changeWidth, enterStrips } from '../../../src/editing/commands/stripGrid';
import { createProject } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import type { Fabric, Project, StripOnHand } from '../../../src/model/project';
import { CENTIMETRES_PER_INCH, type LengthUnit } from '../../../src/model/units';
import { done, refusal } from '../../editing/outcomes';
import { runs } from '../../runs';

type Strips = Omit<StripOnHand, 'id'>;

const nameChars = fc.constantFrom(
  '"',
  ',',
  ';',
  '\t',
  '\n',
  'a',
  'B',
  ' ',
  'é',
  "'",
  '=',
  '+',
  '-',
  '@',
  '5',
  '/',
);
const names = fc.uniqueArray(
  fc
    .oneof(
      fc.string({ unit: nameChars, minLength: 1, maxLength: 12 }),
      fc.string({ minLength: 1, maxLength: 20 }),
    )
    .filter((name) => name.trim() !== ''),
  { minLength: 1, maxLength: 8, selector: (name) => name.trim().toLowerCase() },
);
/** Widths and lengths as people type them: to the sixteenth of an inch, or to the millimetre. */
const inches = fc.integer({ min: 10, max: 160 }).map((sixteenths) => sixteenths / 16);
const centimetres = fc.integer({ min: 20, max: 400 }).map((mm) => mm / 10 / CENTIMETRES_PER_INCH);

interface Basket {
  readonly project: Project;
  readonly unit: LengthUnit;
}

const basket: fc.Arbitrary<Basket> = fc
  .record({ names, unit: fc.constantFrom<LengthUnit>('in', 'cm') })
  .chain(({ names: some, unit }) => {
    const length = unit === 'cm' ? centimetres : inches;
    const strip = fc.record({
      fabric: fc.integer({ min: 0, max: some.length - 1 }).map((at) => `x${at}`),
      width: length,
      length: unit === 'cm' ? centimetres.filter((one) => one >= 1) : inches.filter((one) => one >= 1),
      count: fc.integer({ min: 1, max: 300 }),
    });
    const key = (one: Strips) => `${one.fabric} ${one.width} ${one.length}`;
    return fc.uniqueArray(strip, { maxLength: 40, selector: key }).map((strips) => {
      const project = createProject('p', 'Test');
      project.preferences.unit = unit;
      project.fabrics = some.map(
        (name, at): Fabric => ({
          id: `x${at}`,
          name,
          colour: '#445566',
          cloth: { kind: 'plain' },
          background: at === 0,
        }),
      );
      project.setting.cornerFabric = 'x0';
      project.setting.sashing.fabric = 'x0';
      project.stripsOnHand = strips.map((one, at) => ({ ...one, id: `h${at + 1}` }));
      return { project, unit };
    });
  });

/** The other way: the strips of a grid, line by line; empty cells give none. */
function stripsIn({ lines, widths, counts }: StripGrid): Strips[] {
  return lines.flatMap((line, at) =>
    widths.flatMap((width, column) => {
      const count = counts[at]![column]!;
      return count > 0 ? [{ ...line, width, count }] : [];
    }),
  );
}
const bare = (rows: readonly (Strips & { id?: string })[]) =>
  rows
    .map(({ fabric, width, length, count }) => [fabric, width, length, count])
    .sort((one, other) => JSON.stringify(one).localeCompare(JSON.stringify(other)));

describe('the grid of strips', () => {
  it('holds every strip once: strips → grid → strips, and the grid again, are the same', () => {
    fc.assert(
      fc.property(basket, ({ project }) => {
        const grid = gridOf(project.fabrics, project.stripsOnHand, 40);
        const strips = stripsIn(grid);
        expect(bare(strips)).toEqual(bare(project.stripsOnHand));
        expect(gridOf(project.fabrics, strips, 40)).toEqual(grid);
        // Every fabric has a line, and no column or line stands twice.
        expect(new Set(grid.lines.map((line) => line.fabric)).size).toBe(project.fabrics.length);
        expect(new Set(grid.widths).size).toBe(grid.widths.length);
      }),
      { seed: 101, numRuns: runs(170, 500) },
    );
  });

  it('entered cell by cell into a quilt without strips, gives the strips it was read from', () => {
    fc.assert(
      fc.property(basket, ({ project }) => {
        let now: Project = { ...project, stripsOnHand: [] };
        for (const strip of stripsIn(gridOf(project.fabrics, project.stripsOnHand, 40)))
          now = done(now, enterStrips(now, [strip]));
        expect(bare(now.stripsOnHand)).toEqual(bare(project.stripsOnHand));
      }),
      { seed: 102, numRuns: runs(20, 60) },
    );
  });
});

describe('the grid as CSV', () => {
  const heads = { fabric: 'Fabric', length: 'Length' };

  it('is read again as it was written: grid → CSV → strips of the same fabrics, or of new ones of the same names', () => {
    fc.assert(
      fc.property(
        basket.filter(({ project }) => project.stripsOnHand.length > 0),
        ({ project, unit }) => {
          const grid = gridOf(project.fabrics, project.stripsOnHand, 40);
          const text = csvText(tableRows(grid, project.fabrics, unit, heads));
          // The unit stands in the text, so that a quilt in the other unit reads the same.
          for (const reading of ['in', 'cm'] as const) {
            const table = readStripTable(text, reading);
            if (!table.ok) throw new Error(speak(table.problems[0]!.message));
            const placed = placeTable(table.value, project.fabrics, [], 40);
            if (!placed.ok) throw new Error(speak(placed.problems[0]!.message));
            expect(placed.value.fresh).toEqual([]);
            const from = { ...project, stripsOnHand: [] };
            const now = done(from, enterStrips(from, placed.value.cells));
            expect(bare(now.stripsOnHand)).toEqual(bare(project.stripsOnHand));
          }
          const table = readStripTable(text, unit);
          const known = project.fabrics.slice(0, 1);
          const placed = placeTable(table.ok ? table.value : { widths: [], lines: [] }, known, [], 40);
          const missing = new Set(project.stripsOnHand.map((row) => row.fabric).filter((id) => id !== 'x0'));
          const ofIt = project.fabrics
            .filter((fabric) => missing.has(fabric.id))
            .map((fabric) => fabric.name.trim());
          expect(placed.ok && placed.value.fresh).toEqual(ofIt);
        },
      ),
      { seed: 103, numRuns: runs(85, 500) },
    );
  });

  it('reads rows back as csvText wrote them, whatever the cells hold', () => {
    const cell = fc.oneof(fc.string(), fc.string({ unit: nameChars }));
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { maxLength: 5 }), (rows) => {
        expect(csvRows(csvText(rows))).toEqual(rows);
      }),
      { seed: 104, numRuns: runs(330, 1000) },
    );
  });
});

describe('a pasted table', () => {
  const read = (text: string, unit: LengthUnit = 'in') => {
    const table = readStripTable(text, unit);
    return table.ok ? table.value : speak(table.problems[0]!.message);
  };

  it('is read as spreadsheets copy it, with fractions, inch marks, decimal commas and empty ends', () => {
    expect(read('\t1 1/4"\t1½\t2.5\t\nRust\t4\t\t2\nSlate\t\t1\t\t\n')).toEqual({
      widths: [1.25, 1.5, 2.5],
      lines: [
        { name: 'Rust', length: null, counts: [4, null, 2] },
        { name: 'Slate', length: null, counts: [null, 1, null] },
      ],
    });
    expect(read('\t1 1/4"\t1 1/2"\nRust\t4\t2')).toEqual({
      widths: [1.25, 1.5],
      lines: [{ name: 'Rust', length: null, counts: [4, 2] }],
    });
    expect(read('Stoff;Länge;2,54;5,08\nRost;101,6;4;0\n', 'cm')).toEqual({
      widths: [1, 2],
      lines: [{ name: 'Rost', length: 40, counts: [4, 0] }],
    });
  });

  it.each([
    ['Rust', 'A table has the cut widths in its first row'],
    ['"Rust\t1', 'A quotation mark is opened and not closed.'],
    ['\t1\twide\nRust\t1\t2', 'Row 1, column 3 is “wide”; it should be a cut width from 1/4" to 60".'],
    ['\t1\t70\nRust\t1\t2', 'Row 1, column 3 is “70”'],
    ['\t1\nRust\tfour', 'Row 2, column 2 is “four”; it should be a whole number up to 10,000.'],
    ['\t1\nRust\t2.5', 'Row 2, column 2 is “2.5”'],
    ['\t1\nRust\t10001', 'Row 2, column 2 is “10001”'],
    ['\t1\n\t4', 'Row 2, column 1 is empty; it should be the name of a fabric.'],
    ['\t1\nRust\t4\t5', 'Row 2, column 3 is “5”; it should be empty: no width stands above it.'],
    ['\tlong\t1\nRust\t0.5\t5', 'Row 2, column 2 is “0.5”; it should be a length from 1" to 4,000".'],
  ])('refuses %j, naming the place', (text, words) => {
    expect(read(text)).toContain(words);
  });

  it('is told from one entry of a field, and a block of counts from a table with names', () => {
    expect(['4', '1 1/2', '1,5', 'Rust'].map((text) => isTable(text, 'in'))).toEqual([
      false,
      false,
      false,
      false,
    ]);
    expect(['4\t2', '4\n2', '4,2,1', '4;2'].map((text) => isTable(text, 'in'))).toEqual([
      true,
      true,
      true,
      true,
    ]);
    expect(readCounts('4\t\t2\r\n1\t0\t\r\n')).toEqual([
      [4, null, 2],
      [1, 0, null],
    ]);
    expect(readCounts('\t1\nRust\t4')).toBeNull();
  });

  it('goes to fabrics by name, keeps empty cells, and says what is new and what would be overwritten', () => {
    const project = createProject('p', 'Test');
    const rust: Fabric = { ...project.fabrics[0]!, id: 'f2', name: 'Rust', background: false };
    project.fabrics.push(rust);
    project.stripsOnHand = [
      { id: 'h1', fabric: 'f2', width: 1, length: 36, count: 3 },
      { id: 'h2', fabric: 'f2', width: 2, length: 36, count: 5 },
    ];
    const table = readStripTable('\t1\t1.5\t2\n rust \t4\t2\t\nHeather\t1\t\t\nheather\t\t2\t', 'in');
    const placed = placeTable(
      table.ok ? table.value : { widths: [], lines: [] },
      project.fabrics,
      project.stripsOnHand,
      40,
    );
    expect(placed).toEqual({
      ok: true,
      value: {
        cells: [
          { fabric: 'f2', length: 36, width: 1, count: 4 },
          { fabric: 'f2', length: 36, width: 1.5, count: 2 },
          { fabric: 0, length: 40, width: 1, count: 1 },
          { fabric: 0, length: 40, width: 1.5, count: 2 },
        ],
        fresh: ['Heather'],
        strips: 9,
        overwritten: 1,
      },
    });
    const words = (text: string, fabrics = project.fabrics) => {
      const one = readStripTable(text, 'in');
      const outcome = one.ok ? placeTable(one.value, fabrics, [], 40) : one;
      return outcome.ok ? '' : speak(outcome.problems[0]!.message);
    };
    expect(words('\t1\nRust\t4\nRUST\t5')).toBe('The table holds RUST, 1" wide, twice.');
    const twins = [...project.fabrics, { ...rust, id: 'f3' }];
    expect(words('\t1\nRust\t4', twins)).toBe(
      'Two fabrics are called Rust. Give them different names first.',
    );
    expect(words(`\t1\n${'x'.repeat(121)}\t4`)).toContain('is longer than 120 characters');
  });
});

describe('columns and lines on show', () => {
  it('hold every strip, what was asked for, and nothing twice', () => {
    const asked = fc.array(inches, { maxLength: 4 });
    fc.assert(
      fc.property(basket, asked, asked, ({ project }, widths, lengths) => {
        const { fabrics, stripsOnHand } = project;
        const once = (all: readonly number[]) => [...new Set(all)];
        const columns = shownWidths(once(widths), widthsOf(stripsOnHand));
        expect(new Set(columns)).toEqual(new Set([...widths, ...stripsOnHand.map((row) => row.width)]));
        expect(new Set(columns).size).toBe(columns.length);
        // What was asked for keeps its order.
        expect(columns.filter((width) => widths.includes(width))).toEqual(once(widths));
        const first = fabrics[0]!.id;
        const shape = { widths: [], usual: 40, lengths: new Map([[first, once(lengths)]]) };
        const lines = shownLines(fabrics, stripsOnHand, shape);
        expect(
          stripsIn({ widths: columns, lines, counts: countsIn(stripsOnHand, lines, columns) }),
        ).toHaveLength(stripsOnHand.length);
        // Held as they stand, they stay when every strip is gone.
        const held = heldLines(shape, lines, new Set(fabrics.map((fabric) => fabric.id)));
        expect(shownLines(fabrics, [], held)).toEqual(lines);
      }),
      { seed: 105, numRuns: runs(100, 300) },
    );
  });
});

describe('another width for a column, another length for lines', () => {
  it('loses no strip, and leaves none of the old width or length', () => {
    fc.assert(
      fc.property(
        basket.filter(({ project }) => project.stripsOnHand.length > 0),
        inches.filter((width) => width > 0.6),
        ({ project }, to) => {
          const { width, fabric, length } = project.stripsOnHand[0]!;
          fc.pre(!isSameInches(width, to) && !isSameInches(length, to) && to >= 1);
          const count = (one: Project) => one.stripsOnHand.reduce((sum, row) => sum + row.count, 0);
          const wide = done(project, changeWidth(width, to));
          expect(count(wide)).toBe(count(project));
          expect(widthsOf(wide.stripsOnHand).some((one) => isSameInches(one, width))).toBe(false);
          const long = done(project, changeLengths([{ fabric, length }], to));
          expect(count(long)).toBe(count(project));
          expect(lengthsOf(long.stripsOnHand, fabric).some((one) => isSameInches(one, length))).toBe(false);
          const others = (one: Project) => one.stripsOnHand.filter((row) => row.fabric !== fabric);
          expect(others(long)).toEqual(others(project));
        },
      ),
      { seed: 106, numRuns: runs(100, 300) },
    );
  });

  it('is refused beyond the most of one kind', () => {
    const project = createProject('p', 'Test');
    project.stripsOnHand = [
      { id: 'h1', fabric: 'f1', width: 1, length: 40, count: 9_000 },
      { id: 'h2', fabric: 'f1', width: 2, length: 40, count: 9_000 },
    ];
    expect(refusal(project, changeWidth(1, 2))).toBe('These would be more than 10,000 strips of one kind.');
  });
});
