// The text of a project file: out of its bytes, and into the plain document it stands for. Everything that keeps it from being
// one is said here; what the document must hold is the schema's (read.ts).
import { type Phrase, phrase } from '../phrase';
import { failed, ok, type Result } from '../result';
import { type JsonFaultKind, jsonFault } from './jsonFault';

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
    'The file is not written in UTF-8, as quilt files are. Save it as UTF-8 where it was changed, or try an earlier copy.';
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

/** What is wrong at the place of a fault. */
const FAULTS: Readonly<Record<JsonFaultKind, string>> = {
  value: 'a value is missing or not written as it should be',
  key: 'the name of an entry should stand here, in double quotes',
  colon: 'a colon should stand here',
  comma: 'a comma or a closing bracket should stand here',
  end: 'the file breaks off here',
  break: 'a text has no closing quote before its line ends',
  escape: 'the letter after the backslash is wrong',
  number: 'a number is not complete',
  more: 'something follows after the end of the quilt',
};

function notJson(json: string, reason: string) {
  const refuse = (message: Phrase, path = '') => failed('not-json', path, message);
  const start = json.trimStart();
  if (start === '') return refuse(phrase('The file is empty.'));
  if (!start.startsWith('{')) {
    const say =
      'This is not a quilt file: it does not begin with a brace. Was another file chosen by mistake?';
    return refuse(phrase(say));
  }
  const fault = jsonFault(json);
  // The engine can run out of room for a text that is sound.
  if (!fault)
    return refuse(phrase('The file could not be read ({reason}).', { reason: reason.slice(0, 60) }));
  const { line, column, kind } = fault;
  const say =
    'It cannot be read from line {line}, character {column} on: {reason}. It was cut off or changed by hand; try an earlier copy.';
  return refuse(phrase(say, { line, column, reason: phrase(FAULTS[kind]) }), `line ${line}`);
}
