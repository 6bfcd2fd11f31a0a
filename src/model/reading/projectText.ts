// The text of a project file: out of its bytes, and into the plain document it stands for. Everything that keeps it from being
// one is said here; what the document must hold is the schema's (read.ts).
import { type Phrase, phrase } from '../phrase';
import { failed, ok, type Result } from '../result';

/** The ending of the names of project files. */
export const PROJECT_FILE_ENDING = '.wedgewall.json';

/** Decodes a file's bytes as UTF-8 (RFC 8259, section 8.1), with or without a byte-order mark. Refuses anything else. */
export function decodeText(bytes: ArrayBuffer | Uint8Array): Result<string> {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    // UTF-16 text of plain letters is valid UTF-8 with a zero after each letter; JSON never contains a zero.
    if (!text.includes('\0')) return ok(text);
  } catch {
    // The bytes are not valid UTF-8.
  }
  const say =
    'The file is not written in UTF-8, as project files are. Save it as UTF-8 where it was changed, or try an earlier copy.';
  return failed('not-utf-8', '', phrase(say));
}

/** Parses JSON text, or says where and why it fails. Skips a byte-order mark at its start. */
export function parseText(text: string): Result<unknown> {
  const json = text.replace(/^\uFEFF/, '');
  try {
    return ok(JSON.parse(json) as unknown);
  } catch (error) {
    return notJson(json, error instanceof Error ? error.message : String(error));
  }
}

function notJson(json: string, reason: string) {
  const refuse = (message: Phrase, path = '') => failed('not-json', path, message);
  const start = json.trimStart();
  if (start === '') return refuse(phrase('The file is empty.'));
  if (!start.startsWith('{')) {
    const say =
      'This is not a project file: it does not begin with a brace. Was another file chosen by mistake?';
    return refuse(phrase(say));
  }
  const position = /position (\d+)/.exec(reason)?.[1];
  if (position === undefined) {
    const say = 'It breaks off before its end or was changed by hand ({reason}). Try an earlier copy.';
    return refuse(phrase(say, { reason }));
  }
  const line = json.slice(0, Number(position)).split('\n').length;
  const say =
    'It cannot be read from line {line} on ({reason}). It breaks off there or was changed by hand; try an earlier copy.';
  return refuse(phrase(say, { line, reason }), `line ${line}`);
}
