// Reads the arguments of the command line, or says why they cannot be understood.
import { basename } from 'node:path';
import type { PaperName } from '../drawing/pattern/page';
import { phrase } from '../model/phrase';
import { failed, ok, type Result } from '../model/result';
import { givenWords } from './command';

export const USAGE = `Usage: npm run sheet -- PROJECT.json [MORE.json …] --out DIR [--width PIXELS] [--marks] [--colourways] [--pattern]

  --out DIR        where wall.svg, wall.png and report.json go; with several quilts each gets DIR/<its file's name>/
  --width PIXELS   width of wall.png, 16 to 12000 (48 pixels to the inch, at most 4000 on the longer side, unless given)
  --marks          draw the clashes and pools on the wall
  --colourways     the same for every colourway, in colourway-1-<its name>/ and so on beside it
  --pattern        the written pattern as well, as pattern.pdf
  --paper NAME     a4 or letter, for the pattern (letter for quilts in inches, a4 for those in centimetres, unless given)
  --help           this text`;

export interface SheetRequest {
  readonly help: boolean;
  readonly files: readonly {
    readonly file: string;
    /** Folder under `out`; empty for a single project. */
    readonly folder: string;
  }[];
  readonly out: string;
  /** Pixels; null for the usual size. */
  readonly width: number | null;
  readonly marks: boolean;
  /** Whether to make sheets of every colourway too. */
  readonly colourways: boolean;
  /** Whether to make the written pattern too. */
  readonly pattern: boolean;
  /** The paper of the pattern; null: by the quilt's unit. */
  readonly paper: PaperName | null;
}

const HELP: SheetRequest = {
  help: true,
  files: [],
  out: '',
  width: null,
  marks: false,
  colourways: false,
  pattern: false,
  paper: null,
};

const LEAST_WIDTH = 16;
const MOST_WIDTH = 12_000;

const OPTIONS = {
  out: { type: 'string' },
  width: { type: 'string' },
  marks: { type: 'boolean' },
  colourways: { type: 'boolean' },
  pattern: { type: 'boolean' },
  paper: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const;

/** Reads the arguments that follow the command's name. */
export function readArguments(words: readonly string[]): Result<SheetRequest> {
  const given = givenWords(words, OPTIONS);
  if (!given.ok) return given;
  const { values, positionals } = given.value;
  if (values.help) return ok(HELP);
  if (positionals.length === 0) return failed('no-project', '', phrase('Name at least one quilt file.'));
  if (!values.out) return failed('no-out', '--out', phrase('Say where the sheets go with --out DIR.'));
  const width = values.width === undefined ? null : wholeNumber(values.width);
  if (width !== null && !(width >= LEAST_WIDTH && width <= MOST_WIDTH)) {
    const say = '{given} is not a width in whole pixels from {least} to {most}.';
    const about = { given: values.width ?? '', least: LEAST_WIDTH, most: MOST_WIDTH };
    return failed('width', '--width', phrase(say, about));
  }
  const { paper } = values;
  if (paper !== undefined && paper !== 'a4' && paper !== 'letter') {
    return failed(
      'paper',
      '--paper',
      phrase('{given} is not a paper: write a4 or letter.', { given: paper }),
    );
  }
  const folders = positionals.map((file) => (positionals.length === 1 ? '' : folderOf(file)));
  // Many file systems take capital and small letters for the same.
  const plain = folders.map((folder) => folder.normalize('NFC').toLowerCase());
  const twice = folders.find((_, index) => plain.indexOf(plain[index]!) !== index);
  if (twice !== undefined) {
    const say = 'Two quilts would be written to the folder {folder}. Give their files different names.';
    return failed('same-folder', '', phrase(say, { folder: twice }));
  }
  const files = positionals.map((file, index) => ({ file, folder: folders[index]! }));
  return ok({
    help: false,
    files,
    out: values.out,
    width,
    marks: values.marks ?? false,
    colourways: values.colourways ?? false,
    pattern: values.pattern ?? false,
    paper: paper ?? null,
  });
}

/** The number written in plain digits; NaN for anything else. */
function wholeNumber(text: string): number {
  return /^\d+$/.test(text) ? Number(text) : Number.NaN;
}

/** The file's name without .json. Dots in front are left out: a name of dots alone would be the folder itself or the one above. */
function folderOf(file: string): string {
  return (
    basename(file)
      .replace(/\.json$/i, '')
      .replace(/^\.+/, '') || 'project'
  );
}
