// Names files of a project and hands them to the person. editing/openProject.ts opens them.
import { PROJECT_FILE_ENDING } from '../../model/reading/projectText';

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
 * left; then `ending`, with its dot (".svg").
 */
export function fileName(name: string, ending: string): string {
  const plain = name
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-');
  const short = Array.from(plain)
    .slice(0, MOST_LETTERS)
    .join('')
    .replace(/^-+|-+$/g, '');
  const safe = RESERVED.test(short) ? `quilt-${short}` : short;
  return `${safe === '' ? 'quilt' : safe}${ending}`;
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
