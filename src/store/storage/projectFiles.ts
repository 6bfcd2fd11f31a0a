// Names files of a project and hands them to the person. editing/openProject.ts opens them.
import { PROJECT_FILE_ENDING } from '../../model/reading/projectText';

/** Letters of the name kept in a file name; with the ending it fits every file system in use. */
const MOST_LETTERS = 60;
/** Names some systems keep for devices. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** A file name every system takes: letters and digits of any script, the rest as hyphens; "quilt" where nothing is left. */
export function projectFileName(name: string): string {
  return fileName(name, PROJECT_FILE_ENDING);
}

/** The name under which a damaged one is saved as it is. */
export function damagedFileName(name: string): string {
  return fileName(name, `-damaged${PROJECT_FILE_ENDING}`);
}

/** The same for other files of the project; `ending` with its dot (".svg"). */
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
  // The browser reads the address after this task; giving it back at once would cancel the download.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
