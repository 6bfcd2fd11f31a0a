// What the written pattern says, read back from the file by PDF.js: nothing is left out, nothing runs off the page.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clothText } from '../../../src/cutting/yardage/clothLength';
import { pieceWords, stripsAlike } from '../../../src/cutting/yardage/lineWords';
import { yardage } from '../../../src/cutting/yardage/yardage';
import { writePattern } from '../../../src/drawing/pattern/pattern';
import type { DeviceLetters } from '../../../src/drawing/pattern/pdf/pdfType';
import { sellingUnit } from '../../../src/model/buying';
import { createProject } from '../../../src/model/create';
import { findSet } from '../../../src/model/find';
import type { Project } from '../../../src/model/project';
import { demo } from '../../demo';
import { runs } from '../../runs';
import { randomProject } from '../samples';
import { makePdf, painted, readDemo, sayIn, type, wordsOn, written, writtenDemo } from './makePdf';
import { bare, type ReadPdf, readPdf } from './readPdf';

const LONG = 120_000;

function textOf(pdf: ReadPdf): string {
  return pdf.pages.map((page) => page.text).join('\n');
}

/** Nothing may come nearer to the edge than this, points: printers leave so much blank. */
const EDGE = 18;

function expectInside(pdf: ReadPdf): void {
  const outside = pdf.pages.flatMap((page, index) =>
    page.words
      .filter(
        ({ x, y, width, height }) =>
          !(x > EDGE && y > EDGE && x + width < page.width - EDGE && y + height < page.height - EDGE),
      )
      .map(({ text }) => `page ${index + 1}: ${text}`),
  );
  expect(outside).toEqual([]);
}

/** Everything a maker works from, in words as they are set. */
function promised(project: Project): string[] {
  const say = sayIn(project);
  const { fabrics } = yardage(project, 'whole');
  return [
    ...fabrics.flatMap((one) => [
      one.fabric.name,
      one.buy.kind === 'length' ? clothText(one.buy.inches, sellingUnit(project)).figure : '',
      ...one.lines.flatMap((line) => line.pieces.map((piece) => say(pieceWords(piece)))),
      ...stripsAlike(one.layout).map(({ words }) => say(words)),
    ]),
    ...project.stripSets.filter((set) => set.strips.length > 0).map((set) => `Set ${set.label}`),
    ...project.blocks.map((block) => `Block ${block.number}`),
  ];
}

/** A block's card as it is read: its places in order. */
function cardText(project: Project, number: number): string {
  const block = project.blocks.find((one) => one.number === number)!;
  return bare(
    block.places
      .map((place, at) => `${at + 1} Set ${findSet(project, place!.set)!.label}, tip ${place!.tip}`)
      .join(''),
  );
}

const PIXELS = { data: new Uint8ClampedArray(8 * 4 * 4).fill(200), width: 8, height: 4 };

/** A device that has only some letters, each half as wide as high; it notes what it is asked to draw. */
function deviceWith(some: RegExp, runs: string[]): DeviceLetters {
  return {
    has: (letter) => some.test(letter),
    width: (run) => run.length / 2,
    picture(run) {
      runs.push(run);
      return { pixels: PIXELS, left: 0, rise: 0.8, width: run.length / 2, height: 1 };
    },
  };
}

describe('the written pattern', () => {
  it.each([
    ['harbour-reading-corner', 'letter'],
    ['keepers-winter', 'a4'],
  ] as const)(
    'of %s has every yardage line, every set and every block card',
    async (name, paper) => {
      const project = demo(name);
      const pdf = await readDemo(name, paper);
      const text = textOf(pdf);
      for (const words of promised(project)) expect(text).toContain(bare(words));
      for (const block of project.blocks) expect(text).toContain(cardText(project, block.number));
      expectInside(pdf);
      expect(pdf.bookmarks).toEqual([
        project.name,
        'Before you begin',
        'Materials',
        'Cutting list',
        'Strip sets',
        'Cutting the wedges',
        'Making a block',
        'Block cards',
        'Map of the wall',
        'Setting the top',
        'Finishing',
        'Templates',
      ]);
    },
    LONG,
  );

  it(
    'holds eighty blocks, in centimetres on A4',
    async () => {
      const project = demo('plum-orchard');
      const metric: Project = { ...project, preferences: { ...project.preferences, unit: 'cm' } };
      const pattern = writtenDemo('plum-orchard', 'a4', 'cm');
      const pdf = await readPdf(painted(pattern, 'a4'), { lines: false });
      const text = textOf(pdf);
      expect(project.blocks).toHaveLength(80);
      expect(pdf.pages.map((page) => page.text)).toEqual(pattern.pages.map(wordsOn));
      for (const words of promised(metric)) expect(text).toContain(bare(words));
      for (const block of project.blocks) expect(text).toContain(cardText(project, block.number));
      expect(text).not.toMatch(/\d\/\d/);
      expectInside(pdf);
    },
    LONG,
  );

  it('holds one block, and a quilt nothing is cut for yet', async () => {
    const one = randomProject(7, 8);
    const pdf = await readPdf(makePdf(one, 'a4').bytes, { lines: false });
    expect(textOf(pdf)).toContain(cardText(one, 1));
    expectInside(pdf);
    const bare1 = await readPdf(makePdf(createProject('p', 'Nothing yet'), 'letter').bytes, { lines: false });
    expect(bare1.bookmarks).toContain('Templates');
    expect(bare1.bookmarks).not.toContain('Block cards');
    expectInside(bare1);
  });

  it(
    'keeps every word on its page, whatever things are called',
    async () => {
      const name = fc.oneof(
        fc.string({ minLength: 0, maxLength: 120 }),
        fc.constantFrom(
          'W'.repeat(120),
          'Ünnötig lang '.repeat(9),
          '¾ yard of 7/8 and 14 1/4" '.repeat(4),
          'Ćmą łódź',
        ),
      );
      await fc.assert(
        fc.asyncProperty(
          fc.record({
            seed: fc.integer({ min: 0, max: 1_000 }),
            perBlock: fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
            title: name,
            fabric: name,
            notes: fc.oneof(name, fc.constant('Long. '.repeat(2_000)), fc.constant('Line\n'.repeat(120))),
            paper: fc.constantFrom('a4' as const, 'letter' as const),
          }),
          async ({ seed, perBlock, title, fabric, notes, paper }) => {
            const project = randomProject(seed, perBlock, 2, 2);
            const named: Project = {
              ...project,
              name: title,
              notes,
              fabrics: project.fabrics.map((one) => ({ ...one, name: fabric })),
            };
            expectInside(await readPdf(makePdf(named, paper).bytes, { lines: false }));
          },
        ),
        { seed: 12, numRuns: runs(2, 12) },
      );
    },
    LONG,
  );

  it('shows the blocks that hang turned as turned', () => {
    const project = randomProject(3, 8, 2, 2);
    const pages = written(project, 'letter', ['blocks']).pages.map(wordsOn);
    const map = pages.find((text) => text.startsWith('Mapofthewall'))!;
    // The sample turns its blocks by 0, 1, 2 and 3 quarters clockwise.
    expect(map).toContain(bare('1 · 2 turned right'));
    expect(map).toContain(bare('3 upside down · 4 turned left'));
  });

  it('says which neighbours do not nest, on the card of the block', () => {
    const project = randomProject(3, 8);
    const [block] = project.blocks;
    const places = block!.places.map((place, at) => (at === 1 ? { ...place!, tip: 'up' as const } : place));
    const flat: Project = { ...project, blocks: [{ ...block!, places }] };
    const text = written(flat, 'letter', ['blocks']).pages.map(wordsOn).join('\n');
    expect(text).toContain(bare('Places 1 and 2 do not nest'));
    expect(text).toContain(bare('Places 2 and 3 do not nest'));
    expect(text).not.toContain(bare('Places 3 and 4 do not nest'));
  });

  it('tells which letters its typeface lacks, and sets Latin letters beyond English', () => {
    const project = { ...randomProject(5, 8), name: 'Łódź čaj 山' };
    const { missing } = makePdf(project, 'a4', ['cover']);
    expect([...missing]).toEqual(['山']);
  });

  it('has a title, a language and its maker among the properties of the file', async () => {
    const { bytes } = makePdf(randomProject(5, 8), 'a4', ['cover']);
    const pdf = await readPdf(bytes, { lines: false });
    expect(pdf).toMatchObject({ title: 'Sample', creator: 'Wedgewall', language: 'en-GB' });
  });

  it('sets letters its typeface lacks as pictures where the device has them, words of them as one', async () => {
    const runs: string[] = [];
    const { missing, pictured, bytes } = makePdf(
      { ...randomProject(5, 8), name: 'Quilt שלום עולם 山' },
      'a4',
      ['cover'],
      deviceWith(/\p{Script=Hebrew}/u, runs),
    );
    expect([...missing]).toEqual(['山']);
    expect([...pictured].join('')).toBe('שלוםע');
    // In the title and in the foot, each in its own ink.
    expect(new Set(runs)).toEqual(new Set(['שלום עולם']));
    const pdf = await readPdf(bytes);
    expectInside(pdf);
    // On the cover once; the foot of a page bears it too, but the cover has none.
    expect(pdf.pages[0]!.pictures).toBe(1);
  });

  it('of the map of the wall alone is one page that names every block', async () => {
    const project = demo('harbour-reading-corner');
    const pdf = await readPdf(makePdf(project, 'letter', ['wall map']).bytes, { lines: false });
    expect(pdf.pages).toHaveLength(1);
    const text = textOf(pdf);
    expect(text).toContain('Mapofthewall');
    for (const block of project.blocks) expect(text).toContain(String(block.number));
    expectInside(pdf);
  });

  it('is refused with a reason for a wedge no block can be made of, and for no parts', () => {
    const project = createProject('p', 'Bad');
    const say = sayIn(project);
    const bad: Project = { ...project, wedge: { ...project.wedge, cutHeight: 1, outerSeam: 0.5 } };
    const options = { paper: 'a4', parts: ['templates'] } as const;
    expect(writePattern(bad, options, say, type)).toMatchObject({
      ok: false,
      problems: [{ code: 'impossible-wedge', path: 'wedge' }],
    });
    expect(writePattern(project, { paper: 'a4', parts: [] }, say, type)).toMatchObject({
      ok: false,
      problems: [{ code: 'no-parts' }],
    });
  });
});
