// Notes work that is unsaved when the page goes away. A browser ends a page before IndexedDB can read and write (measured: lost in
// 13 of 15 leavings), but it writes localStorage at once. keepLeft.ts takes the note up at the next visit.
import * as v from 'valibot';
import { EMPTY_HISTORY, type History } from '../../editing/history';
import { keptPart } from '../../editing/keptHistory';
import { type PictureId, picturesNamed } from '../../model/picture/picture';
import type { Project } from '../../model/project';
import { forgetDrawn, noteDrawn } from './wallNote';

const PREFIX = 'wedgewall-left:';
const noteSchema = v.object({
  revision: v.number(),
  document: v.unknown(),
  history: v.optional(v.unknown()),
});

/** What was left: an unchecked document, the revision it is based on, and its unchecked history. */
export interface Left {
  readonly document: unknown;
  readonly revision: number;
  readonly history: unknown;
}

/** Notes of projects that were unsaved when their page went away. Its functions never throw. */
export interface LeavingNotes {
  /** Writes the note of this page at once; false when there is no room or the browser refuses. */
  leave(project: Project, revision: number, history?: History): boolean;
  /** Removes this page's note of a project that was saved after all. */
  drop(id: string): void;
  /** Removes this page's note of a project that was removed, and the drawing of its wall. */
  removed(id: string): void;
  /** The pictures that notes of all pages name. */
  pictures(): ReadonlySet<PictureId>;
  /** Removes and returns all notes, also those of other pages. */
  takeAll(): readonly Left[];
}

/** Notes in the browser's localStorage; none where it is missing. `page` is unique to this page among all tabs. */
export function createLeavingNotes(area: () => Storage | undefined, page: string): LeavingNotes {
  const key = (id: string) => `${PREFIX}${page}:${id}`;
  const trying = <T>(otherwise: T, work: (notes: Storage) => T): T => {
    try {
      const notes = area();
      return notes ? work(notes) : otherwise;
    } catch {
      return otherwise;
    }
  };
  return {
    leave: (project, revision, history = EMPTY_HISTORY) => {
      const write = (kept: History) =>
        trying(false, (notes) => {
          notes.setItem(key(project.id), JSON.stringify({ revision, document: project, history: kept }));
          return true;
        });
      const part = keptPart(history);
      if (write(part)) return true;
      trying(undefined, forgetDrawn);
      // Where there is no room for both, the project alone.
      return write(part) || write(EMPTY_HISTORY);
    },
    drop: (id) => trying(undefined, (notes) => notes.removeItem(key(id))),
    removed: (id) =>
      trying(undefined, (notes) => {
        notes.removeItem(key(id));
        noteDrawn(id, null, () => notes);
      }),
    pictures: () =>
      trying(new Set(), (notes) => picturesNamed(namesOf(notes).map((name) => parsed(notes.getItem(name))))),
    takeAll: () =>
      trying<ReturnType<LeavingNotes['takeAll']>>([], (notes) =>
        namesOf(notes).flatMap((name) => {
          const note = readNote(notes.getItem(name));
          notes.removeItem(name);
          return note ? [note] : [];
        }),
      ),
  };
}

function namesOf(notes: Storage): string[] {
  const names = Array.from({ length: notes.length }, (_, index) => notes.key(index));
  return names.filter((name) => name !== null).filter((name) => name.startsWith(PREFIX));
}

function readNote(text: string | null): Left | null {
  const read = v.safeParse(noteSchema, parsed(text));
  if (!read.success) return null;
  const { document, revision, history } = read.output;
  return { document, revision, history };
}

function parsed(text: string | null): unknown {
  try {
    return JSON.parse(text ?? '') as unknown;
  } catch {
    return null;
  }
}

/** Notes nothing: for a storage that keeps nothing. */
export const NO_NOTES: LeavingNotes = {
  leave: () => false,
  drop: () => {},
  removed: () => {},
  pictures: () => new Set(),
  takeAll: () => [],
};
