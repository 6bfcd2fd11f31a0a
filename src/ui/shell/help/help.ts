// What can be looked up; the lists come when they are asked for.
import { type Later, later } from '../../later';

/** What can be looked up. */
export type Help = 'keys' | 'words' | 'licences';

export const HELP: Readonly<Record<Help, Later<{ open: boolean; onClose: () => void }>>> = {
  keys: later(async () => (await import('./KeysDialog')).KeysDialog),
  words: later(async () => (await import('./WordsDialog')).WordsDialog),
  licences: later(async () => (await import('./LicencesDialog')).LicencesDialog),
};
