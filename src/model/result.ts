// The outcome of anything that can fail on bad input: a value, or problems that name the place and the reason.
import type { Phrase } from './phrase';

/** One thing wrong: a stable code for programs, the place (blocks[3].places[0].set), and a sentence for the person. */
export interface Problem {
  readonly code: string;
  readonly path: string;
  readonly message: Phrase;
}

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A Result that succeeded. */
export function ok<T>(value: T): Result<T> {
  return { ok: true, value };
}

/** A Result that failed, with one problem. */
export function failed(
  code: string,
  path: string,
  message: Phrase,
): { ok: false; problems: readonly Problem[] } {
  return { ok: false, problems: [{ code, path, message }] };
}
