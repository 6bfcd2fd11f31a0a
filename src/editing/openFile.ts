// Opens a chosen file: its size, its bytes, its text. openProject.ts checks what the text says.
import { phrase } from '../model/phrase';
import { decodeText } from '../model/reading/projectText';
import type { Opened } from '../model/reading/readText';
import { failed, ok, type Result } from '../model/result';
import { openProject } from './openProject';

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
  const bytes = await bytesOf(file);
  return bytes.ok ? openBytes(bytes.value) : bytes;
}

/** The bytes of a file that is not too large to be a project. Never rejects. */
export async function bytesOf(file: ReadableFile): Promise<Result<Uint8Array<ArrayBuffer>>> {
  try {
    if (file.size > MOST_MEGABYTES * MEGABYTE) return tooLarge(file.size);
    return ok(new Uint8Array(await file.arrayBuffer()));
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const say = 'The file could not be read ({reason}). It may have been moved or renamed.';
    return failed('cannot-read', '', phrase(say, { reason }));
  }
}

/** Opens the bytes of a project file, or says where and why it fails. */
export function openBytes(bytes: Uint8Array): Opened {
  const text = decodeText(bytes);
  return text.ok ? openProject(text.value) : text;
}

function tooLarge(size: number) {
  const say = 'The file is {size} MB; a quilt file is at most {most} MB. Was another file chosen by mistake?';
  return failed('too-large', '', phrase(say, { size: Math.ceil(size / MEGABYTE), most: MOST_MEGABYTES }));
}
