// The pages on screen against the finished PDF, which PDF.js reads back: the same words at the same places, the same outlines.
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { PATTERN_PARTS } from '../../../src/drawing/pattern/options';
import { PAPERS, type PaperName } from '../../../src/drawing/pattern/page';
import { pageSvg } from '../../../src/drawing/pattern/pageSvg';
import { writePattern } from '../../../src/drawing/pattern/pattern';
import type { Project } from '../../../src/model/project';
import { demo } from '../../demo';
import { randomProject } from '../samples';
import { makePdf, sayIn, typeOf } from './makePdf';
import { bare, type ReadWords, readPdf } from './readPdf';

const LONG = 240_000;
/** A fiftieth of a point: the PDF is written to five figures. */
const NEAR = 0.02;

function screenPages(project: Project, paper: PaperName): string[] {
  const written = writePattern(project, { paper, parts: PATTERN_PARTS }, sayIn(project), typeOf());
  if (!written.ok) throw new Error(written.problems[0]!.message.say);
  return written.value.pages.map((page, at) =>
    pageSvg(page, PAPERS[paper], { key: `page${at + 1}`, prints: true }),
  );
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

interface Words {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

function wordsOf(svg: string): Words[] {
  return Array.from(svg.matchAll(/<text x="([^"]+)" y="([^"]+)"[^>]*>([^<]*)</g), ([, x, y, text]) => {
    const plain = text!.replace(/&(#?\w+);/g, (_, name: string) => ENTITIES[name]!);
    return { x: Number(x), y: Number(y), text: plain };
  });
}

type Corners = readonly (readonly [number, number])[];

/** Corners of every drawn path; tiles of prints stand in <defs> and are left out. */
function outlinesOf(svg: string): Corners[] {
  const drawn = svg.replace(/<defs>.*?<\/defs>/s, '');
  return Array.from(drawn.matchAll(/<path d="([^"]+)"/g)).flatMap(([, d]) =>
    d!
      .replaceAll('Z', '')
      .split('M')
      .slice(1)
      .map((part) => part.split('L').map((pair) => pair.split(',').map(Number) as [number, number])),
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
      const project = demo(name);
      const pdf = await readPdf(makePdf(project, paper).bytes, { lines: false });
      const pages = screenPages(project, paper);
      expect(pages).toHaveLength(pdf.pages.length);
      for (const [at, page] of pdf.pages.entries()) {
        const words = wordsOf(pages[at]!);
        expect(bare(words.map((one) => one.text).join('')), `page ${at + 1}`).toBe(page.text);
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
      const project = demo('harbour-reading-corner');
      const pdf = await readPdf(makePdf(project, 'letter').bytes);
      const pages = screenPages(project, 'letter');
      for (const [at, page] of pdf.pages.entries()) {
        const read = page.paths.map(({ points }): Corners => points.map(([x, y]) => [x, page.height - y]));
        const shown = outlinesOf(pages[at]!);
        expect(alone(shown, read), `page ${at + 1}, not in the file`).toEqual([]);
        // A disc is a circle on screen and four curves in the file.
        const discs = pages[at]!.match(/<circle /g)?.length ?? 0;
        const others = new Set(alone(read, shown).map((one) => JSON.stringify(one)));
        expect(others.size, `page ${at + 1}, not on screen`).toBeLessThanOrEqual(discs);
      }
    },
    LONG,
  );

  it('is white paper of its size, sound for a viewer, with names closed off', () => {
    const plain = randomProject(5, 8);
    const project: Project = { ...plain, name: 'Lights & <darks> "of" evening' };
    for (const paper of ['a4', 'letter'] as const) {
      for (const svg of screenPages(project, paper)) {
        const viewer = new Resvg(svg);
        expect(viewer.width / viewer.height).toBeCloseTo(PAPERS[paper].width / PAPERS[paper].height, 2);
        const { pixels } = new Resvg(svg, { fitTo: { mode: 'width', value: 40 } }).render();
        expect([...pixels.subarray(0, 4)]).toEqual([255, 255, 255, 255]);
      }
    }
  });

  it('names each pattern once, refers to no other, and shares no name with another page', () => {
    const pages = screenPages(demo('harbour-reading-corner'), 'letter');
    const seen = new Set<string>();
    for (const svg of pages) {
      const ids = Array.from(svg.matchAll(/<pattern id="([^"]+)"/g), ([, id]) => id!);
      expect(new Set(ids).size).toBe(ids.length);
      for (const [, id] of svg.matchAll(/url\(#([^)]+)\)/g)) expect(ids).toContain(id);
      for (const [, id] of svg.matchAll(/href="#([^"]+)"/g)) expect(ids).toContain(id);
      for (const id of ids.filter((one) => one.startsWith('page'))) {
        expect(seen.has(id)).toBe(false);
        seen.add(id);
      }
    }
    expect(seen.size).toBeGreaterThan(0);
  });
});
