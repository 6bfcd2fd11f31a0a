// A project from outside, checked to the end: readable, sound, and with no more wedges in its blocks than were cut.

import { checkWedges } from '../cutting/wedges/ledger';
import type { Project } from '../model/project';
import { readDocument, readProject } from '../model/read';
import type { Result } from '../model/result';

/** Opens the text of a project file, or says where and why it cannot be. */
export function openProject(text: string): Result<Project> {
  return checked(readProject(text));
}

/** Opens an already parsed document, from storage. */
export function openDocument(document: unknown): Result<Project> {
  return checked(readDocument(document));
}

function checked(read: Result<Project>): Result<Project> {
  if (!read.ok) return read;
  const problems = checkWedges(read.value);
  return problems.length === 0 ? read : { ok: false, problems };
}
