// Patterns made for the tests, as the command line makes them.
import { patternKit } from '../../../src/cli/pattern';
import { PATTERN_PARTS, type PatternOptions } from '../../../src/drawing/pattern/options';
import { PAPERS, type PaperName } from '../../../src/drawing/pattern/page';
import { writePattern } from '../../../src/drawing/pattern/pattern';
import { PdfSheets } from '../../../src/drawing/pattern/pdf/pdfSheets';
import type { DeviceLetters } from '../../../src/drawing/pattern/pdf/pdfType';
import type { Say } from '../../../src/drawing/pattern/writing';
import { phrase, speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';

const kit = await patternKit();

export function sayIn(project: Project): Say {
  const { unit } = project.preferences;
  return (sentence, values) =>
    speak(typeof sentence === 'string' ? phrase(sentence, values) : sentence, unit);
}

export function makePdf(
  project: Project,
  paper: PaperName,
  parts: PatternOptions['parts'] = PATTERN_PARTS,
  device?: DeviceLetters,
): { bytes: Uint8Array; missing: ReadonlySet<string>; pictured: ReadonlySet<string> } {
  const sheets = new PdfSheets(device ? { ...kit, device } : kit, PAPERS[paper]);
  const written = writePattern(project, { paper, parts }, sayIn(project), sheets.type);
  if (!written.ok) throw new Error(`makePdf: ${written.problems[0]!.message.say}`);
  for (const page of written.value.pages) sheets.paint(page);
  return {
    bytes: new Uint8Array(sheets.bytes(written.value.title)),
    missing: sheets.type.missing,
    pictured: sheets.type.pictured,
  };
}

/** An open document to measure letters with. */
export function typeOf(): PdfSheets['type'] {
  return new PdfSheets(kit, PAPERS.a4).type;
}
