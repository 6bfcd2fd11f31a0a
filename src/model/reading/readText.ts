// Reads a project from the text of a file, with the pictures in it.
import { PICTURES_ENTRY } from '../picture/inFile';
import { type ReadPictures, readPictures } from '../picture/readPictures';
import type { Project } from '../project';
import type { Result } from '../result';
import { isPlainObject } from './migrate';
import { parseText } from './projectText';
import { readDocument } from './read';

/** A project from a file with the pictures that came in it, and what is to be told of them; or why there is none. */
export type Opened =
  | ({ readonly ok: true; readonly value: Project } & ReadPictures)
  | Extract<Result<Project>, { readonly ok: false }>;

/** Reads a project from the text of a file. Every refusal names the place in the file and the reason. */
export function readProject(text: string): Opened {
  const parsed = parseText(text);
  if (!parsed.ok) return parsed;
  const { [PICTURES_ENTRY]: entry, ...document } = isPlainObject(parsed.value) ? parsed.value : {};
  const read = readDocument(isPlainObject(parsed.value) ? document : parsed.value);
  return read.ok ? { ...read, ...readPictures(read.value, entry) } : read;
}
