// Turns errors of the browser's storage into problems with words for the person.
import { type Phrase, phrase } from '../../model/phrase';
import type { Problem } from '../../model/result';

/** Thrown in the storage when it refuses something itself; carries the sentence for the person. */
export class StorageRefusal extends Error {
  readonly problem: Problem;
  constructor(code: string, message: Phrase) {
    super(message.say);
    this.name = 'StorageRefusal';
    this.problem = { code, path: '', message };
  }
}

/** Codes and sentences by the name of the browser's error (names of the Indexed Database API, W3C). */
const KNOWN: Readonly<Record<string, readonly [code: string, say: string]>> = {
  QuotaExceededError: [
    'storage-full',
    'The browser has no room left for this quilt. Save it to a file, then remove quilts you no longer need.',
  ],
  VersionError: [
    'storage-newer',
    'The quilts here were saved by a newer Wedgewall. Reload the page to get it; until then save to a file.',
  ],
  SecurityError: [
    'storage-refused',
    'The browser does not let this page save quilts. Save to a file before you close it.',
  ],
};

/** The problem for anything thrown while reading or writing. Never throws. */
export function storageProblem(error: unknown): Problem {
  if (error instanceof StorageRefusal) return error.problem;
  const known = error instanceof Error || error instanceof DOMException ? KNOWN[error.name] : undefined;
  if (known) return { code: known[0], path: '', message: phrase(known[1]) };
  const reason = error instanceof Error ? error.message || error.name : String(error);
  const say =
    'The browser could not read or write its saved quilts ({reason}). Save to a file to be on the safe side.';
  return { code: 'storage-failed', path: '', message: phrase(say, { reason }) };
}
