// Faults of the browser's storage: each is told by its own cause, nothing is overwritten, and a saving that can succeed later does.
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createProject } from '../../../src/model/create';
import type { Result } from '../../../src/model/result';
import { DATABASE_NAME, openStorage } from '../../../src/store/storage/indexedDb';
import { NO_NOTES } from '../../../src/store/storage/leaving';
import { createMemoryShelf } from '../../../src/store/storage/memory';
import { createNews, SILENT_NEWS } from '../../../src/store/storage/news';
import { createStorage, type ProjectStorage, type Shelf } from '../../../src/store/storage/storage';

const code = (result: Result<unknown>) => (result.ok ? result.value : result.problems[0]?.code);
const river = createProject('river', 'River stones');
const noted = (notes: string) => ({ ...river, notes });

const opened: ProjectStorage[] = [];
async function open(): Promise<ProjectStorage> {
  const { storage } = await openStorage(() => 0, 200);
  opened.push(storage);
  return storage;
}
const emptied = () =>
  new Promise((resolve, reject) => {
    const deletion = indexedDB.deleteDatabase(DATABASE_NAME);
    deletion.onsuccess = resolve;
    deletion.onerror = reject;
  });

beforeEach(() => vi.stubGlobal('indexedDB', new IDBFactory()));
afterEach(() => {
  for (const storage of opened.splice(0)) storage.close();
  vi.unstubAllGlobals();
});

describe('a channel to other windows that fails', () => {
  const failing = [
    ['cannot be opened', { construct: true }],
    ['refuses every message', { construct: false }],
  ] as const;
  it.each(failing)('that %s leaves savings as they are', async (_how, { construct }) => {
    vi.stubGlobal(
      'BroadcastChannel',
      class extends EventTarget {
        constructor() {
          super();
          if (construct) throw new DOMException('denied', 'SecurityError');
        }
        postMessage(): never {
          throw new DOMException('closed', 'InvalidStateError');
        }
        close() {}
      },
    );
    const storage = await open();
    expect(storage.keeps).toBe(true);
    expect(code(await storage.save(river, 0))).toBe(1);
    expect(code(await storage.save(noted('more'), 1))).toBe(2);
    expect(code(await storage.remove('river'))).toBeNull();
    expect(() => createNews('any').tell({ id: 'river', revision: 1 })).not.toThrow();
  });
});

describe('what is kept and is not what was left there', () => {
  it('is saved anew when the site data was cleared, for nobody removed it', async () => {
    const storage = await open();
    await storage.save(river, 0);
    await storage.save(noted('two'), 1);
    await emptied();
    expect(code(await storage.save(noted('three'), 2))).toBe(1);
    const loaded = await storage.load('river');
    expect(loaded.ok && loaded.value.project.notes).toBe('three');
  });

  it('is not brought back after it was removed, also by a window that heard nothing', async () => {
    const [first, second] = [await open(), await open()];
    await first.save(river, 0);
    await second.remove('river');
    expect(code(await first.save(noted('more'), 1))).toBe('removed-elsewhere');
    expect(code(await first.save(noted('more'), 0))).toBe(1);
  });

  it('has its damaged summary mended by the next saving of the window that kept it', async () => {
    const storage = await open();
    await storage.save(river, 0);
    await storage.save(noted('two'), 1);
    const database = await openDB(DATABASE_NAME);
    await database.put('summaries', { name: 7 }, 'river');
    expect(code(await storage.save(noted('three'), 2))).toBe(3);
    expect(await database.get('summaries', 'river')).toMatchObject({ name: 'River stones', revision: 3 });
    database.close();
  });

  it('is not overwritten where its summary is damaged and its document another', async () => {
    const [first, second] = [await open(), await open()];
    await first.save(river, 0);
    await second.save(noted('of the second'), 1);
    const database = await openDB(DATABASE_NAME);
    await database.put('summaries', 'gone', 'river');
    database.close();
    expect(code(await first.save(noted('of the first'), 1))).toBe('changed-elsewhere');
    const loaded = await first.load('river');
    expect(loaded.ok && loaded.value.project.notes).toBe('of the second');
  });
});

describe('a saving that never answers', () => {
  /** A shelf whose changes are held back until they are let through. */
  function slow() {
    const shelf = createMemoryShelf();
    const held: (() => void)[] = [];
    let holds = true;
    const change: Shelf['change'] = async (...given) => {
      if (holds) await new Promise<void>((resolve) => held.push(resolve));
      await shelf.change(...given);
    };
    const storage = createStorage(
      { ...shelf, change },
      { news: SILENT_NEWS, notes: NO_NOTES, now: () => 0, page: 'this', patience: 20 },
    );
    const letThrough = async () => {
      holds = false;
      for (const go of held.splice(0)) go();
      await new Promise((resolve) => setTimeout(resolve, 5));
    };
    return { shelf, storage, letThrough };
  }

  it('is given up with its cause', async () => {
    const { storage } = slow();
    expect(code(await storage.save(river, 0))).toBe('storage-silent');
  });

  it('and succeeds after all is this window’s own, not that of another', async () => {
    const { storage, letThrough } = slow();
    expect(code(await storage.save(river, 0))).toBe('storage-silent');
    expect(code(await storage.save(noted('two'), 0))).toBe('storage-silent');
    await letThrough();
    expect(code(await storage.save(noted('three'), 0))).toBe(3);
    const loaded = await storage.load('river');
    expect(loaded.ok && loaded.value.project.notes).toBe('three');
  });

  it('and succeeds before another window saves is still not overwritten', async () => {
    const { shelf, storage, letThrough } = slow();
    await storage.save(river, 0);
    await letThrough();
    const other = createStorage(shelf, { news: SILENT_NEWS, notes: NO_NOTES, now: () => 0, page: 'other' });
    expect(code(await other.save(noted('other'), 1))).toBe(2);
    expect(code(await storage.save(noted('three'), 0))).toBe('changed-elsewhere');
  });

  it('of a database that hangs is given up, and the next one opens it anew', async () => {
    const storage = await open();
    await storage.save(river, 0);
    const never = new Promise(() => {}) as unknown as IDBRequest<IDBValidKey>;
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => never);
    expect(code(await storage.save(noted('two'), 1))).toBe('storage-silent');
    put.mockRestore();
    expect(code(await storage.save(noted('three'), 1))).toBe(2);
  });
});
