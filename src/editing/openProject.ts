// Opens a project from outside: it must be readable and sound, use no more wedges than were cut, and can be drawn. Chosen files, kept
// quilts, examples and the command line all come through here. Every refusal names the place in the maker's words.

import { checkWedges } from '../cutting/wedges/ledger';
import { checkPictured } from '../geometry/asPieced';
import { checkPieceCount } from '../geometry/pieceCount';
import { phrase } from '../model/phrase';
import type { Project } from '../model/project';
import { decodeText } from '../model/reading/projectText';
import { type Opened, readDocument, readProject } from '../model/reading/read';
import { failed, type Result } from '../model/result';

const MEGABYTE = 1024 * 1024;
/** The size of the largest file that is read; a wall of 400 blocks without pictures takes less than a hundredth of it. */
export const MOST_MEGABYTES = 80;

/** The part of a browser's File that openFile uses. `size` is in bytes. */
export interface ReadableFile {
  readonly size: number;
  arrayBuffer(): Promise<ArrayBuffer | Uint8Array>;
}

/** Opens a project file, or says where and why it fails. Never rejects, and never writes to the file. */
export async function openFile(file: ReadableFile): Promise<Opened> {
  let bytes: ArrayBuffer | Uint8Array;
  try {
    if (file.size > MOST_MEGABYTES * MEGABYTE) return tooLarge(file.size);
    bytes = await file.arrayBuffer();
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const say = 'The file could not be read ({reason}). It may have been moved or renamed.';
    return failed('cannot-read', '', phrase(say, { reason }));
  }
  const text = decodeText(bytes);
  return text.ok ? openProject(text.value) : text;
}

function tooLarge(size: number) {
  const say =
    'The file is {size} MB; a project file is at most {most} MB. Was another file chosen by mistake?';
  return failed('too-large', '', phrase(say, { size: Math.ceil(size / MEGABYTE), most: MOST_MEGABYTES }));
}

/** Opens the text of a project file, with the pictures in it. */
export function openProject(text: string): Opened {
  return checked(readProject(text));
}

/** Opens a parsed document (from storage). */
export function openDocument(document: unknown): Result<Project> {
  return checked(readDocument(document));
}

function checked<Read extends Result<Project>>(
  read: Read,
): Read | Extract<Result<Project>, { readonly ok: false }> {
  if (!read.ok) return read;
  const project = read.value;
  const problems = [...checkWedges(project), ...checkPieceCount(project), ...checkPictured(project)];
  return problems.length === 0 ? read : { ok: false, problems };
}
