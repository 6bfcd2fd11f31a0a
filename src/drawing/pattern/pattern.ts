// Puts the written pattern together: its parts in their order, and the foot of every page.
import { yardage } from '../../cutting/yardage/yardage';
import { wedgeProblem } from '../../geometry/wedge';
import { phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { failed, ok, type Result } from '../../model/result';
import type { Inches } from '../../model/units';
import type { Term } from '../../model/words/glossary';
import { drawProject } from '../drawProject';
import { Composer } from './composer';
import { type Align, baselineOf, line, shrunkTo, type Type, textFigure } from './lettering';
import { HAIR, MARGIN, STYLES } from './look';
import { PATTERN_PARTS, type PatternOptions, type PatternPart } from './options';
import { type Mark, PAPERS, type Pattern, shifted } from './page';
import { blockAssemblyPage } from './pages/blockAssembly';
import { blockCardPages } from './pages/blockCards';
import { coverPage } from './pages/cover';
import { cuttingPages } from './pages/cuttingList';
import { finishingPages } from './pages/finishingPages';
import { materialsPages } from './pages/materials';
import { overviewPages } from './pages/overview';
import { settingPages } from './pages/settingPages';
import { stripSetPages } from './pages/stripSetCards';
import { wallMapPages } from './pages/wallMap';
import { wedgeCuttingPages } from './pages/wedgeCutting';
import { listeningTo } from './pages/wordList';
import { templatePages } from './templates/templatePages';
import type { Say, Writing } from './writing';

/** The pages of the pattern, or why there are none. `type` measures its letters. */
export function writePattern(
  project: Project,
  options: PatternOptions,
  say: Say,
  type: Type,
): Result<Pattern> {
  const writing = writingPattern(project, options, say, type);
  let step = writing.next();
  while (!step.done) step = writing.next();
  return step.value;
}

/** The same, with a pause after each part, so that a page on screen can be drawn in between. */
export function* writingPattern(
  project: Project,
  { paper, parts }: PatternOptions,
  say: Say,
  type: Type,
): Generator<undefined, Result<Pattern>, undefined> {
  const problem = wedgeProblem(project.wedge);
  if (problem) return failed('impossible-wedge', 'wedge', problem);
  if (parts.length === 0) {
    return failed('no-parts', 'parts', phrase('Choose at least one part of the pattern.'));
  }
  const bare: Writing = {
    project,
    drawing: drawProject(project),
    yardage: yardage(project, 'whole'),
    fabrics: new Map(project.fabrics.map((fabric) => [fabric.id, fabric])),
    say,
    type,
    terms: [],
  };
  const some = new Set<string>(parts);
  const writing = { ...bare, terms: yield* termsOf(bare, paper, some) };
  const composer = yield* laidOut(function* compose(turnBefore) {
    const pages = new Composer(PAPERS[paper], type, turnBefore);
    if (parts[0] === 'wall map') wallMapPages(pages, writing);
    for (const part of PATTERN_PARTS) {
      if (!some.has(part)) continue;
      WRITERS[part](pages, writing);
      yield;
    }
    pages.finish();
    return pages;
  });
  const title = project.name.trim() === '' ? say('A quilt of wedges') : project.name;
  return ok({ title, paper: composer.paper, pages: footed(composer, title, writing) });
}

/** The words of the trade in the chosen parts: they are written once to listen to what they say. None without a cover to list them. */
function* termsOf(
  writing: Writing,
  paper: PatternOptions['paper'],
  some: ReadonlySet<string>,
): Generator<undefined, Term[], undefined> {
  if (!some.has('cover')) return [];
  const { say, terms } = listeningTo(writing.say);
  const heard = { ...writing, say, type: UNMEASURED };
  for (const part of PATTERN_PARTS) {
    if (!some.has(part)) continue;
    WRITERS[part](new Composer(PAPERS[paper], UNMEASURED), heard);
    yield;
  }
  return terms();
}

/** Letters without width: where what is said is listened to, no line need be broken. */
const UNMEASURED: Type = { width: () => 0 };

type Composing = Generator<undefined, Composer, undefined>;

/**
 * Lays the pages out so that none is nearly empty. Parts follow each other down the pages; where a page is left with a few
 * lines all the same, a heading before them begins a page of its own: the nearest that leaves no other page so.
 */
function* laidOut(compose: (turnBefore: number) => Composing): Composing {
  const first = yield* compose(-1);
  const short = first.shortPages[0];
  if (short === undefined) return first;
  let best = first;
  for (let heading = first.headings.length - 1; heading > 0; heading -= 1) {
    const page = first.headings[heading]!;
    if (page > short || page < short - PAGES_BACK) continue;
    const tried = yield* compose(heading);
    if (tried.shortPages.length === 0) return tried;
    if (tried.shortPages.length < best.shortPages.length) best = tried;
  }
  return best;
}

/** So many pages before a nearly empty one are laid out anew. */
const PAGES_BACK = 2;

const WRITERS: Readonly<Record<PatternPart, (composer: Composer, writing: Writing) => void>> = {
  cover: (composer, writing) => {
    coverPage(composer, writing);
    overviewPages(composer, writing);
  },
  materials: (composer, writing) => {
    materialsPages(composer, writing);
    cuttingPages(composer, writing);
  },
  sets: (composer, writing) => {
    stripSetPages(composer, writing);
    wedgeCuttingPages(composer, writing);
  },
  blocks: (composer, writing) => {
    blockAssemblyPage(composer, writing);
    blockCardPages(composer, writing);
    wallMapPages(composer, writing);
  },
  setting: (composer, writing) => {
    settingPages(composer, writing);
    finishingPages(composer, writing);
  },
  templates: templatePages,
};

/** The pages with name, part and page number under a hairline; the cover has no foot. */
function footed(composer: Composer, title: string, { say, type }: Writing): Pattern['pages'] {
  const { paper, width, pages } = composer;
  const right = paper.width - MARGIN;
  const y = paper.height - 0.48;
  return pages.map((page, index) => {
    if (page.parts[0] === title) return page;
    const number = say('{page} of {pages}', { page: index + 1, pages: pages.length });
    const foot: Mark[] = [
      { kind: 'line', points: [{ x: MARGIN, y: y - 0.17 }, { x: right, y: y - 0.17 }], stroke: HAIR },
      ...footWords(title, MARGIN, y, width * 0.29, 'left', type),
      ...footWords(page.parts.join(' · '), (paper.width - width * 0.4) / 2, y, width * 0.4, 'middle', type),
      ...line(number, STYLES.labelStrong, right, y, type, 'right'),
    ]; // biome-ignore format: a foot
    return { ...page, marks: [...page.marks, ...foot] };
  });
}

/** Words in the foot, their first line at `y`; on two lines where one is too short, and smaller where two are. */
function footWords(text: string, x: Inches, y: Inches, width: Inches, align: Align, type: Type): Mark[] {
  const style = shrunkTo(2, text, STYLES.label, width, type);
  const words = textFigure(text, style, width, type, align);
  return shifted(words.marks, x, y - baselineOf(style));
}
