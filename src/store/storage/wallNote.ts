// A note of the wall as this browser drew it last (localStorage), so that the next visit shows it before any script of the page has run.
// It follows the quilt that the next visit opens, and holds no drawing once that quilt has changed.
import { trying } from './trying';
import { PLACE_KEY, WINDOW_KEY } from './windowKeys';

const KEY = 'wedgewall-wall';
const PREFIX = 'wedgewall';

/** A drawing of a wall as markup of SVG. */
export interface DrawnWall {
  /** Inches. */
  readonly width: number;
  readonly height: number;
  /** The colours of the flannel and of what is written on it, as CSS. */
  readonly flannel: string;
  readonly ink: string;
  /** Pixels that the side table takes under the wall. */
  readonly table: number;
  readonly markup: string;
}

interface WallNote {
  /** The quilt last opened in any window. */
  readonly id: string;
  readonly wall: DrawnWall | null;
}

/** Characters of a drawing that is noted: localStorage has room for about five million, and work left unsaved comes first. */
const MOST = 700_000;

/** What of the browser's storages tells which quilt and which step this window opens. */
export interface Areas {
  readonly local: () => Storage;
  readonly window: () => Storage;
}

/**
 * What to show before the page's own wall: the noted drawing where this window will open that quilt at its wall; 'example' for a
 * newcomer, of whom the browser knows nothing; null where it is not sure.
 */
export function earlyWall(areas: Areas): DrawnWall | 'example' | null {
  return trying(() => {
    const local = areas.local();
    const window = areas.window();
    const own = window.getItem(WINDOW_KEY);
    const note = readNote(local);
    if (note === null) return own === null && isNew(local) ? 'example' : null;
    if (own !== null && own !== note.id) return null;
    return opensAtWall(window.getItem(PLACE_KEY), note.id) ? note.wall : null;
  }) ?? null; // biome-ignore format: short
}

function isNew(local: Storage): boolean {
  return !Array.from({ length: local.length }, (_, at) => local.key(at)).some((key) =>
    key?.startsWith(PREFIX),
  );
}

/** Whether the place noted for this window (keepPlace.ts) is the wall at its full size. */
function opensAtWall(noted: string | null, id: string): boolean {
  const place = JSON.parse(noted ?? 'null') as {
    project?: string;
    step?: string;
    folded?: string[];
    movesOpen?: boolean;
  } | null;
  if (place?.project !== id) return true;
  return place.step === 'wall' && !place.movesOpen && !place.folded?.includes('wall');
}

function readNote(local: Storage): WallNote | null {
  const note = trying(() => JSON.parse(local.getItem(KEY) ?? 'null') as WallNote | null);
  if (typeof note?.id !== 'string') return null;
  return isDrawn(note.wall) ? note : { id: note.id, wall: null };
}

function isDrawn(wall: DrawnWall | null): boolean {
  return typeof wall?.markup === 'string' && wall.width > 0 && wall.height > 0 && wall.table >= 0;
}

/** Notes the quilt that is opened, and forgets the drawing of another. */
export function noteOpened(id: string, area: () => Storage): void {
  trying(() => {
    if (readNote(area())?.id !== id) write(area(), { id, wall: null });
  });
}

/** Notes how a quilt is drawn, or, for null, that its drawing is not known; nothing while another quilt is the one last opened. */
export function noteDrawn(id: string, wall: DrawnWall | null, area: () => Storage): void {
  trying(() => {
    const local = area();
    if (readNote(local)?.id !== id) return;
    // First without it: where there is no room for the new drawing, the old one must not stay.
    write(local, { id, wall: null });
    if (wall && wall.markup.length <= MOST) write(local, { id, wall });
  });
}

/** Gives the room of the drawing back, for what matters more. */
export function forgetDrawn(local: Storage): void {
  const note = readNote(local);
  if (note?.wall) write(local, { id: note.id, wall: null });
}

function write(local: Storage, note: WallNote): void {
  local.setItem(KEY, JSON.stringify(note));
}
