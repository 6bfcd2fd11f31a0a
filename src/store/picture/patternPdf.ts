// Lays out the written pattern in the browser and makes its PDF: loads what that needs when it is first asked for, and tells its
// progress. drawing/pattern decides what is on the pages.
import latinText from '@fontsource/figtree/files/figtree-latin-400-normal.woff?url';
import latinStrong from '@fontsource/figtree/files/figtree-latin-600-normal.woff?url';
import widerText from '@fontsource/figtree/files/figtree-latin-ext-400-normal.woff?url';
import widerStrong from '@fontsource/figtree/files/figtree-latin-ext-600-normal.woff?url';
import latinDisplay from '@fontsource/young-serif/files/young-serif-latin-400-normal.woff?url';
import widerDisplay from '@fontsource/young-serif/files/young-serif-latin-ext-400-normal.woff?url';
import type { PatternOptions } from '../../drawing/pattern/options';
import { PAPERS, type Pattern } from '../../drawing/pattern/page';
import { writingPattern } from '../../drawing/pattern/pattern';
import { openFont } from '../../drawing/pattern/pdf/openFont';
import { type PdfKit, PdfSheets } from '../../drawing/pattern/pdf/pdfSheets';
import type { Say } from '../../drawing/pattern/writing';
import { type Phrase, phrase } from '../../model/phrase';
import type { Pictures } from '../../model/picture/picture';
import type { Project } from '../../model/project';
import { failed, ok, type Result } from '../../model/result';
import { deviceLetters } from './deviceLetters';

export interface PatternPdf {
  readonly file: Blob;
  readonly pages: number;
  /** Letters of names that neither the pattern's typeface nor the device has; a question mark stands for them. */
  readonly missing: readonly string[];
  /** Letters of names that are pictures of the device's letters. */
  readonly pictured: readonly string[];
}

const FONTS = {
  display: [latinDisplay, widerDisplay],
  text: [latinText, widerText],
  strong: [latinStrong, widerStrong],
} as const;

/** Number of pages painted before the screen gets a turn. */
const PAGES_AT_ONCE = 2;

/** The pages as the file would have them, to be looked at; null where `isStale` said so on the way. Never rejects. */
export async function layOutPattern(
  project: Project,
  options: PatternOptions,
  say: Say,
  isStale: () => boolean,
): Promise<Result<Pattern> | null> {
  try {
    measure ??= new PdfSheets(await loadKit(), PAPERS.a4).type;
    return await laidOut(project, options, say, measure, isStale);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return failed(
      'not-laid-out',
      'pattern',
      phrase('The pages could not be laid out ({reason}).', { reason }),
    );
  }
}

/** Measures letters for pages on screen; it remembers all it has measured. */
let measure: PdfSheets['type'] | null = null;

async function laidOut(
  project: Project,
  options: PatternOptions,
  say: Say,
  type: PdfSheets['type'],
  isStale: () => boolean,
): Promise<Result<Pattern> | null> {
  const writing = writingPattern(project, options, say, type);
  for (;;) {
    await screenTurn();
    if (isStale()) return null;
    const step = writing.next();
    if (step.done) return step.value;
  }
}

/** Makes the file. `tell` gets the progress: words, and a share of 0 to 1. Never rejects. */
export async function makePatternPdf(
  project: Project,
  pictures: Pictures,
  options: PatternOptions,
  say: Say,
  tell: (doing: Phrase, done: number) => void,
): Promise<Result<PatternPdf>> {
  try {
    tell(phrase('Fetching the typefaces …'), 0);
    const sheets = new PdfSheets(await loadKit(), PAPERS[options.paper], pictures);
    tell(phrase('Laying out the pages …'), 0.05);
    const written = await laidOut(project, options, say, sheets.type, () => false);
    if (!written?.ok) return written!;
    const { pages, title } = written.value;
    for (const [index, page] of pages.entries()) {
      if (index % PAGES_AT_ONCE === 0) {
        const values = { page: index + 1, pages: pages.length };
        tell(phrase('Drawing page {page} of {pages} …', values), 0.1 + (0.85 * index) / pages.length);
        await screenTurn();
      }
      sheets.paint(page);
    }
    tell(phrase('Packing it …'), 0.95);
    await screenTurn();
    const file = new Blob([sheets.bytes(title)], { type: 'application/pdf' });
    const { missing, pictured } = sheets.type;
    return ok({ file, pages: pages.length, missing: [...missing], pictured: [...pictured] });
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const sentence = 'The pattern could not be made ({reason}). The quilt is untouched; try again.';
    return failed('not-made', 'pattern', phrase(sentence, { reason }));
  }
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

/** Lets the screen show the progress. */
function screenTurn(): Promise<void> {
  return new Promise((done) => {
    setTimeout(done, 0);
  });
}
