// The figures on materials, strip sets, wedges and corner pieces, added up as a maker would who has the pattern alone.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wedgeLedger } from '../../../src/cutting/wedges/ledger';
import type { PatternPart } from '../../../src/drawing/pattern/options';
import { setHeight } from '../../../src/geometry/stripSet';
import type { Project } from '../../../src/model/project';
import { formatLength, parseLength } from '../../../src/model/units';
import { runs } from '../../runs';
import { randomProject } from '../samples';
import { written } from './makePdf';
import { partMarks } from './partMarks';
import { bare } from './readPdf';

const QUILTS = fc.record({
  seed: fc.integer({ min: 1, max: 9999 }),
  perBlock: fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
  unit: fc.constantFrom('in' as const, 'cm' as const),
});

function quilt({ seed, perBlock, unit }: { seed: number; perBlock: 6 | 8 | 10 | 12; unit: 'in' | 'cm' }): Project {
  const project = randomProject(seed, perBlock, 1 + (seed % 2), 1 + (seed % 3));
  return { ...project, preferences: { ...project.preferences, unit } };
} // biome-ignore format: a fixture

function pages(project: Project, parts: readonly PatternPart[]) {
  return written(project, 'a4', parts).pages;
}

type Marks = ReturnType<typeof partMarks>;
const texts = (marks: Marks) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
const words = (marks: Marks) => bare(texts(marks).map(({ text }) => text).join(' ')); // biome-ignore format: one line

describe('strip sets on paper', () => {
  it('say what height the widths come to as printed, wherever that is another than the height drawn', () => {
    fc.assert(
      fc.property(QUILTS, (one) => {
        const project = quilt(one);
        const printed = (inches: number) => formatLength(inches, one.unit);
        const text = words(partMarks(pages(project, ['sets']), 'Strip sets'));
        const wanted = project.stripSets.flatMap(({ strips }) => {
          const cut = strips.map(({ width }) => ({ width: parseLength(printed(width), one.unit)! }));
          const sewn = printed(setHeight(cut, project.wedge.seam));
          return sewn === printed(setHeight(strips, project.wedge.seam)) ? [] : [sewn];
        });
        expect(text.split(bare('Sewn from these rounded widths the set is')).length - 1).toBe(wanted.length);
        for (const sewn of wanted) expect(text).toContain(bare(`rounded widths the set is ${sewn} high`));
      }),
      { numRuns: runs(5, 20) },
    );
  });
});

describe('strip sets whose rounding makes them too low', () => {
  // By hand: 5 × 1.965" less 2" is 7.825", enough for a wedge of 7.8". The strips read 1 15/16"; five of those less 2" are
  // 7 11/16", 0.1125" too low, which is 1/8" to the next sixteenth.
  it('are said to be so, and by how much', () => {
    const project = randomProject(1, 8);
    const set = project.stripSets[0]!;
    const strips = Array.from({ length: 5 }, () => ({ fabric: 'a', width: 1.965 }));
    const low: Project = {
      ...project,
      stripSets: [{ ...set, strips }],
      blocks: [],
      wall: { rows: 1, columns: 1, cells: [null] },
      wedge: { ...project.wedge, cutHeight: 7.8 },
    };
    const text = words(partMarks(pages(low, ['sets']), 'Strip sets'));
    expect(text).toContain(bare('Sewn from these rounded widths the set is 7 11/16" high'));
    expect(text).toContain(bare('too low for the wedge: cut strip 1 1/8" wider.'));
  });
});

describe('cutting the wedges on paper', () => {
  it('says how many of the wedges of each set the blocks use, where some are to spare', () => {
    fc.assert(
      fc.property(QUILTS, (one) => {
        const project = quilt(one);
        const text = words(partMarks(pages(project, ['sets']), 'Cutting the wedges'));
        for (const { set, used, left } of wedgeLedger(project)) {
          if (left.up + left.down === 0) continue;
          const parts = [
            ...(used.up > 0 ? [`${used.up} tip up`] : []),
            ...(used.down > 0 ? [`${used.down} tip down`] : []),
          ];
          const uses = parts.length === 0 ? 'none' : parts.join(' and ');
          expect(text).toContain(bare(`The blocks use ${uses} of set ${set.label}.`));
        }
      }),
      { numRuns: runs(7, 20) },
    );
  });

  it('says nothing of wedges to spare where the blocks use all there are', () => {
    const project = randomProject(7, 8);
    const stripSets = wedgeLedger(project).map(({ set, used }) => ({ ...set, cut: used }));
    expect(words(partMarks(pages({ ...project, stripSets }, ['sets']), 'Cutting the wedges'))).not.toContain(
      bare('The blocks use'),
    );
  });

  it('labels the piles with the letter of a set there is, and keeps every word inside the margin', () => {
    fc.assert(
      fc.property(QUILTS, (one) => {
        const project = quilt(one);
        const marks = partMarks(pages(project, ['sets']), 'Cutting the wedges');
        const { label } = project.stripSets[0]!;
        expect(words(marks)).toContain(bare(`label the piles: ${label} up, ${label} down.`));
        const title = texts(marks)[0]!;
        for (const { at, text } of texts(marks)) expect(at.x, text).toBeGreaterThanOrEqual(title.at.x - 1e-6);
      }),
      { numRuns: runs(7, 20) },
    );
  });
});

describe('materials on paper', () => {
  it('give the stitch length alike in both measures', () => {
    const text = texts(partMarks(pages(randomProject(1, 8), ['materials']), 'Materials')).map((one) => one.text).join(' '); // biome-ignore format: one line
    const [, few, many, short, long] =
      /(\d+) to (\d+) stitches to the inch \(a stitch length of ([\d.]+) to ([\d.]+) mm\)/.exec(text)!;
    expect(25.4 / Number(many)).toBeCloseTo(Number(short), 0);
    expect(Math.abs(25.4 / Number(many) - Number(short))).toBeLessThan(0.2);
    expect(Math.abs(25.4 / Number(few) - Number(long))).toBeLessThan(0.2);
  });
});

describe('corner pieces on paper', () => {
  // The decagon's is longer than it is high, the dodecagon's is as long as high: plane geometry.
  it.each([
    [10, 'Rectangles', 'rectangle'],
    [12, 'Squares', 'square'],
  ] as const)('are cut from what the list calls them: %i wedges, %s', (perBlock, many, one) => {
    const all = pages(randomProject(3, perBlock), ['materials', 'templates']);
    expect(words(partMarks(all, 'Cutting list'))).toContain(bare(`${many} for corner pieces`));
    expect(bare(texts(all.flatMap((page) => page.marks)).map(({ text }) => text).join(' '))).toContain(bare(`one from each ${one}`)); // biome-ignore format: one line
  });
});

/** A quilt of one set, a strip 8" wide, and no block. */
function oneSet(length: number, cut: { up: number; down: number } | null): Project {
  const project = randomProject(1, 8);
  const set = { ...project.stripSets[0]!, strips: [{ fabric: 'a', width: 8 }], length, cut };
  return { ...project, stripSets: [set], blocks: [], wall: { rows: 1, columns: 1, cells: [null] } };
}

describe('counts on paper', () => {
  // Two wedges 7 1/2" high, 8 to the block, on a set 8" high: b = 6.547 and p = 3.234 between the first two, so 7" give one and
  // 2b = 13.095 and no more give three.
  it.each([
    [7, '1 wedge from 7" of a set 8" high: 1 tip up; the first is tip up.'],
    [14, '3 wedges from 14" of a set 8" high: 2 tip up and 1 tip down; the first is tip up.'],
    [3, 'No wedge fits on 3" of a set 8" high.'],
  ])('have the right plural, and no “0 wedges”: %i" of cloth', (length, sentence) => {
    const all = pages(oneSet(length, null), ['sets']);
    expect(words(partMarks(all, 'Strip sets'))).toContain(bare(`1 strip, ${length}" long`));
    expect(words(partMarks(all, 'Cutting the wedges'))).toContain(bare(sentence));
  });

  it.each([
    [{ up: 1, down: 0 }, 'Counted by hand, set {set} has 1 tip up.'],
    [
      { up: 7, down: 6 },
      'Counted by hand, set {set} has 7 tip up and 6 tip down. Not drawn: 1 tip up and 1 tip down more than fit on set {set}.',
    ],
    [
      { up: 4, down: 7 },
      'Counted by hand, set {set} has 4 tip up and 7 tip down. Not drawn: 2 tip down more than fit on set {set}.',
    ],
    [{ up: 0, down: 0 }, 'Counted by hand, set {set} has none.'],
  ])('of a set counted by hand stand beside what its drawing shows: %j', (cut, sentence) => {
    const project = oneSet(40, cut);
    const marks = partMarks(pages(project, ['sets']), 'Cutting the wedges');
    // 2m + 1 wedges need (m + 1)·b: 6 × 6.547 = 39.28, so 40" give eleven.
    expect(words(marks)).toContain(
      bare('11 wedges from 40" of a set 8" high: 6 tip up and 5 tip down; the first is tip up.'),
    );
    expect(words(marks)).toContain(bare(sentence.replaceAll('{set}', project.stripSets[0]!.label)));
    const numbers = texts(marks).map(({ text }) => text).filter((text) => /^\d+$/.test(text)); // biome-ignore format: one line
    expect(numbers).toEqual(expect.arrayContaining(['1', '11']));
    expect(numbers).not.toContain('12');
    expect(words(marks).includes(bare('Not drawn'))).toBe(cut.up > 6 || cut.down > 5);
  });
});

describe('the cutting list', () => {
  it.each([
    [400, true],
    [30, false],
  ])('says how a length is cut up, where there is one: sets of %i"', (length, there) => {
    const project = randomProject(1, 8);
    const stripSets = project.stripSets.map((set) => ({ ...set, length, cut: { up: 99, down: 99 } }));
    const text = words(partMarks(pages({ ...project, stripSets }, ['materials']), 'Cutting list'));
    expect(/1lengthof\d/.test(text)).toBe(there);
    expect(text.includes(bare('A strip runs across the fabric, a length along it.'))).toBe(there);
    expect(text).not.toContain(bare('strips across the fabric'));
  });

  it('is called by its name in the order of work', () => {
    const all = pages(randomProject(1, 8), ['cover', 'materials']);
    const order = words(partMarks(all, 'Before you begin'));
    expect(order).toContain(bare('Cut the strips of the sets by the cutting list, and all other pieces as their turn comes.'));
  }); // biome-ignore format: one line

  // Common practice, no source: borders are cut after the top is measured.
  it.each([true, false])(
    'leaves borders uncut until the top is measured, where there are any: %s',
    (there) => {
      const project = randomProject(1, 8);
      const borders = there ? [{ fabric: 'a', width: 3 }] : [];
      const all = pages({ ...project, setting: { ...project.setting, borders } }, ['materials']);
      const said = words(partMarks(all, 'Cutting list')).includes(
        bare(
          'Set the fabric for the borders aside, and cut them to length once the top is sewn and measured.',
        ),
      );
      expect(said).toBe(there);
    },
  );
});

describe('corner triangles that are not squares halved', () => {
  it('are said to be smaller than half of their rectangles', () => {
    const all = pages(randomProject(3, 6), ['templates']);
    const text = bare(texts(all.flatMap((page) => page.marks)).map(({ text }) => text).join(' ')); // biome-ignore format: one line
    expect(text).toContain(
      bare('the rectangles of the cutting list may be larger, to be trimmed after sewing'),
    );
  });
});
