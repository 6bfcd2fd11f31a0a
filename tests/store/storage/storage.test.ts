import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { EMPTY_HISTORY } from '../../../src/editing/history';
import { createProject } from '../../../src/model/create';
import type { Project } from '../../../src/model/project';
import type { Result } from '../../../src/model/result';
import { DATABASE_NAME, openStorage } from '../../../src/store/storage/indexedDb';
import { NO_NOTES } from '../../../src/store/storage/leaving';
import { createMemoryShelf } from '../../../src/store/storage/memory';
import { SILENT_NEWS } from '../../../src/store/storage/news';
import { createStorage, type ProjectStorage } from '../../../src/store/storage/storage';

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problems.map((problem) => problem.code).join());
  return result.value;
}
const code = (result: Result<unknown>) => (result.ok ? 'ok' : result.problems[0]?.code);

/** A clock that goes on by a second at each look. */
function clock(): () => number {
  let seconds = 0;
  return () => {
    seconds += 1;
    return seconds * 1000;
  };
}

const opened: ProjectStorage[] = [];
async function open(now = clock()): Promise<ProjectStorage> {
  const { storage } = await openStorage(now, 200);
  opened.push(storage);
  return storage;
}
const river = createProject('river', 'River stones');
const meadow = createProject('meadow', 'Meadow');

beforeEach(() => vi.stubGlobal('indexedDB', new IDBFactory()));
afterEach(() => {
  for (const storage of opened.splice(0)) storage.close();
  vi.unstubAllGlobals();
});

const shelves: [string, () => Promise<ProjectStorage>][] = [
  ['IndexedDB', () => open()],
  [
    'memory',
    async () => createStorage(createMemoryShelf(), { news: SILENT_NEWS, notes: NO_NOTES, now: clock() }),
  ],
];

describe.each(shelves)('projects kept in %s', (_name, make) => {
  it('come back as they were saved, with a revision that counts the savings', async () => {
    const storage = await make();
    expect(value(await storage.save(river, 0))).toBe(1);
    const renamed: Project = { ...river, notes: 'wash the indigo first' };
    expect(value(await storage.save(renamed, 1))).toBe(2);
    expect(value(await storage.load('river'))).toEqual({
      project: renamed,
      revision: 2,
      pictures: new Map(),
      history: EMPTY_HISTORY,
    });
  });

  it('are listed with the last changed first, with name and count of blocks', async () => {
    const storage = await make();
    await storage.save(river, 0);
    await storage.save(meadow, 0);
    const listed = value(await storage.list());
    expect(listed.map((summary) => summary.id)).toEqual(['meadow', 'river']);
    expect(listed[1]).toEqual({
      id: 'river', name: 'River stones', changedAt: expect.any(Number) as number, blocks: 0, revision: 1, pictures: [],
      saving: expect.any(String) as string,
    }); // biome-ignore format: a record
    await storage.save(river, 1);
    expect(value(await storage.list())[0]?.id).toBe('river');
  });

  it('are not overwritten from a tab that has an older state', async () => {
    const storage = await make();
    await storage.save(river, 0);
    value(await storage.save({ ...river, notes: 'from the first tab' }, 1));
    expect(code(await storage.save({ ...river, notes: 'from the second tab' }, 1))).toBe('changed-elsewhere');
    expect(code(await storage.save(river, 0))).toBe('changed-elsewhere');
    expect(value(await storage.load('river')).project.notes).toBe('from the first tab');
  });

  it('are not brought back by a tab that did not hear of their removal', async () => {
    const storage = await make();
    await storage.save(river, 0);
    value(await storage.remove('river'));
    expect(code(await storage.save(river, 1))).toBe('removed-elsewhere');
    expect(value(await storage.list())).toEqual([]);
    expect(code(await storage.load('river'))).toBe('no-such-project');
    expect(value(await storage.save(river, 0))).toBe(1);
  });

  it('remember which was last open, until that one is removed', async () => {
    const storage = await make();
    expect(value(await storage.lastOpen())).toBeNull();
    await storage.save(river, 0);
    await storage.save(meadow, 0);
    value(await storage.setLastOpen('river'));
    await storage.remove('meadow');
    expect(value(await storage.lastOpen())).toBe('river');
    await storage.remove('river');
    expect(value(await storage.lastOpen())).toBeNull();
  });

  it('stay kept when damaged, say what is wrong, and can be taken out as text', async () => {
    const storage = await make();
    const damaged = { ...river, wall: { ...river.wall, rows: 7 } };
    await storage.save(damaged, 0);
    const loaded = await storage.load('river');
    if (loaded.ok) throw new Error('the damaged quilt was opened');
    expect(loaded.problems.map((problem) => problem.path)).toEqual(['wall.cells']);
    expect(loaded.damaged).toMatchObject({ id: 'river', name: 'River stones' });
    expect(JSON.parse(loaded.damaged!.text)).toEqual(damaged);
    expect(value(await storage.list())).toHaveLength(1);
    const gone = await storage.load('gone');
    expect(gone.ok || gone.damaged).toBeUndefined();
  });
});

describe('the storage of the page', () => {
  it('keeps projects from one visit to the next', async () => {
    const first = await open();
    expect(first.keeps).toBe(true);
    await first.save(river, 0);
    first.close();
    expect(value(await (await open()).load('river')).project).toEqual(river);
  });

  it('tells other tabs what was saved and removed, and not itself', async () => {
    const [first, second] = [await open(), await open()];
    const heard: unknown[] = [];
    const own = vi.fn();
    first.watch(own);
    await new Promise<void>((resolve) => {
      second.watch((change) => {
        heard.push(change);
        if (change.revision === null) resolve();
      });
      void first.save(river, 0).then(() => first.remove('river'));
    });
    expect(heard).toEqual([
      { id: 'river', revision: 1 },
      { id: 'river', revision: null },
    ]);
    expect(own).not.toHaveBeenCalled();
  });

  it('refuses the second of two tabs that save at the same moment', async () => {
    const [first, second] = [await open(), await open()];
    await first.save(river, 0);
    const both = await Promise.all([
      first.save({ ...river, notes: 'a' }, 1),
      second.save({ ...river, notes: 'b' }, 1),
    ]);
    expect(new Set(both.map(code))).toEqual(new Set(['changed-elsewhere', 'ok']));
  });

  it('still lists a project whose summary is damaged', async () => {
    const storage = await open();
    await storage.save(river, 0);
    const database = await openDB(DATABASE_NAME);
    await database.put('summaries', { name: 7 }, 'river');
    database.close();
    expect(value(await storage.list()).map((summary) => summary.id)).toEqual(['river']);
    expect(value(await storage.load('river')).project).toEqual(river);
  });

  it('works without IndexedDB and says that nothing is kept', async () => {
    vi.stubGlobal('indexedDB', undefined);
    const { storage, problem } = await openStorage();
    expect(problem?.code).toBe('storage-missing');
    expect(storage.keeps).toBe(false);
    value(await storage.save(river, 0));
    expect(value(await storage.load('river')).project).toEqual(river);
  });

  it('works where the browser refuses the database', async () => {
    vi.stubGlobal('indexedDB', {
      open: () => {
        throw new DOMException('denied', 'SecurityError');
      },
    });
    const { storage, problem } = await openStorage();
    expect([problem?.code, storage.keeps]).toEqual(['storage-refused', false]);
  });

  it('does not wait for ever for a browser that does not answer', async () => {
    vi.stubGlobal('indexedDB', { open: () => new EventTarget() });
    vi.stubGlobal('IDBRequest', EventTarget);
    const { storage, problem } = await openStorage(Date.now, 20);
    expect([problem?.code, storage.keeps]).toEqual(['storage-silent', false]);
  });

  it('leaves projects of a newer Wedgewall alone', async () => {
    (await openDB(DATABASE_NAME, 99)).close();
    const { storage, problem } = await openStorage();
    expect([problem?.code, storage.keeps]).toEqual(['storage-newer', false]);
  });

  it('makes way for a newer Wedgewall in another tab and says so from then on', async () => {
    const storage = await open();
    await storage.save(river, 0);
    const newer = await openDB(DATABASE_NAME, 99);
    expect(code(await storage.save(river, 1))).toBe('storage-superseded');
    expect(code(await storage.list())).toBe('storage-superseded');
    newer.close();
  });

  it('opens the database again after the site data was cleared', async () => {
    const storage = await open();
    await storage.save(river, 0);
    await new Promise((resolve, reject) => {
      const deletion = indexedDB.deleteDatabase(DATABASE_NAME);
      deletion.onsuccess = resolve;
      deletion.onerror = reject;
    });
    expect(value(await storage.list())).toEqual([]);
    expect(value(await storage.save(river, 1))).toBe(1);
  });

  it('keeps the old state and gives the reason when the room runs out, with no failure left unhandled', async () => {
    const unhandled = vi.fn();
    process.on('unhandledRejection', unhandled);
    const storage = await open();
    await storage.save(river, 0);
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    expect(code(await storage.save({ ...river, notes: 'long' }, 1))).toBe('storage-full');
    put.mockRestore();
    await new Promise((resolve) => setTimeout(resolve, 20));
    process.off('unhandledRejection', unhandled);
    expect(unhandled).not.toHaveBeenCalled();
    expect(value(await storage.load('river'))).toMatchObject({ revision: 1, project: { notes: '' } });
  });

  it('names the reason of a failure it does not know', async () => {
    const storage = createStorage(
      { ...createMemoryShelf(), summaries: () => Promise.reject(new Error('disk on fire')) },
      { news: SILENT_NEWS, notes: NO_NOTES, now: clock() },
    );
    const listed = await storage.list();
    expect(listed.ok ? null : listed.problems[0]?.message.with).toEqual({ reason: 'disk on fire' });
  });
});
