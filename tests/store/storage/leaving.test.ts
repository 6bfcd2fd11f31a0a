import { beforeEach, describe, expect, it } from 'vitest';
import { createProject } from '../../../src/model/create';
import type { Project } from '../../../src/model/project';
import type { Result } from '../../../src/model/result';
import { keepLeft } from '../../../src/store/storage/keepLeft';
import { createLeavingNotes, type LeavingNotes } from '../../../src/store/storage/leaving';
import { createMemoryShelf } from '../../../src/store/storage/memory';
import { SILENT_NEWS } from '../../../src/store/storage/news';
import { createStorage, type ProjectStorage } from '../../../src/store/storage/storage';

/** What the tests need of localStorage: texts by name, in order, refusing to grow past `room` letters. */
class Texts extends Map<string, string> {
  room = 1e6;
  get length() {
    return this.size;
  }
  key = (index: number) => [...this.keys()][index] ?? null;
  getItem = (name: string) => this.get(name) ?? null;
  removeItem = (name: string) => void this.delete(name);
  setItem(name: string, text: string) {
    if (text.length > this.room) throw new DOMException('no room', 'QuotaExceededError');
    this.set(name, text);
  }
}

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problems.map((problem) => problem.code).join());
  return result.value;
}
const river = createProject('river', 'River stones');
const withNotes = (notes: string): Project => ({ ...river, notes });

let texts: Texts;
let notes: LeavingNotes;
let storage: ProjectStorage;
const notesOf = (page: string) => createLeavingNotes(() => texts as unknown as Storage, page);
const visitAgain = () => keepLeft(storage, notesOf('later'), (id) => `${id}-copy`);
const kept = async () => value(await storage.list()).map(({ id, name }) => `${id}: ${name}`);

beforeEach(async () => {
  texts = new Texts();
  notes = notesOf('first');
  storage = createStorage(createMemoryShelf(), { news: SILENT_NEWS, notes, now: () => 0 });
  await storage.save(river, 0);
});

describe('work left unsaved when the page went away', () => {
  it('is kept at the next visit', async () => {
    expect(storage.leave(withNotes('last words'), 1)).toBe(true);
    await visitAgain();
    expect(value(await storage.load('river'))).toMatchObject({
      revision: 2,
      project: { notes: 'last words' },
    });
    expect(texts.size).toBe(0);
  });

  it('needs no note when its saving succeeds after all', async () => {
    storage.leave(withNotes('last words'), 1);
    await storage.save(withNotes('last words'), 1);
    expect(texts.size).toBe(0);
  });

  it('is not kept twice when it was saved but the note stayed', async () => {
    notesOf('other').leave(withNotes('last words'), 1);
    await storage.save(withNotes('last words'), 1);
    expect(texts.size).toBe(1);
    await visitAgain();
    expect([await kept(), texts.size]).toEqual([['river: River stones'], 0]);
  });

  it('becomes a copy beside a project that was changed elsewhere meanwhile', async () => {
    notesOf('other').leave(withNotes('from the other tab'), 1);
    await storage.save(withNotes('from this tab'), 1);
    await visitAgain();
    expect(await kept()).toEqual(['river: River stones', 'river-copy: River stones (left unsaved)']);
    expect(value(await storage.load('river')).project.notes).toBe('from this tab');
    expect(value(await storage.load('river-copy')).project.notes).toBe('from the other tab');
  });

  it('does not bring a project back that this window removed itself', async () => {
    storage.leave(withNotes('last words'), 1);
    await storage.remove('river');
    await visitAgain();
    expect([await kept(), texts.size]).toEqual([[], 0]);
  });

  it('becomes a copy where another window removed the project, and is told', async () => {
    notesOf('other').leave(withNotes('last words'), 1);
    await storage.remove('river');
    expect(await visitAgain()).toEqual([{ of: 'River stones', name: 'River stones (left unsaved)' }]);
    expect([await kept(), texts.size]).toEqual([['river-copy: River stones (left unsaved)'], 0]);
  });

  it('of three windows becomes copies with names of their own, all told', async () => {
    for (const page of ['one', 'two', 'three']) notesOf(page).leave(withNotes(`from ${page}`), 1);
    await storage.save(withNotes('from this tab'), 1);
    let copies = 0;
    const told = await keepLeft(storage, notesOf('later'), (id) => {
      copies += 1;
      return `${id}-${copies}`;
    });
    const endings = ['(left unsaved)', '(left unsaved 2)', '(left unsaved 3)'];
    expect(told.map(({ name }) => name)).toEqual(endings.map((ending) => `River stones ${ending}`));
    expect(new Set(await kept()).size).toBe(4);
  });

  it('waits on when it cannot be kept yet', async () => {
    storage.leave(withNotes('last words'), 1);
    const full = createStorage(
      { ...createMemoryShelf(), change: () => Promise.reject(new DOMException('', 'QuotaExceededError')) },
      { news: SILENT_NEWS, notes, now: () => 0 },
    );
    await keepLeft(full, notes, (id) => id);
    expect(texts.size).toBe(1);
    await visitAgain();
    expect(value(await storage.load('river')).project.notes).toBe('last words');
  });

  it('says so when there is no room for a note, or no place for one', () => {
    texts.room = 10;
    expect(storage.leave(river, 1)).toBe(false);
    expect(createLeavingNotes(() => undefined, 'first').leave(river, 1)).toBe(false);
    const refused = createLeavingNotes(() => {
      throw new DOMException('denied', 'SecurityError');
    }, 'first');
    expect([refused.leave(river, 1), refused.takeAll()]).toEqual([false, []]);
  });

  it('is passed over when its note cannot be read, and other entries stay', async () => {
    texts.setItem('wedgewall-left:x:y', '{"revision": 1');
    texts.setItem('wedgewall-left:x:z', '{"revision": 1, "document": {"format": "letter"}}');
    texts.setItem('something else', 'kept');
    await visitAgain();
    expect([await kept(), [...texts.keys()]]).toEqual([['river: River stones'], ['something else']]);
  });
});
