// Patterns made for the tests, as the command line makes them: as pages of marks, their words, or the finished file.
import { patternKit } from '../../../src/cli/pattern';
import type { Type } from '../../../src/drawing/pattern/lettering';
import { PATTERN_PARTS, type PatternOptions } from '../../../src/drawing/pattern/options';
import { PAPERS, type Page, type PaperName } from '../../../src/drawing/pattern/page';
import { writePattern } from '../../../src/drawing/pattern/pattern';
import { PdfSheets } from '../../../src/drawing/pattern/pdf/pdfSheets';
import type { DeviceLetters } from '../../../src/drawing/pattern/pdf/pdfType';
import type { Say } from '../../../src/drawing/pattern/writing';
import { phrase, speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import type { LengthUnit } from '../../../src/model/units';
import { demo } from '../../demo';
import { bare, type ReadPdf, readPdf } from './readPdf';

const kit = await patternKit();
/** An open document to measure letters with: one for all, because a letter is as wide in every document. */
export const type = new PdfSheets(kit, PAPERS.a4).type;

export function sayIn(project: Project): Say {
  const { unit } = project.preferences;
  return (sentence, values) =>
    speak(typeof sentence === 'string' ? phrase(sentence, values) : sentence, unit);
}

type Written = Extract<ReturnType<typeof writePattern>, { ok: true }>['value'];

/** A pattern before it is painted. Throws when it is refused. */
export function written(
  project: Project,
  paper: PaperName,
  parts: PatternOptions['parts'] = PATTERN_PARTS,
  say: Say = sayIn(project),
  letters: Type = type,
): Written {
  const made = writePattern(project, { paper, parts }, say, letters);
  if (!made.ok) throw new Error(`written: ${made.problems[0]!.message.say}`);
  return made.value;
}

const patterns = new Map<string, Written>();

/** The whole pattern of a quilt of demo-data, written once. */
export function writtenDemo(name: string, paper: PaperName, unit: LengthUnit): Written {
  const key = `${name} ${paper} ${unit}`;
  const project = demo(name);
  project.preferences.unit = unit;
  const made = patterns.get(key) ?? written(project, paper);
  patterns.set(key, made);
  return made;
}

const files = new Map<string, Promise<ReadPdf>>();

/** The file of a pattern that is written: a letter is as wide in every document, so its lines need not be broken anew. */
export function painted({ pages, title }: Written, paper: PaperName): Uint8Array {
  const sheets = new PdfSheets(kit, PAPERS[paper]);
  for (const page of pages) sheets.paint(page);
  return new Uint8Array(sheets.bytes(title));
}

/** The whole file of a quilt of demo-data in inches, painted and its words read back once. */
export function readDemo(name: string, paper: PaperName): Promise<ReadPdf> {
  const key = `${name} ${paper}`;
  const read = files.get(key) ?? readPdf(painted(writtenDemo(name, paper, 'in'), paper), { lines: false });
  files.set(key, read);
  return read;
}

/** Letters without width: where only what is said counts, no line need be broken. */
const UNMEASURED: Type = { width: () => 0 };

/** Every sentence of a pattern, with its figures filled in. */
export function told(project: Project, parts: PatternOptions['parts']): string[] {
  const said: string[] = [];
  const say = sayIn(project);
  const hear: Say = (sentence, values) => {
    said.push(say(sentence, values));
    return said.at(-1)!;
  };
  written(project, 'a4', parts, hear, UNMEASURED);
  return said;
}

/** The words of a page without their spaces, as `readPdf` gives those of the file; pageShapes.test.ts holds that they are the same. */
export function wordsOn({ marks }: Pick<Page, 'marks'>): string {
  return bare(marks.map((mark) => (mark.kind === 'text' ? mark.text : '')).join(''));
}

export function makePdf(
  project: Project,
  paper: PaperName,
  parts: PatternOptions['parts'] = PATTERN_PARTS,
  device?: DeviceLetters,
): { bytes: Uint8Array; missing: ReadonlySet<string>; pictured: ReadonlySet<string> } {
  const sheets = new PdfSheets(device ? { ...kit, device } : kit, PAPERS[paper]);
  const { pages, title } = written(project, paper, parts, sayIn(project), sheets.type);
  for (const page of pages) sheets.paint(page);
  return {
    bytes: new Uint8Array(sheets.bytes(title)),
    missing: sheets.type.missing,
    pictured: sheets.type.pictured,
  };
}
