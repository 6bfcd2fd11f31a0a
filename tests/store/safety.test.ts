// The page asks before it closes while work is at risk, and only then; and asks the browser to keep what is saved once something is.
import { describe, expect, it, vi } from 'vitest';
import { renameProject } from '../../src/editing/commands/setting';
import { createProject } from '../../src/model/create';
import { askOnLeaving, askToKeep, hearOnReturn } from '../../src/store/safety';
import { startSession } from '../../src/store/session';
import { NO_NOTES } from '../../src/store/storage/leaving';
import { createMemoryShelf } from '../../src/store/storage/memory';
import { SILENT_NEWS } from '../../src/store/storage/news';
import { createStorage, type Shelf } from '../../src/store/storage/storage';

async function visit(keeps: boolean, shelf: Shelf = { ...createMemoryShelf(), keeps }) {
  const storage = createStorage(shelf, { news: SILENT_NEWS, notes: NO_NOTES, now: () => 0 });
  await storage.save(createProject('river', 'River stones'), 0);
  await storage.setLastOpen('river');
  const unit = { note: { read: () => 'in' as const, write: () => {} }, usual: 'in' as const };
  const session = await startSession(storage, null, [], () => 'fresh', unit);
  const rename = async (name: string) => {
    session.app.getState().run(renameProject(name));
    await session.flush();
  };
  return { session, rename };
}

/** Whether closing the page asks. */
function asks(view: EventTarget): boolean {
  const closing = new Event('beforeunload', { cancelable: true });
  view.dispatchEvent(closing);
  return closing.defaultPrevented;
}

describe('closing the page', () => {
  it('asks where nothing is kept and something was changed, until it is saved to a file', async () => {
    const { session, rename } = await visit(false);
    const view = new EventTarget();
    askOnLeaving(session, view as Window);
    expect(asks(view)).toBe(false);
    await rename('Renamed');
    expect(asks(view)).toBe(true);
    session.filed();
    expect(asks(view)).toBe(false);
    await rename('Renamed again');
    expect(asks(view)).toBe(true);
  });

  it('asks while a saving fails, and no longer once it has succeeded', async () => {
    const shelf = { ...createMemoryShelf(), keeps: true };
    let full = false;
    const change: Shelf['change'] = (...given) =>
      full ? Promise.reject(new DOMException('', 'QuotaExceededError')) : shelf.change(...given);
    const { session, rename } = await visit(true, { ...shelf, change });
    const view = new EventTarget();
    askOnLeaving(session, view as Window);
    await rename('Renamed');
    expect(asks(view)).toBe(false);
    full = true;
    await rename('No room');
    expect([asks(view), session.state.getState().problem?.code]).toEqual([true, 'storage-full']);
    full = false;
    await session.flush();
    expect([asks(view), session.state.getState().problem]).toEqual([false, null]);
  });
});

describe('the browser', () => {
  it('is asked to keep what is saved after the first change, not before, and at every tenth for room', async () => {
    const { session, rename } = await visit(true);
    const storage = {
      persisted: vi.fn(() => Promise.resolve(false)),
      persist: vi.fn(() => Promise.resolve(false)),
      estimate: vi.fn(() => Promise.resolve({ quota: 1e6, usage: 0 })),
    };
    askToKeep(session, { vendor: 'Apple Computer, Inc.', storage } as unknown as Navigator, () => false);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(storage.persist).not.toHaveBeenCalled();
    for (let change = 1; change <= 11; change += 1) await rename(`Name ${change}`);
    await vi.waitFor(() => expect(storage.estimate).toHaveBeenCalledTimes(2), 5000);
    expect(session.state.getState().lasting).toEqual({ room: 1e6, removed: true });
  });

  it('that shows the page again has it look at what other windows saved', async () => {
    const { session } = await visit(true);
    const page = Object.assign(new EventTarget(), { visibilityState: 'hidden' });
    hearOnReturn(session, page as unknown as Document);
    const refresh = vi.spyOn(session, 'refresh');
    page.dispatchEvent(new Event('visibilitychange'));
    expect(refresh).not.toHaveBeenCalled();
    page.visibilityState = 'visible';
    page.dispatchEvent(new Event('visibilitychange'));
    expect(refresh).toHaveBeenCalledOnce();
  });
});
