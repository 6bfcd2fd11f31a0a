// Pictures kept in the browser: whatever quilts do, every picture that can be reached is there, and after collecting no other is.
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import fc from 'fast-check';
import { openDB } from 'idb';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { addFabric, removeFabric } from '../../../src/editing/commands/fabrics';
import { createProject } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import {
  type PictureId,
  type Pictures,
  picturesNamed,
  picturesUsed,
} from '../../../src/model/picture/picture';
import type { Project } from '../../../src/model/project';
import type { Result } from '../../../src/model/result';
import { createPicturesAtHand } from '../../../src/store/picturesAtHand';
import { type Session, startSession } from '../../../src/store/session';
import { DATABASE_NAME, openStorage } from '../../../src/store/storage/indexedDb';
import type { ProjectStorage } from '../../../src/store/storage/storage';
import { imageFile, keptPicture, photographed } from '../../model/picture/images';
import { runs } from '../../runs';

const SOME = 5;
let files: Uint8Array[];
let all: Pictures;
beforeAll(async () => {
  const wishes = Array.from({ length: SOME }, (_, at) => ({ width: 3 + at, height: 4 }));
  files = await Promise.all(wishes.map(imageFile));
  all = new Map(await Promise.all(wishes.map(keptPicture)));
});

class NotedStorage implements Storage {
  readonly notes = new Map<string, string>();
  get length() {
    return this.notes.size;
  }
  key = (index: number) => [...this.notes.keys()][index] ?? null;
  getItem = (key: string) => this.notes.get(key) ?? null;
  setItem = (key: string, value: string) => void this.notes.set(key, value);
  removeItem = (key: string) => void this.notes.delete(key);
  clear = () => this.notes.clear();
}

const opened: ProjectStorage[] = [];
async function open(): Promise<ProjectStorage> {
  const { storage, problem } = await openStorage(() => 1, 5_000);
  expect(problem).toBeNull();
  opened.push(storage);
  return storage;
}

function fresh(): void {
  vi.stubGlobal('indexedDB', new IDBFactory());
  vi.stubGlobal('localStorage', new NotedStorage());
}
beforeEach(fresh);
afterEach(() => {
  for (const storage of opened.splice(0)) storage.close();
  vi.unstubAllGlobals();
});

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problems.map((problem) => problem.code).join());
  return result.value;
}

/** What the database holds, read without the storage. */
async function inDatabase(): Promise<{ pictures: Set<string>; named: ReadonlySet<string> }> {
  const database = await openDB(DATABASE_NAME);
  const pictures = new Set((await database.getAllKeys('pictures')) as string[]);
  const named = picturesNamed([await database.getAll('documents'), await database.getAll('histories')]);
  database.close();
  return { pictures, named };
}

const ids = { at: 0 };
async function visit(storage: ProjectStorage): Promise<Session> {
  const note = { read: () => 'in' as const, write: () => {} };
  const freshId = () => {
    ids.at += 1;
    return `quilt-${ids.at}`;
  };
  return startSession(storage, null, [], freshId, { note, usual: 'in' });
}

/** Everything that the open quilt names, or can name again by undo or redo. */
function reachable(session: Session): ReadonlySet<PictureId> {
  const { project, history } = session.app.getState();
  return picturesNamed([project, history]);
}

type Act = { readonly kind: 'add' | 'drop' | 'undo' | 'redo' | 'copy' | 'new' | 'remove' | 'other' | 'visit'; readonly which: number }; // biome-ignore format: short
const acts: fc.Arbitrary<Act[]> = fc.array(
  fc.record({
    kind: fc.constantFrom(
      'add',
      'add',
      'drop',
      'undo',
      'undo',
      'redo',
      'copy',
      'new',
      'remove',
      'other',
      'visit',
    ),
    which: fc.nat(SOME - 1),
  }),
  { minLength: 4, maxLength: 16 },
);

async function act(session: Session, storage: ProjectStorage, { kind, which }: Act): Promise<void> {
  const app = session.app.getState();
  const kept = value(await storage.list()).filter((one) => one.id !== app.project.id);
  const other = kept[which % Math.max(1, kept.length)]?.id;
  const photos = app.project.fabrics.filter((fabric) => fabric.cloth.kind === 'photo');
  const photo = photos[which % Math.max(1, photos.length)];
  if (kind === 'add') {
    const id = value(await session.takePicture(files[which]!));
    app.run(addFabric(photographed(id)));
  } else if (kind === 'drop' && photo) app.run(removeFabric(app.project, photo.id));
  else if (kind === 'undo') app.undo();
  else if (kind === 'redo') app.redo();
  else if (kind === 'copy') await session.openCopy('Copy');
  else if (kind === 'new') await session.openNew('New');
  else if (kind === 'remove' && other) await session.remove(other);
  else if (kind === 'other' && other) expect(await session.openKept(other)).toEqual([]);
}

describe('pictures kept in the browser', () => {
  it('are there while anything can reach them, and gone when nothing can', async () => {
    let most = 0;
    let gone = 0;
    await fc.assert(
      fc.asyncProperty(acts, async (list) => {
        fresh();
        let storage = await open();
        let session = await visit(storage);
        let before = 0;
        for (const one of list) {
          if (one.kind === 'visit') {
            // The page goes away with its last change only noted, and comes again.
            session.leave();
            await session.flush();
            storage.close();
            storage = await open();
            session = await visit(storage);
          } else await act(session, storage, one);
          expect(await session.flush()).toBe('saved');
          const { pictures } = session.pictures.state.getState();
          for (const id of reachable(session)) expect(pictures.get(id)).toEqual(all.get(id));
          const { pictures: kept, named } = await inDatabase();
          for (const id of named) expect(kept.has(id)).toBe(true);
          const held = new Set(pictures.keys());
          value(await storage.collectPictures(held));
          const after = await inDatabase();
          expect([...after.pictures].filter((id) => !named.has(id) && !held.has(id))).toEqual([]);
          for (const id of [...named, ...reachable(session)]) expect(after.pictures.has(id)).toBe(true);
          most = Math.max(most, after.pictures.size);
          gone += Math.max(0, before - after.pictures.size);
          before = after.pictures.size;
        }
        storage.close();
      }),
      { seed: 12, numRuns: runs(12, 60) },
    );
    expect(most).toBeGreaterThan(2);
    expect(gone).toBeGreaterThan(0);
  });

  it('are kept once, however many quilts name them', async () => {
    const storage = await open();
    const [id] = [...all.keys()] as [string];
    const named = (quilt: string): Project => {
      const project = createProject(quilt, quilt);
      return { ...project, fabrics: [...project.fabrics, photographed(id)] };
    };
    for (const quilt of ['one', 'two', 'three']) value(await storage.save(named(quilt), 0, undefined, all));
    expect([...(await inDatabase()).pictures]).toEqual([id]);
    expect(value((await storage.load('two')) as Result<{ pictures: Pictures }>).pictures).toEqual(
      new Map([[id, all.get(id)]]),
    );
    for (const quilt of ['one', 'two']) value(await storage.remove(quilt));
    value(await storage.collectPictures(new Set()));
    expect((await inDatabase()).pictures.size).toBe(1);
    value(await storage.remove('three'));
    value(await storage.collectPictures(new Set()));
    expect((await inDatabase()).pictures.size).toBe(0);
  });

  it('stay for a quilt whose summary is damaged, and for what was left unsaved', async () => {
    const storage = await open();
    const [one, two, three] = [...all.keys()] as [string, string, string];
    const project = { ...createProject('p', 'P'), fabrics: [photographed(one)] };
    value(await storage.save(project, 0, undefined, all));
    value(await storage.keepPictures(all));
    storage.leave({ ...createProject('q', 'Q'), fabrics: [photographed(two)] }, 0);
    const database = await openDB(DATABASE_NAME);
    await database.put('summaries', 'broken', 'p');
    database.close();
    value(await storage.collectPictures(new Set([three])));
    expect((await inDatabase()).pictures).toEqual(new Set([one, two, three]));
  });

  it('come to a browser that kept quilts before there were pictures', async () => {
    const old = await openDB(DATABASE_NAME, 2, {
      upgrade: (database) => {
        for (const name of ['documents', 'summaries', 'notes', 'histories']) database.createObjectStore(name);
      },
    });
    const project = createProject('p', 'Old');
    await old.put('documents', project, 'p');
    await old.put('summaries', { id: 'p', name: 'Old', changedAt: 1, blocks: 0, revision: 1 }, 'p');
    old.close();
    const storage = await open();
    const loaded = await storage.load('p');
    expect(loaded.ok && loaded.value.project).toEqual(project);
    const [id] = [...all.keys()] as [string];
    value(await storage.save({ ...project, fabrics: [photographed(id)] }, 1, undefined, all));
    expect([...(await inDatabase()).pictures]).toEqual([id]);
  });

  it('that are missing are told, and the quilt opens with all it knows', async () => {
    const storage = await open();
    const session = await visit(storage);
    const id = value(await session.takePicture(files[0]!));
    session.app.getState().run(addFabric(photographed(id)));
    await session.flush();
    const database = await openDB(DATABASE_NAME);
    await database.clear('pictures');
    database.close();
    const again = await visit(storage);
    expect([...picturesUsed(again.app.getState().project)]).toEqual([id]);
    expect(again.state.getState().remarks.map((one) => speak(one))).toEqual([
      'The picture of Rust was left out: it is no longer saved here.',
      'What lacks its picture is drawn in its mean colour.',
    ]);
  });

  it('are refused with a sentence where the browser has no room, and nothing names them', async () => {
    const session = await visit(await open());
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    const taken = await session.takePicture(files[0]!);
    put.mockRestore();
    expect(taken.ok ? '' : speak(taken.problems[0]!.message)).toContain('no room left');
    expect(session.pictures.state.getState().pictures.size).toBe(0);
  });

  it('are refused with a sentence where they are no pictures', async () => {
    const session = await visit(await open());
    const taken = await session.takePicture(new TextEncoder().encode('<svg/>'));
    expect(taken.ok ? '' : speak(taken.problems[0]!.message)).toBe(
      'This picture cannot be used: it is no JPEG, PNG or WebP picture.',
    );
  });
});

describe('pictures at hand', () => {
  it('have an address each while they are at hand, and every other address is revoked', () => {
    const quilts = fc.array(fc.tuple(fc.boolean(), fc.nat(2 ** SOME - 1)), { maxLength: 20 });
    fc.assert(
      fc.property(quilts, (steps) => {
        const living = new Set<string>();
        let made = 0;
        const hand = createPicturesAtHand(undefined, {
          make: () => {
            made += 1;
            living.add(`blob:${made}`);
            return `blob:${made}`;
          },
          revoke: (address) => expect(living.delete(address)).toBe(true),
        });
        for (const [adds, mask] of steps) {
          const some = new Map([...all].filter((_, at) => mask & (1 << at)));
          if (adds) hand.add(some);
          else hand.replace(some);
          const { pictures, hrefOf } = hand.state.getState();
          for (const id of some.keys()) expect(pictures.has(id)).toBe(true);
          if (!adds) expect(pictures).toEqual(some);
          expect(new Set(Array.from(pictures.keys(), hrefOf))).toEqual(living);
          for (const id of all.keys()) expect(hrefOf(id) !== null).toBe(pictures.has(id));
        }
      }),
      { seed: 12, numRuns: 200 },
    );
  });
});
