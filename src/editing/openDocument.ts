// Opens a project from outside: it must be readable and sound, use no more wedges than were cut, and can be drawn. Every refusal names the
// place in the maker's words.
import type { Project } from '../model/project';
import { readDocument } from '../model/reading/read';
import type { Result } from '../model/result';
import { checkQuilt } from './checkQuilt';

/** Opens a parsed document (from storage). */
export function openDocument(document: unknown): Result<Project> {
  return checked(readDocument(document));
}

/** What was read, or why it is not sound. */
export function checked<Read extends Result<Project>>(
  read: Read,
): Read | Extract<Result<Project>, { readonly ok: false }> {
  if (!read.ok) return read;
  const problems = checkQuilt(read.value);
  return problems.length === 0 ? read : { ok: false, problems };
}
