// Lays out the written pattern and makes its PDF, in parts: loads the library and the typefaces when they are first asked for, and tells
// its progress. drawing/pattern decides what is on the pages; patternPdf.ts is the page's side.
import latinText from '@fontsource/figtree/files/figtree-latin-400-normal.woff?url';
import latinStrong from '@fontsource/figtree/files/figtree-latin-600-normal.woff?url';
import widerText from '@fontsource/figtree/files/figtree-latin-ext-400-normal.woff?url';
import widerStrong from '@fontsource/figtree/files/figtree-latin-ext-600-normal.woff?url';
import latinDisplay from '@fontsource/young-serif/files/young-serif-latin-400-normal.woff?url';
import widerDisplay from '@fontsource/young-serif/files/young-serif-latin-ext-400-normal.woff?url';
import { PAPERS, type Pattern } from '../../drawing/pattern/page';
import { pageShapes } from '../../drawing/pattern/pageShapes';
import { writingPattern } from '../../drawing/pattern/pattern';
import { openFont } from '../../drawing/pattern/pdf/openFont';
import { type PdfKit, PdfSheets } from '../../drawing/pattern/pdf/pdfSheets';
import type { Say } from '../../drawing/pattern/writing';
import { phrase, speak } from '../../model/phrase';
import { ok, type Result } from '../../model/result';
import type { Answers } from '../workers/protocol';
import { deviceLetters } from './deviceLetters';
import type { MadePdf, PatternJobs, PdfProgress, Writing } from './patternJobs';

const FONTS = {
  display: [latinDisplay, widerDisplay],
  text: [latinText, widerText],
  strong: [latinStrong, widerStrong],
} as const;

/** What the worker does with its asks. */
export const PATTERN_ANSWERS: Answers<PatternJobs> = {
  async layOut({ project, options, writing, number }, work) {
    measure ??= new PdfSheets(await loadKit(), PAPERS.a4).type;
    const going = untilStopped(writingPattern(project, options, sayIn(writing), measure));
    const laid = await work.run(going, (_, due) => due && work.tell(null));
    if (!laid?.ok) return laid;
    kept = { number, pattern: laid.value };
    return ok({ ...laid.value, pages: laid.value.pages.map(({ parts }) => ({ parts })) });
  },
  page({ number, page }) {
    const pattern = keptUnder(number);
    return pattern && pageShapes(pattern.pages[page]!, pattern.paper, `page${page + 1}`);
  },
  async make(ask, work) {
    work.tell({ doing: phrase('Fetching the typefaces …'), share: 0 });
    const kit = await loadKit();
    return work.run(making(kit, ask), (progress) => work.tell(progress));
  },
};

/** The pages last laid out for the screen. */
let kept: { readonly number: number; readonly pattern: Pattern } | null = null;

function keptUnder(number: number | null): Pattern | null {
  return kept?.number === number ? kept.pattern : null;
}

/** Measures letters for pages on screen; it remembers all it has measured. */
let measure: PdfSheets['type'] | null = null;

/** The same work, which ends with null after the part at which it is told to stop. */
function* untilStopped(
  writing: Generator<undefined, Result<Pattern>, undefined>,
): Generator<null, Result<Pattern> | null, boolean> {
  for (;;) {
    const step = writing.next();
    if (step.done) return step.value;
    if (yield null) return null;
  }
}

type MakeAsk = PatternJobs['make']['ask'];

function* making(kit: PdfKit, ask: MakeAsk): Generator<PdfProgress, Result<MadePdf> | null, boolean> {
  const sheets = new PdfSheets(kit, PAPERS[ask.options.paper], new Map(ask.pictures));
  const there = keptUnder(ask.laidOut);
  const written = there ? ok(there) : yield* layingOut(ask, sheets);
  if (!written?.ok) return written;
  const { pages, title } = written.value;
  for (const [index, page] of pages.entries()) {
    const values = { page: index + 1, pages: pages.length };
    const doing = phrase('Drawing page {page} of {pages} …', values);
    if (yield { doing, share: 0.1 + (0.85 * index) / pages.length }) return null;
    sheets.paint(page);
  }
  if (yield { doing: phrase('Packing it …'), share: 0.95 }) return null;
  const bytes = new Uint8Array(sheets.bytes(title));
  const { missing, pictured } = sheets.type;
  return ok({ bytes, pages: pages.length, missing: [...missing], pictured: [...pictured] });
}

function* layingOut(
  { project, options, writing }: MakeAsk,
  { type }: PdfSheets,
): Generator<PdfProgress, Result<Pattern> | null, boolean> {
  const going = untilStopped(writingPattern(project, options, sayIn(writing), type));
  let step = going.next(false);
  while (!step.done) step = going.next(yield { doing: phrase('Laying out the pages …'), share: 0.05 });
  return step.value;
}

/** English sentences are their own translation; another language needs a look-up here. */
function sayIn({ unit, numbers }: Writing): Say {
  return (sentence, values) =>
    speak(
      typeof sentence === 'string' ? phrase(sentence, values) : sentence,
      unit,
      undefined,
      undefined,
      numbers,
    );
}

let kit: Promise<PdfKit> | null = null;

/** Loads the library and typefaces once; after a failure the next call tries again. */
function loadKit(): Promise<PdfKit> {
  kit ??= freshKit().catch((error: unknown) => {
    kit = null;
    throw error;
  });
  return kit;
}

async function freshKit(): Promise<PdfKit> {
  const [{ jsPDF }, display, text, strong] = await Promise.all([
    import('jspdf'),
    ...([FONTS.display, FONTS.text, FONTS.strong] as const).map((files) => Promise.all(files.map(loadFont))),
  ] as const);
  const device = deviceLetters();
  const fonts = { display: display!, text: text!, strong: strong! };
  return device ? { JsPdf: jsPDF, fonts, device } : { JsPdf: jsPDF, fonts };
}

async function loadFont(address: string): Promise<Uint8Array> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`typeface ${answer.status}`);
  return openFont(new Uint8Array(await answer.arrayBuffer()));
}
