// Keeps projects in IndexedDB: documents and summaries apart, so that a list opens no document; each change is one transaction.
// It also opens the storage for the app, in the page's memory when the browser keeps nothing.
import { type DBSchema, type IDBPDatabase, type IDBPObjectStore, openDB } from 'idb';
import { phrase } from '../../model/phrase';
import { NO_PICTURES, type PictureId, type Pictures } from '../../model/picture/picture';
import type { Problem } from '../../model/result';
import { checkStored } from '../reading/checkStored';
import { inTime } from './inTime';
import { keepLeft, type LeftCopy } from './keepLeft';
import { createLeavingNotes, NO_NOTES } from './leaving';
import { createMemoryShelf } from './memory';
import { createNews, SILENT_NEWS } from './news';
import { createStorage, type ProjectStorage, type Shelf } from './storage';
import { StorageRefusal, storageProblem } from './storageProblem';

interface ProjectDatabase extends DBSchema {
  documents: { key: string; value: unknown };
  summaries: { key: string; value: unknown };
  histories: { key: string; value: unknown };
  notes: { key: string; value: unknown };
  pictures: { key: PictureId; value: unknown };
}
type Database = IDBPDatabase<ProjectDatabase>;

export const DATABASE_NAME = 'wedgewall';
/** Version 2 has the histories, version 3 the pictures. */
const DATABASE_VERSION = 3;
/** Milliseconds to wait for the browser; after that it counts as keeping nothing, so that the page does not wait for ever. */
const PATIENCE = 5_000;

/** So many times longer than to open takes to read or write: a quilt full of photographs takes two seconds on a slow disk. */
const WRITING = 3;

export interface OpenedStorage {
  readonly storage: ProjectStorage;
  /** Why nothing is kept; null where projects are. */
  readonly problem: Problem | null;
  /** The copies that were made of what earlier pages left unsaved. */
  readonly left: readonly LeftCopy[];
}

/**
 * Opens the storage for the app, and saves in it what earlier pages left unsaved. When IndexedDB is missing, refused, blocked
 * or newer, the storage is in memory only and `problem` says why. Never rejects.
 */
export async function openStorage(
  now: () => number = Date.now,
  patience: number = PATIENCE,
): Promise<OpenedStorage> {
  try {
    const shelf = await openShelf(patience);
    const page = Math.random().toString(36).slice(2);
    const notes = createLeavingNotes(() => globalThis.localStorage, page);
    const news = createNews(DATABASE_NAME);
    const storage = createStorage(shelf, {
      news,
      notes,
      now,
      page,
      patience: patience * WRITING,
      check: checkStored,
    });
    let copies = 0;
    const left = await keepLeft(storage, notes, (id) => {
      copies += 1;
      return `${id.slice(0, 40)}-left-${page}-${copies}`;
    });
    return { storage, problem: null, left };
  } catch (error) {
    const storage = createStorage(createMemoryShelf(), { news: SILENT_NEWS, notes: NO_NOTES, now });
    return { storage, problem: storageProblem(error), left: [] };
  }
}

async function openShelf(patience: number): Promise<Shelf> {
  if (typeof indexedDB === 'undefined') {
    const say =
      'This browser saves no quilts (a private window, perhaps). Save to a file before you close the page.';
    throw new StorageRefusal('storage-missing', phrase(say));
  }
  let superseded = false;
  let lost = false;
  const open = () =>
    openDatabase(patience, {
      superseded: () => {
        superseded = true;
      },
      lost: () => {
        lost = true;
      },
    });
  let database = await open();
  /** The open database; opens it again if the browser has closed it (site data cleared, disk trouble). */
  const ready = async () => {
    if (superseded) {
      const say =
        'A newer Wedgewall is open in another tab. Save to a file if you have unsaved work, then reload this page.';
      throw new StorageRefusal('storage-superseded', phrase(say));
    }
    if (lost) {
      lost = false;
      database = await open();
    }
    return database;
  };
  return {
    keeps: true,
    summaries: async () => {
      const store = (await ready()).transaction('summaries').store;
      const [ids, all] = await Promise.all([store.getAllKeys(), store.getAll()]);
      return ids.map((id, index) => [id, all[index]] as const);
    },
    record: async (id) => {
      const reading = (await ready()).transaction(['documents', 'summaries', 'histories']);
      const [document, summary, history] = await Promise.all([
        reading.objectStore('documents').get(id),
        reading.objectStore('summaries').get(id),
        reading.objectStore('histories').get(id),
      ]);
      return document === undefined ? undefined : { document, summary, history };
    },
    change: async (id, decide, pictures) => change(await ready(), id, decide, pictures),
    pictures: async (ids) => {
      const store = (await ready()).transaction('pictures').store;
      const all = await Promise.all(ids.map((id) => store.get(id)));
      return ids.flatMap((id, index) => (all[index] === undefined ? [] : [[id, all[index]] as const]));
    },
    putPictures: async (pictures) => {
      const writing = (await ready()).transaction('pictures', 'readwrite');
      await Promise.all([putAbsent(writing.store, pictures), writing.done]);
    },
    collect: async (held, namedBy) => collect(await ready(), held, namedBy),
    note: async (key) => (await ready()).get('notes', key),
    setNote: async (key, value) => {
      await (await ready()).put('notes', value, key);
    },
    renew: () => {
      // Its transactions still end if the browser answers after all.
      database.close();
      lost = true;
    },
    close: () => database.close(),
  };
}

async function change(
  database: Database,
  id: string,
  decide: Parameters<Shelf['change']>[1],
  pictures: Pictures = NO_PICTURES,
): Promise<void> {
  const writing = database.transaction(['documents', 'summaries', 'histories', 'pictures'], 'readwrite');
  // `done` is awaited below; without this an earlier failure would also show as an unhandled rejection.
  writing.done.catch(() => {});
  const documents = writing.objectStore('documents');
  const summaries = writing.objectStore('summaries');
  const histories = writing.objectStore('histories');
  const next = decide(await summaries.get(id));
  const requests = next
    ? [documents.put(next.document, id), summaries.put(next.summary, id), histories.put(next.history, id)]
    : [documents.delete(id), summaries.delete(id), histories.delete(id)];
  await Promise.all([...requests, putAbsent(writing.objectStore('pictures'), pictures), writing.done]);
}

/** Puts the pictures that are not there; those that are have the same bytes under the same id. */
async function putAbsent(
  store: Pick<IDBPObjectStore<ProjectDatabase, ['pictures'], 'pictures', 'readwrite'>, 'getKey' | 'put'>,
  pictures: Pictures,
): Promise<void> {
  await Promise.all(
    [...pictures].map(async ([id, picture]) => {
      if ((await store.getKey(id)) === undefined) await store.put(picture, id);
    }),
  );
}

async function collect(
  database: Database,
  held: Parameters<Shelf['collect']>[0],
  namedBy: Parameters<Shelf['collect']>[1],
): Promise<void> {
  const writing = database.transaction(['documents', 'summaries', 'histories', 'pictures'], 'readwrite');
  writing.done.catch(() => {});
  const pictures = writing.objectStore('pictures');
  const kept = await pictures.getAllKeys();
  if (kept.length > 0) {
    const named = new Set(held);
    for (const id of await writing.objectStore('summaries').getAllKeys()) {
      const [document, summary, history] = await Promise.all([
        writing.objectStore('documents').get(id),
        writing.objectStore('summaries').get(id),
        writing.objectStore('histories').get(id),
      ]);
      for (const picture of namedBy({ document, summary, history })) named.add(picture);
    }
    await Promise.all(kept.filter((id) => !named.has(id)).map((id) => pictures.delete(id)));
  }
  await writing.done;
}

/** Opens the database, or rejects when another tab holds an older one open or the browser does not answer. */
async function openDatabase(
  patience: number,
  on: { readonly superseded: () => void; readonly lost: () => void },
): Promise<Database> {
  let refuse: (reason: StorageRefusal) => void = () => {};
  const refused = new Promise<never>((_resolve, reject) => {
    refuse = reject;
  });
  const opening = openDB<ProjectDatabase>(DATABASE_NAME, DATABASE_VERSION, {
    upgrade: (database, from) => {
      if (from < 1) {
        database.createObjectStore('documents');
        database.createObjectStore('summaries');
        database.createObjectStore('notes');
      }
      if (from < 2) database.createObjectStore('histories');
      if (from < 3) database.createObjectStore('pictures');
    },
    blocked: () => {
      const say = 'An older Wedgewall is open in another tab. Close that tab, then reload this page.';
      refuse(new StorageRefusal('storage-blocked', phrase(say)));
    },
    blocking: (_current, wanted, event) => {
      (event.target as IDBDatabase).close();
      // If another tab only deletes the database (wanted is null), it can be opened again.
      if (wanted === null) on.lost();
      else on.superseded();
    },
    terminated: on.lost,
  });
  try {
    return await inTime(Promise.race([opening, refused]), patience, () => {});
  } catch (error) {
    // If the database opens after all, it must not stay open.
    opening.then(
      (late) => late.close(),
      () => {},
    );
    throw error;
  }
}
