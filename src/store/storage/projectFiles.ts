// Projects as files: a name for the file, reading one with words for everything that can be wrong with it, and handing a
// file to the person. What a project is: model/read.ts and cutting/openProject.ts.
import { openProject } from '../../editing/openProject';
import { explain } from '../../model/documentPlace';
import { phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { failed, ok, type Problem, type Result } from '../../model/result';

/** What a picked or dropped file offers; the browser's File does. `size` in bytes. */
export interface ReadableFile {
  readonly name: string;
  readonly size: number;
  text(): Promise<string>;
}

const PROJECT_FILE_ENDING = '.wedgewall.json';
const MEGABYTE = 1024 * 1024;
/** Larger files are not read: a wall of 400 blocks is about a hundredth of this. */
export const MOST_MEGABYTES = 50;
/** Letters of the name kept in a file name; with the ending it fits every file system in use. */
const MOST_LETTERS = 60;
/** Names some systems keep for devices. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** A file name every system takes: letters and digits of any script, the rest as hyphens; "quilt" where nothing is left. */
export function projectFileName(name: string): string {
  return fileName(name, PROJECT_FILE_ENDING);
}

/** The same for other files of the project; `ending` with its dot (".svg"). */
export function fileName(name: string, ending: string): string {
  const plain = name
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-');
  const short = Array.from(plain)
    .slice(0, MOST_LETTERS)
    .join('')
    .replace(/^-+|-+$/g, '');
  const safe = RESERVED.test(short) ? `quilt-${short}` : short;
  return `${safe === '' ? 'quilt' : safe}${ending}`;
}

/**
 * Reads a project file to the end. What is wrong comes back as problems that name the place in the maker's words, with the
 * technical path beside it. Never rejects; the file is only read.
 */
export async function readProjectFile(file: ReadableFile): Promise<Result<Project>> {
  if (file.size > MOST_MEGABYTES * MEGABYTE) {
    const say =
      '{name} is {size} MB; a project file is at most {most} MB. Was another file chosen by mistake?';
    const size = Math.ceil(file.size / MEGABYTE);
    return failed('too-large', file.name, phrase(say, { name: file.name, size, most: MOST_MEGABYTES }));
  }
  let text: string;
  try {
    text = await file.text();
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const say = '{name} could not be read ({reason}). It may have been moved since it was chosen.';
    return failed('cannot-read', file.name, phrase(say, { name: file.name, reason }));
  }
  const opened = openProject(text);
  if (opened.ok) return ok(opened.value);
  return { ok: false, problems: opened.problems.map((problem) => inWords(problem, file.name, text)) };
}

function inWords(problem: Problem, name: string, text: string): Problem {
  if (problem.code === 'not-json') return notJson(problem, name, text);
  if (problem.code === 'not-a-project') {
    const say =
      '{name} is not a Wedgewall project file. Project files end in {ending} and begin with "format": "wedgewall-project".';
    return { ...problem, message: phrase(say, { name, ending: PROJECT_FILE_ENDING }) };
  }
  return explain(problem, JSON.parse(text.replace(/^\uFEFF/, '')));
}

function notJson(problem: Problem, name: string, text: string): Problem {
  const start = text.replace(/^\uFEFF/, '').trimStart();
  if (start === '') return { ...problem, message: phrase('{name} is empty.', { name }) };
  if (!start.startsWith('{')) {
    const say =
      '{name} is not a project file: it does not begin with a brace. Was another file chosen by mistake?';
    return { ...problem, message: phrase(say, { name }) };
  }
  const said = problem.message.with?.reason;
  const reason = typeof said === 'string' ? said : '';
  const position = /position (\d+)/.exec(reason)?.[1];
  if (position === undefined) {
    const say =
      '{name} breaks off before its end or was changed by hand ({reason}). Try an earlier copy of the file.';
    return { ...problem, message: phrase(say, { name, reason }) };
  }
  const line = text.slice(0, Number(position)).split('\n').length;
  const say =
    '{name} cannot be read from line {line} on ({reason}). It breaks off there or was changed by hand; try an earlier copy.';
  return { ...problem, path: `line ${line}`, message: phrase(say, { name, line, reason }) };
}

/** Hands the person a file of text; `type` is its media type. */
export function downloadText(name: string, text: string, type = 'application/json'): void {
  downloadBlob(name, new Blob([text], { type }));
}

/** Hands the person a file. */
export function downloadBlob(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the address after this task; giving it back at once would cancel the download.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
