// No page of a pattern is nearly empty: parts follow each other down the pages. Only what must stand alone does: the cover, the
// templates, and a pattern so short that it has one page. Headings never stand at the foot of a page with nothing under them.
import { describe, expect, it } from 'vitest';
import { Composer } from '../../../src/drawing/pattern/composer';
import { STYLES } from '../../../src/drawing/pattern/look';
import { PATTERN_PARTS } from '../../../src/drawing/pattern/options';
import { type Mark, PAPERS, type Page } from '../../../src/drawing/pattern/page';
import { runs } from '../../runs';
import { randomProject } from '../samples';
import { DEMOS_ON_PAPER, type, written, writtenDemo } from './makePdf';

const TOP = 0.7;
const FOOT = 0.8;
const LONG = 120_000;

function lowest(mark: Mark): number {
  if (mark.kind === 'text') return mark.at.y;
  if (mark.kind === 'picture') return mark.centre.y + Math.hypot(mark.width, mark.height) / 2;
  if (mark.kind === 'disc') return mark.centre.y + mark.radius;
  const points = mark.kind === 'line' ? mark.points : mark.outlines.flat();
  return Math.max(...points.map(({ y }) => y));
}

/** How far each page is filled between head and foot, 0–1, with its parts. */
function fills({ pages, paper }: ReturnType<typeof written>) {
  const foot = paper.height - FOOT;
  return pages.map(({ parts, marks }) => {
    const ends = marks.map(lowest).filter((y) => y <= foot + 0.02);
    return { parts, share: (Math.max(TOP, ...ends) - TOP) / (foot - TOP) };
  });
}

/** Pages in a row of parts that may share a page, filled less than a third. */
function nearlyEmpty(pattern: ReturnType<typeof written>): string[] {
  const flowing = fills(pattern).filter(
    ({ parts }) => parts[0] !== pattern.title && !parts.includes('Templates'),
  );
  if (flowing.length < 2) return [];
  return flowing.flatMap(({ parts, share }) =>
    share < 1 / 3 - 0.01 ? [`${parts.join()} ${share.toFixed(2)}`] : [],
  );
}

/** Titles and headings with nothing under them on their page. */
function lonelyHeadings(pages: readonly Page[], foot: number): string[] {
  const sizes: number[] = [STYLES.part.size, STYLES.heading.size];
  return pages.flatMap(({ marks }) => {
    const body = marks.filter((mark) => lowest(mark) <= foot + 0.02);
    const end = Math.max(...body.map(lowest));
    return body.flatMap((mark) =>
      mark.kind === 'text' &&
      mark.face === STYLES.heading.face &&
      sizes.includes(mark.size) &&
      mark.at.y >= end - 1e-6
        ? [mark.text]
        : [],
    );
  });
}

describe('the pages of a pattern', () => {
  it.each(['part', 'heading'] as const)('keep a %s with a tall figure that follows it', (what) => {
    const composer = new Composer(PAPERS.a4, type);
    const bare = (share: number) => ({ width: 1, height: share * composer.height, marks: [] });
    composer.begin('First');
    composer.add(bare(0.4));
    if (what === 'part') composer.begin('Second', 'A line under it.');
    else composer.heading('Second');
    composer.add(bare(0.6));
    composer.finish();
    const names = composer.pages.map(({ parts }) => parts);
    expect(names).toEqual(what === 'part' ? [['First'], ['Second']] : [['First'], ['First']]);
    const texts = composer.pages.map(({ marks }) =>
      marks.map((mark) => (mark.kind === 'text' ? mark.text : mark.kind)),
    );
    expect(texts[0]).toEqual(['First']);
    expect(texts[1]![0]).toBe('Second');
    expect(composer.pages[1]!.marks.every((mark) => lowest(mark) < 2)).toBe(true);
    expect(composer.headings).toEqual([0, 1]);
  });

  it.each(DEMOS_ON_PAPER)(
    'of %s on %s are none of them nearly empty',
    (name, paper) => {
      const pattern = writtenDemo(name, paper, paper === 'a4' ? 'cm' : 'in');
      expect(nearlyEmpty(pattern)).toEqual([]);
      expect(lonelyHeadings(pattern.pages, pattern.paper.height - FOOT)).toEqual([]);
    },
    LONG,
  );

  it(
    'of quilts of any size, number of wedges, paper and choice of parts are none of them nearly empty',
    () => {
      for (let seed = 1; seed <= runs(6, 48); seed += 1) {
        const perBlock = ([6, 8, 10, 12] as const)[seed % 4]!;
        const project = randomProject(seed, perBlock, 1 + (seed % 5), 1 + (seed % 3));
        const parts = PATTERN_PARTS.filter((_, at) => seed % 3 === 0 || (seed >> at) % 2 === 0);
        const pattern = written(
          project,
          seed % 2 === 0 ? 'letter' : 'a4',
          parts.length > 0 ? parts : PATTERN_PARTS,
        );
        expect([seed, ...nearlyEmpty(pattern)]).toEqual([seed]);
        expect([seed, ...lonelyHeadings(pattern.pages, pattern.paper.height - FOOT)]).toEqual([seed]);
      }
    },
    LONG,
  );
});
