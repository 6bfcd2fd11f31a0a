// A project from outside, checked to the end: readable, sound, and with no more wedges in its blocks than were cut. The one
// way in for chosen files, kept quilts, examples and the command line; every refusal names the place in the maker's words.

import { checkWedges } from '../cutting/wedges/ledger';
import { phrase } from '../model/phrase';
import type { Project } from '../model/project';
import { decodeText } from '../model/reading/projectText';
import { readDocument, readProject } from '../model/reading/read';
import { failed, type Result } from '../model/result';

const MEGABYTE = 1024 * 1024;
/** Larger files are not read: a wall of 400 blocks is about a hundredth of this. */
export const MOST_MEGABYTES = 50;

/** What a file to be opened offers; the browser's File does. `size` in bytes. */
export interface ReadableFile {
  readonly size: number;
  arrayBuffer(): Promise<ArrayBuffer | Uint8Array>;
}

/** Opens a project file, or says where and why it cannot be. Never rejects; the file is only read. */
export async function openFile(file: ReadableFile): Promise<Result<Project>> {
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

/** Opens the text of a project file. */
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
