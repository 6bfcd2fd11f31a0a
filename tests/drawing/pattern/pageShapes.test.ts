// The pages on screen against the finished PDF, which PDF.js reads back: the same words at the same places, the same outlines.
import { describe, expect, it } from 'vitest';
import { PAPERS } from '../../../src/drawing/pattern/page';
import { type PageShapes, pageShapes } from '../../../src/drawing/pattern/pageShapes';
import { patternFor } from '../../../src/drawing/prints';
import { demo } from '../../demo';
import { randomProject } from '../samples';
import { painted, readDemo, wordsOn, written, writtenDemo } from './makePdf';
import { bare, type ReadWords, readPdf } from './readPdf';

const LONG = 240_000;
/** A fiftieth of a point: the PDF is written to five figures. */
const NEAR = 0.02;

function screenPages({ pages, paper }: ReturnType<typeof written>): PageShapes[] {
  return pages.map((page, at) => pageShapes(page, paper, `page${at + 1}`));
}

interface Words {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

function wordsOf({ shapes }: PageShapes): Words[] {
  return shapes.flatMap((shape) =>
    shape.kind === 'text' ? [{ x: Number(shape.x), y: Number(shape.y), text: shape.text }] : [],
  );
}

type Corners = readonly (readonly [number, number])[];

/** Corners of every drawn path. */
function outlinesOf({ shapes }: PageShapes): Corners[] {
  return shapes.flatMap((shape) =>
    shape.kind === 'path'
      ? shape.d
          .replaceAll('Z', '')
          .split('M')
          .slice(1)
          .map((part) => part.split('L').map((pair) => pair.split(',').map(Number) as [number, number]))
      : [],
  );
}

/** Those of `some` that have no equal among `all`; the first corner may be said again at the end. */
function alone(some: readonly Corners[], all: readonly Corners[]): Corners[] {
  const open = (one: Corners) =>
    one.length > 2 && far(one[0]!, one.at(-1)!) < NEAR ? one.slice(0, -1) : one;
  const others = all.map(open);
  return some
    .map(open)
    .filter(
      (one) =>
        !others.some(
          (other) => other.length === one.length && one.every((point, at) => far(point, other[at]!) < NEAR),
        ),
    );
}

function far([ax, ay]: Corners[number], [bx, by]: Corners[number]): number {
  return Math.hypot(ax - bx, ay - by);
}

describe('a page on screen', () => {
  it.each([
    ['harbour-reading-corner', 'letter'],
    ['keepers-winter', 'a4'],
  ] as const)(
    'of %s has the words of the PDF at their places',
    async (name, paper) => {
      const pdf = await readDemo(name, paper);
      const pattern = writtenDemo(name, paper, 'in');
      const pages = screenPages(pattern);
      expect(pages).toHaveLength(pdf.pages.length);
      for (const [at, page] of pdf.pages.entries()) {
        const words = wordsOf(pages[at]!);
        expect(bare(words.map((one) => one.text).join('')), `page ${at + 1}`).toBe(page.text);
        expect(wordsOn(pattern.pages[at]!), `page ${at + 1} as written`).toBe(page.text);
        // A run of the file may begin inside one on screen, or hold several.
        const begins = (one: Words, read: ReadWords) =>
          Math.abs(one.x - read.x) < NEAR || (one.x < read.x && one.text.includes(read.text));
        const level = (one: Words, read: ReadWords) => Math.abs(page.height - one.y - read.y) < NEAR;
        for (const read of page.words) {
          if (read.text.trim() === '') continue;
          const same = words.some((one) => level(one, read) && begins(one, read));
          expect(same, `page ${at + 1} of the file: ${read.text} at ${read.x}, ${read.y}`).toBe(true);
        }
        for (const one of words) {
          if (one.text.trim() === '') continue;
          const same = page.words.some(
            (read) => level(one, read) && one.x > read.x - NEAR && one.x < read.x + read.width + NEAR,
          );
          expect(same, `page ${at + 1} on screen: ${one.text} at ${one.x}, ${one.y}`).toBe(true);
        }
      }
    },
    LONG,
  );

  it(
    'has every outline and line of the PDF, and no other',
    async () => {
      // Cards of blocks are drawn as the block on the cover is; templates are measured from the file in templates.test.ts.
      const parts = ['cover', 'sets', 'setting'] as const;
      const pattern = written(demo('harbour-reading-corner'), 'letter', parts);
      const pdf = await readPdf(painted(pattern, 'letter'));
      const pages = screenPages(pattern);
      expect(pages).toHaveLength(pdf.pages.length);
      for (const [at, page] of pdf.pages.entries()) {
        const read = page.paths.map(({ points }): Corners => points.map(([x, y]) => [x, page.height - y]));
        const shown = outlinesOf(pages[at]!);
        expect(alone(shown, read), `page ${at + 1}, not in the file`).toEqual([]);
        // A disc is a circle on screen and four curves in the file.
        const discs = pages[at]!.shapes.filter(({ kind }) => kind === 'circle').length;
        const others = new Set(alone(read, shown).map((one) => JSON.stringify(one)));
        expect(others.size, `page ${at + 1}, not on screen`).toBeLessThanOrEqual(discs);
      }
    },
    LONG,
  );

  it('has the colours and lines of its marks, and refers to each print by a name of its own', () => {
    const project = demo('harbour-reading-corner');
    const prints = new Set(project.fabrics.flatMap((fabric) => patternFor(fabric)?.id ?? []));
    const seen = new Set<string>();
    for (const [at, page] of writtenDemo('harbour-reading-corner', 'letter', 'in').pages.entries()) {
      const { prints: turned, shapes } = pageShapes(page, PAPERS.letter, `page${at + 1}`);
      const ids = new Set(turned.map(({ id }) => id));
      expect(ids.size).toBe(turned.length);
      for (const { id, of } of turned) {
        expect(prints).toContain(of);
        expect(seen.has(id), id).toBe(false);
        seen.add(id);
      }
      page.marks.forEach((mark, index) => {
        const shape = shapes[index]!;
        if (mark.kind === 'text' || shape.kind === 'text') {
          expect([mark.kind, shape.kind]).toEqual(['text', 'text']);
          return;
        }
        if (mark.kind === 'picture' || shape.kind === 'image') {
          expect([mark.kind, shape.kind]).toEqual(['picture', 'image']);
          return;
        }
        expect(shape.look.stroke).toBe(mark.stroke?.ink);
        expect(Number(shape.look.strokeWidth ?? 0)).toBeCloseTo((mark.stroke?.width ?? 0) * 72, 3);
        const fill = mark.kind === 'line' ? null : mark.fill;
        const printed = fill?.kind === 'cloth' && fill.fabric.cloth.kind === 'print';
        if (printed) expect(ids).toContain(/^url\(#(.+)\)$/.exec(shape.look.fill)?.[1]);
        else
          expect(shape.look.fill).toBe(
            fill === null ? 'none' : fill.kind === 'ink' ? fill.colour : fill.fabric.colour,
          );
      });
    }
    expect(seen.size).toBeGreaterThan(0);
  });

  it('is as large as its paper, in points', () => {
    for (const paper of ['a4', 'letter'] as const) {
      for (const { width, height } of screenPages(written(randomProject(5, 8), paper))) {
        expect([width / 72, height / 72]).toEqual([PAPERS[paper].width, PAPERS[paper].height]);
      }
    }
  });
});
