// Reads the arguments of `npm run read`, or says why they cannot be understood.
import { parseArgs } from 'node:util';
import { phrase } from '../model/phrase';
import { failed, ok, type Result } from '../model/result';

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

/** Reads the arguments that follow the command's name. */
export function readReadArguments(words: readonly string[]): Result<ReadRequest> {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(words);
  } catch (error) {
    return failed('arguments', '', phrase('{reason}', { reason: (error as Error).message }));
  }
  const { values, positionals, tokens } = parsed;
  const given = tokens.flatMap((token) => (token.kind === 'option' ? [token.name] : []));
  const again = given.find((name, index) => given.indexOf(name) !== index);
  if (again !== undefined) return failed('twice', `--${again}`, phrase('It is given twice; give it once.'));
  if (values.help) return ok({ help: true, pictures: [], project: '', what: 'block', out: '' });
  if (positionals.length === 0) return failed('no-picture', '', phrase('Name at least one picture.'));
  if (!values.project)
    return failed('no-project', '--project', phrase('Say which quilt it is with --project PROJECT.json.'));
  if (!values.out) return failed('no-out', '--out', phrase('Say where read.json goes with --out DIR.'));
  const what = SUBJECTS.find((one) => one === values.what);
  if (!what) return failed('what', '--what', phrase('Say what the pictures show: fabric, block or wall.'));
  return ok({ help: false, pictures: positionals, project: values.project, what, out: values.out });
}

function parse(words: readonly string[]) {
  return parseArgs({
    args: [...words],
    allowPositionals: true,
    tokens: true,
    options: {
      project: { type: 'string' },
      what: { type: 'string' },
      out: { type: 'string' },
      help: { type: 'boolean', short: 'h' },
    },
  });
}
