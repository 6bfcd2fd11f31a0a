// Makes the written pattern on the command line: the same pages as in the browser, with typefaces from the npm packages.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { jsPDF } from 'jspdf';
import { PATTERN_PARTS } from '../drawing/pattern/options';
import { PAPERS, type PaperName } from '../drawing/pattern/page';
import { writePattern } from '../drawing/pattern/pattern';
import { openFont } from '../drawing/pattern/pdf/openFont';
import { type PdfKit, PdfSheets } from '../drawing/pattern/pdf/pdfSheets';
import { phrase, speak } from '../model/phrase';
import type { Pictures } from '../model/picture/picture';
import type { Project } from '../model/project';
import { ok, type Result } from '../model/result';

const FONTS = {
  display: ['young-serif/files/young-serif-latin-400-normal', 'young-serif/files/young-serif-latin-ext-400-normal'],
  text: ['figtree/files/figtree-latin-400-normal', 'figtree/files/figtree-latin-ext-400-normal'],
  strong: ['figtree/files/figtree-latin-600-normal', 'figtree/files/figtree-latin-ext-600-normal'],
} as const; // biome-ignore format: a table

/** The PDF library and typefaces; load them once for all projects. */
export async function patternKit(): Promise<PdfKit> {
  const { resolve } = createRequire(import.meta.url);
  const read = (name: string) => openFont(new Uint8Array(readFileSync(resolve(`@fontsource/${name}.woff`))));
  const face = (files: readonly string[]) => Promise.all(files.map(read));
  return {
    JsPdf: jsPDF,
    fonts: {
      display: await face(FONTS.display),
      text: await face(FONTS.text),
      strong: await face(FONTS.strong),
    },
  };
}

export interface PatternFile {
  readonly bytes: Uint8Array;
  /** Letters that the typefaces lack; question marks stand for them. */
  readonly missing: readonly string[];
}

/** The whole pattern of a project, or why there is none. */
export function patternFile(
  project: Project,
  pictures: Pictures,
  paper: PaperName,
  kit: PdfKit,
): Result<PatternFile> {
  const sheets = new PdfSheets(kit, PAPERS[paper], pictures);
  const { unit } = project.preferences;
  const written = writePattern(
    project,
    { paper, parts: PATTERN_PARTS },
    (sentence, values) => speak(typeof sentence === 'string' ? phrase(sentence, values) : sentence, unit),
    sheets.type,
  );
  if (!written.ok) return written;
  for (const page of written.value.pages) sheets.paint(page);
  const bytes = new Uint8Array(sheets.bytes(written.value.title));
  return ok({ bytes, missing: [...sheets.type.missing] });
}
