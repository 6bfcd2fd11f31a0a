// Two windows with the same quilt: one shows at once what the other has saved; where both have changed it, nothing of either is lost: this
// window's state is a copy until one of the two is taken, and an undo gives the other.
import { beforeEach, describe, expect, it } from 'vitest';
import { renameProject } from '../../src/editing/commands/setting';
import { createProject } from '../../src/model/create';
import { speak } from '../../src/model/phrase';
import { documentOf } from '../../src/store/app';
import { firstDemo } from '../../src/store/firstQuilt';
import { type Session, startSession } from '../../src/store/session';
import { type LeavingNotes, NO_NOTES } from '../../src/store/storage/leaving';
import { createMemoryShelf } from '../../src/store/storage/memory';
import type { ProjectChange, ProjectNews } from '../../src/store/storage/news';
import { createStorage, type Shelf } from '../../src/store/storage/storage';

type Listener = (change: ProjectChange) => void;

/** A browser: one shelf, and news from each window to all others, held back while `deaf`. */
function browser() {
  const shelf: Shelf = { ...createMemoryShelf(), keeps: true };
  const windows: Listener[][] = [];
  const state = { deaf: false };
  let ids = 0;
  const news = (): ProjectNews => {
    const own: Listener[] = [];
    windows.push(own);
    return {
      tell: (change) => {
        if (state.deaf) return;
        for (const other of windows) if (other !== own) for (const listener of other) listener(change);
      },
      watch: (listener) => {
        own.push(listener);
        return () => {};
      },
      close: () => {},
    };
  };
  const storage = (notes: LeavingNotes = NO_NOTES) =>
    createStorage(shelf, { news: news(), notes, now: () => 1, page: `page${windows.length}` });
  const visit = (note = { id: null as string | null }, notes?: LeavingNotes) =>
    startSession(
      storage(notes),
      null,
      [],
      () => {
        ids += 1;
        return `id${ids}`;
      },
      { note: { read: () => 'in' as const, write: () => {} }, usual: 'in' },
      {
        left: [],
        ofWindow: {
          read: () => note.id,
          write: (id) => {
            note.id = id;
          },
        },
      },
    );
  return { shelf, state, storage, visit };
}

const settled = async () => {
  for (let turn = 0; turn < 40; turn += 1) await new Promise((resolve) => setImmediate(resolve));
};
const name = (session: Session) => session.app.getState().project.name;
const names = (session: Session) =>
  session.state
    .getState()
    .projects.map((one) => one.name)
    .sort();
const rename = (session: Session, to: string) => session.app.getState().run(renameProject(to));
const river = createProject('river', 'River stones');

let open: ReturnType<typeof browser>;
let first: Session;
let second: Session;

beforeEach(async () => {
  open = browser();
  const storage = open.storage();
  await storage.save(river, 0);
  await storage.setLastOpen('river');
  first = await open.visit();
  second = await open.visit();
  await settled();
});

/** Both windows change the quilt before either hears of the other; the first saves first. */
async function bothChange() {
  rename(first, 'By the first');
  rename(second, 'By the second');
  await first.flush();
  await second.flush();
  await settled();
}

describe('a window that is still', () => {
  it('shows at once what another has saved, in its place, with the undo of it', async () => {
    second.app.getState().goTo('blocks');
    rename(first, 'Renamed');
    await first.flush();
    await settled();
    expect([name(second), second.app.getState().step]).toEqual(['Renamed', 'blocks']);
    expect(second.state.getState()).toMatchObject({ saving: 'saved', problem: null, conflict: null });
    second.app.getState().undo();
    await second.flush();
    await settled();
    expect([name(first), name(second)]).toEqual(['River stones', 'River stones']);
  });

  it('goes on in turn with the other for as long as they like, without a conflict', async () => {
    for (let turn = 0; turn < 12; turn += 1) {
      const window = turn % 2 === 0 ? first : second;
      rename(window, `Turn ${turn}`);
      await window.flush();
      await settled();
      expect([name(first), name(second)]).toEqual([`Turn ${turn}`, `Turn ${turn}`]);
    }
    expect(names(first)).toEqual(['Turn 11']);
  });

  it('that heard nothing sees it when it is looked at again', async () => {
    open.state.deaf = true;
    rename(first, 'Renamed');
    await first.flush();
    await settled();
    expect(name(second)).toBe('River stones');
    await second.refresh();
    await settled();
    expect(name(second)).toBe('Renamed');
  });
});

describe('two windows that have both changed a quilt', () => {
  it('keep both states, this one as a copy with a name of its own, and what is typed from then on', async () => {
    await bothChange();
    expect(second.state.getState()).toMatchObject({ saving: 'saved', problem: null });
    expect(second.state.getState().conflict).not.toBeNull();
    expect(name(second)).toBe('By the second');
    expect(names(first)).toEqual(['By the first', 'By the second (of this window)']);
    rename(second, 'Typed since');
    await second.flush();
    expect(names(second)).toEqual(['By the first', 'Typed since (of this window)']);
    expect(name(first)).toBe('By the first');
  });

  it('after a crash the window opens its own state again, and the other is in the list', async () => {
    const note = { id: null as string | null };
    second = await open.visit(note);
    await bothChange();
    const again = await open.visit(note);
    await settled();
    expect(name(again)).toBe('By the second (of this window)');
    expect(names(again)).toEqual(['By the first', 'By the second (of this window)']);
  });

  it('can both be looked at', async () => {
    await bothChange();
    expect((await second.otherState())?.project.name).toBe('By the first');
    expect(name(second)).toBe('By the second');
  });

  it.each([
    ['this', 'By the second', 'By the first'],
    ['other', 'By the first', 'By the second'],
  ] as const)(
    'go on with the state of %s window; an undo gives the other, in both',
    async (which, taken, left) => {
      await bothChange();
      expect(await second.take(which)).toEqual([]);
      await settled();
      expect([name(first), name(second), names(second)]).toEqual([taken, taken, [taken]]);
      expect(second.state.getState()).toMatchObject({ saving: 'saved', conflict: null });
      second.app.getState().undo();
      await second.flush();
      await settled();
      expect([name(first), name(second)]).toEqual([left, left]);
      second.app.getState().undo();
      await second.flush();
      await settled();
      expect([name(first), name(second)]).toEqual(['River stones', 'River stones']);
      expect(documentOf(first.app.getState())).toEqual(river);
    },
  );

  it('lose nothing where the other goes on changing while one is taken', async () => {
    await bothChange();
    open.state.deaf = true;
    rename(first, 'First again');
    await first.flush();
    expect(await second.take('this')).toEqual([]);
    second.app.getState().undo();
    expect(name(second)).toBe('First again');
  });
});

describe('a quilt that another window removed', () => {
  beforeEach(async () => {
    await first.openNew('Another');
    await first.remove('river');
    await settled();
    await second.flush();
  });

  it('stays open, is said not to be saved, and is saved again by one press', async () => {
    expect(name(second)).toBe('River stones');
    expect(second.state.getState().problem?.code).toBe('removed-elsewhere');
    expect(second.isAtRisk()).toBe(true);
    second.filed();
    expect(second.isAtRisk()).toBe(false);
    expect(await second.saveAgain()).toEqual([]);
    await settled();
    expect(second.state.getState()).toMatchObject({ saving: 'saved', problem: null });
    expect(names(first)).toEqual(['Another', 'River stones']);
  });

  it('is noted with what was changed since, so that a crash does not take it', async () => {
    const left: string[] = [];
    const notes = { ...NO_NOTES, leave: (project: typeof river) => left.push(project.name) > 0 };
    const third = await open.visit({ id: null }, notes);
    await settled();
    await third.openKept(third.state.getState().projects[0]!.id);
    const { id } = third.app.getState().project;
    await first.openNew('Yet another');
    await first.remove(id);
    await settled();
    rename(third, 'Changed since');
    await third.flush();
    expect(left.at(-1)).toBe('Changed since');
  });

  it('does not hold up the opening of another', async () => {
    const { id } = second.state.getState().projects[0]!;
    expect(await second.openKept(id)).toEqual([]);
    expect(name(second)).toBe('Another');
    expect(second.state.getState().problem).toBeNull();
  });
});

describe('a window that is loaded again', () => {
  it('opens its own quilt, not the one last opened in another', async () => {
    const [one, other] = [{ id: null as string | null }, { id: null as string | null }];
    const window = await open.visit(one);
    await (await open.visit(other)).openNew('Another');
    expect([one.id, name(window)]).toEqual(['river', 'River stones']);
    expect(name(await open.visit(one))).toBe('River stones');
    expect(name(await open.visit(other))).toBe('Another');
  });

  it('opens the next quilt that is sound where its own is damaged, and tells of the damaged one', async () => {
    const storage = open.storage();
    await storage.save({ ...createProject('meadow', 'Meadow'), wall: { ...river.wall, rows: 7 } }, 0);
    const again = await open.visit({ id: 'meadow' });
    expect(name(again)).toBe('River stones');
    expect(again.state.getState().damaged?.name).toBe('Meadow');
    expect((await storage.load('meadow')).ok).toBe(false);
  });

  it('saves its quilt anew where the browser’s data was cleared, and says so', async () => {
    await open.shelf.change('river', () => null);
    await first.refresh();
    await settled();
    await first.flush();
    expect(names(first)).toEqual(['River stones']);
    expect(first.state.getState().toTell.map((one) => speak(one))).toEqual([
      'The quilts saved in this browser were cleared, not by Wedgewall. This one is saved again.',
    ]);
  });
});

describe('work at risk', () => {
  it('is none in what is saved', async () => {
    expect(first.isAtRisk()).toBe(false);
    rename(first, 'Renamed');
    await first.flush();
    expect(first.isAtRisk()).toBe(false);
  });

  it('is what was changed where nothing is kept, until it is saved to a file', async () => {
    const storage = createStorage(createMemoryShelf(), {
      news: { tell: () => {}, watch: () => () => {}, close: () => {} },
      notes: NO_NOTES,
      now: () => 0,
    });
    const unit = { note: { read: () => 'in' as const, write: () => {} }, usual: 'in' as const };
    let ids = 0;
    const fresh = () => {
      ids += 1;
      return `m${ids}`;
    };
    const session = await startSession(storage, null, [], fresh, unit);
    expect(session.isAtRisk()).toBe(false);
    rename(session, 'Renamed');
    await session.flush();
    expect(session.isAtRisk()).toBe(true);
    session.filed();
    expect(session.isAtRisk()).toBe(false);
    rename(session, 'Renamed again');
    await session.openNew('Another');
    expect(session.isAtRisk()).toBe(true);
  });
});

describe('a window that was left at an example as it came', () => {
  const idOf = (session: Session) => session.app.getState().project.id;

  it('has the same quilt after a reload, so that its place is taken up; another window has another', async () => {
    const { visit } = browser();
    const note = { id: null as string | null };
    const id = idOf(await visit(note));
    expect(idOf(await visit(note))).toBe(id);
    expect(idOf(await visit())).not.toBe(id);
  });

  it.each([
    ['example-id7', 'example-id7'],
    ['id7', 'example-id8'],
    [null, 'example-id8'],
  ])('takes only the id of an example (%s: %s)', async (noted, id) => {
    const { project } = await firstDemo([], () => 'id8', 'in', noted);
    expect(project.id).toBe(id);
  });
});
