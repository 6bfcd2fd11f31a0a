// Reads the arguments of `npm run read`, or says why they cannot be understood.
import { phrase } from '../model/phrase';
import { failed, ok, type Result } from '../model/result';
import { givenWords } from './command';

export const READ_USAGE = `Usage: npm run read -- PICTURE [MORE …] --project PROJECT.json --what fabric|block|wall --out DIR

  --project FILE   the quilt whose fabrics and blocks are looked for
  --what WHAT      what the pictures show: fabric (one fabric fills the picture), block (one squared block) or wall
  --out DIR        where read.json goes
  --help           this text`;

export const SUBJECTS = ['fabric', 'block', 'wall'] as const;
export type Subject = (typeof SUBJECTS)[number];

export interface ReadRequest {
  readonly help: boolean;
  readonly pictures: readonly string[];
  readonly project: string;
  readonly what: Subject;
  readonly out: string;
}

const OPTIONS = {
  project: { type: 'string' },
  what: { type: 'string' },
  out: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const;

/** Reads the arguments that follow the command's name. */
export function readReadArguments(words: readonly string[]): Result<ReadRequest> {
  const given = givenWords(words, OPTIONS);
  if (!given.ok) return given;
  const { values, positionals } = given.value;
  if (values.help) return ok({ help: true, pictures: [], project: '', what: 'block', out: '' });
  if (positionals.length === 0) return failed('no-picture', '', phrase('Name at least one picture.'));
  if (!values.project)
    return failed('no-project', '--project', phrase('Say which quilt it is with --project PROJECT.json.'));
  if (!values.out) return failed('no-out', '--out', phrase('Say where read.json goes with --out DIR.'));
  const what = SUBJECTS.find((one) => one === values.what);
  if (!what) return failed('what', '--what', phrase('Say what the pictures show: fabric, block or wall.'));
  return ok({ help: false, pictures: positionals, project: values.project, what, out: values.out });
}
