// Which quilt a visit begins with: that of this window, else the one last open, else the next that is sound, else an example.
import { EMPTY_HISTORY } from '../editing/history';
import { openDocument } from '../editing/openDocument';
import { createProject } from '../model/create';
import { NO_PICTURES } from '../model/picture/picture';
import type { LengthUnit } from '../model/units';
import type { Loaded, ProjectStorage, StoredProject } from './storage/storage';
import { trying } from './storage/trying';
import { WINDOW_KEY } from './storage/windowKeys';

/** An example that comes with the tool; `text` fetches its project file. */
export interface Demo {
  readonly name: string;
  readonly text: () => Promise<string>;
}

/** The quilt of this window (in sessionStorage), so that a reload does not open that of another. */
export interface WindowNote {
  read(): string | null;
  write(id: string): void;
}

/** A note for a window that remembers nothing. */
export const NO_WINDOW_NOTE: WindowNote = { read: () => null, write: () => {} };

export function createWindowNote(area: () => Storage): WindowNote {
  return {
    read: () => trying(() => area().getItem(WINDOW_KEY)) ?? null,
    // Where it cannot be written, a reload opens the quilt last open in any window.
    write: (id) => trying(() => area().setItem(WINDOW_KEY, id)),
  };
}

/** So many saved quilts are tried before an example is opened. */
const MOST_TRIED = 5;

export interface FirstKept {
  /** The quilt to begin with; null where none can be opened. */
  readonly opened: StoredProject | null;
  /** Why the quilt of this window, or else the one last open, is not the one; null where it is, or there was none. */
  readonly refused: Extract<Loaded, { readonly ok: false }> | null;
}

/** The saved quilt to begin with. */
export async function firstKept(storage: ProjectStorage, ofWindow: WindowNote): Promise<FirstKept> {
  const last = await storage.lastOpen();
  const wanted = [ofWindow.read(), last.ok ? last.value : null].filter((id) => id !== null);
  let refused: FirstKept['refused'] = null;
  for (const id of new Set(wanted)) {
    const loaded = await storage.load(id);
    if (loaded.ok) return { opened: loaded.value, refused };
    if (!refused || loaded.damaged) refused = loaded;
  }
  if (!refused) return { opened: null, refused };
  const list = await storage.list();
  const others = list.ok ? list.value.filter(({ id }) => !wanted.includes(id)) : [];
  for (const { id } of others.slice(0, MOST_TRIED)) {
    const loaded = await storage.load(id);
    if (loaded.ok) return { opened: loaded.value, refused };
  }
  return { opened: null, refused };
}

/** What the id of an example begins with that a visit begins with: until it is changed it is saved nowhere. */
const EXAMPLE = 'example-';

/**
 * The first example, which has no pictures, as a new quilt; an empty one where there is none. `noted` is the quilt of this window that
 * is saved nowhere: an example that was open in it has its id again, and with it its place: step, forms and the list of moves.
 */
export async function firstDemo(
  demos: readonly Demo[],
  freshId: () => string,
  unit: LengthUnit,
  noted: string | null,
): Promise<StoredProject> {
  const id = noted?.startsWith(EXAMPLE) ? noted : EXAMPLE + freshId();
  const text = await demos[0]?.text();
  const opened = text === undefined ? null : openDocument(JSON.parse(text));
  return {
    project: opened?.ok ? { ...opened.value, id } : createProject(id, 'My first wedge quilt', unit),
    revision: 0,
    history: EMPTY_HISTORY,
    pictures: NO_PICTURES,
  };
}
