// Names files of a project and hands them to the person. editing/openProject.ts opens them.
import { PROJECT_FILE_ENDING } from '../../model/reading/migrate';

/** The most letters of a name in a file name; together with the ending they fit every file system in use. */
const MOST_LETTERS = 60;
/** Names that some systems reserve for devices. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** The name of a project file; see fileName. */
export function projectFileName(name: string): string {
  return fileName(name, PROJECT_FILE_ENDING);
}

/** The name of the file of a damaged project; see fileName. */
export function damagedFileName(name: string): string {
  return fileName(name, `-damaged${PROJECT_FILE_ENDING}`);
}

/**
 * A file name that every system accepts: letters and digits of any script, hyphens for the rest, "quilt" where nothing is
 * left; then `ending`, with its dot (".svg"). A name that is cut short ends in a number made from the whole, so that two long
 * names stay two files.
 */
export function fileName(name: string, ending: string): string {
  // Marks count with the letter they stand on; alone, as after a picture sign, they would be invisible.
  const words =
    name
      .normalize('NFC')
      .toLowerCase()
      .match(/[\p{L}\p{N}][\p{L}\p{N}\p{M}]*/gu) ?? [];
  const plain = words.join('-');
  const letters = Array.from(plain);
  const short =
    letters.length <= MOST_LETTERS ? plain : `${letters.slice(0, MOST_LETTERS).join('')}-${numberOf(plain)}`;
  const safe = RESERVED.test(short) ? `quilt-${short}` : short;
  return `${safe === '' ? 'quilt' : safe}${ending}`;
}

/** A number of six digits for a text (FNV-1a, 32 bits; Fowler, Noll and Vo). */
function numberOf(text: string): string {
  let hash = 0x811c9dc5;
  for (const letter of text) hash = Math.imul(hash ^ letter.codePointAt(0)!, 0x01000193) >>> 0;
  return String(hash % 1_000_000).padStart(6, '0');
}

/** Hands the person a file of text; `type` is its media type. */
export function downloadText(name: string, text: string, type = 'application/json'): void {
  downloadBlob(name, new Blob([text], { type }));
}

/** Hands the person a file. */
export function downloadBlob(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the address after this task, so revoking it at once would cancel the download.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
