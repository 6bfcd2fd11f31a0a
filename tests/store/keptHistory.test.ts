// Undo outlives the page: what was done is kept with the quilt, and can be taken back at the next visit, step by step, as if the
// page had stayed. What is kept of it may be damaged; then it is dropped, and the quilt stays sound.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EMPTY_HISTORY, type History } from '../../src/editing/history';
import { keptPart, readHistory } from '../../src/editing/keptHistory';
import { openDocument } from '../../src/editing/openDocument';
import { phrase } from '../../src/model/phrase';
import { createApp } from '../../src/store/app';
import { keepLeft } from '../../src/store/storage/keepLeft';
import { NO_NOTES } from '../../src/store/storage/leaving';
import { createMemoryShelf } from '../../src/store/storage/memory';
import { SILENT_NEWS } from '../../src/store/storage/news';
import { createStorage } from '../../src/store/storage/storage';
import { demo } from '../demo';
import { anyMoves } from '../editing/randomMoves';
import { runs } from '../runs';

const harbour = demo('harbour-reading-corner');

/** The quilt after some random acts, with all states it went through. */
function worked(seed: number, acts: number, undone: number) {
  const app = createApp(harbour);
  const states = [harbour];
  for (let act = 0; act < acts; act += 1) {
    const { project, run } = app.getState();
    run({ label: phrase('act {act}', { act }), moves: anyMoves(project, seed + act, 1) });
    if (app.getState().project !== project) states.push(app.getState().project);
  }
  for (let step = 0; step < undone; step += 1) app.getState().undo();
  return { app, states };
}

const storageOf = (shelf = createMemoryShelf()) =>
  createStorage(shelf, { news: SILENT_NEWS, notes: NO_NOTES, now: () => 0 });

describe('the history of a quilt', () => {
  it('is there again at the next visit: every step back and forth gives the state it gave', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.nat(9999),
        fc.integer({ min: 1, max: 12 }),
        fc.nat(4),
        async (seed, acts, undone) => {
          const { app, states } = worked(seed, acts, undone);
          const storage = storageOf();
          await storage.save(app.getState().project, 0, app.getState().history);
          const loaded = await storage.load(harbour.id);
          if (!loaded.ok) throw new Error('not loaded');
          const next = createApp(loaded.value.project, structuredClone(loaded.value.history));
          while (next.getState().history.undone.length > 0) next.getState().redo();
          for (const state of states.toReversed()) {
            expect(next.getState().project).toEqual(state);
            next.getState().undo();
          }
          expect(next.getState().project).toEqual(harbour);
        },
      ),
      { numRuns: runs(12, 60), seed: 31 },
    );
  });

  it('is taken up with what a page left unsaved', async () => {
    const { app } = worked(7, 5, 1);
    const { project, history } = app.getState();
    const storage = storageOf();
    await storage.save(harbour, 0);
    let left = [{ document: JSON.parse(JSON.stringify(project)) as unknown, revision: 1, history: JSON.parse(JSON.stringify(history)) as unknown }];
    const notes = { ...NO_NOTES, takeAll: () => { const all = left; left = []; return all; } };
    await keepLeft(storage, notes, (id) => `${id}-copy`);
    const loaded = await storage.load(harbour.id);
    expect(loaded.ok && loaded.value.project).toEqual(project);
    const words = ({ done, undone }: History) => [done, undone].map((list) => list.map(({ label }) => label));
    expect(loaded.ok && words(loaded.value.history)).toEqual(words(history));
  }); // biome-ignore format: short

  it('is bounded: the nearest steps stay', () => {
    const change = (size: number, n: number) => ({
      label: phrase(`step ${n}`),
      patches: [{ op: 'replace' as const, path: ['notes'], value: 'x'.repeat(size) }],
      inverse: [],
    });
    fc.assert(
      fc.property(fc.array(fc.nat(400_000), { maxLength: 12 }), fc.nat(500), (sizes, many) => {
        const done = [...Array.from({ length: many }, (_, at) => change(3, at)), ...sizes.map((size, at) => change(size, many + at))];
        const kept = keptPart({ done, undone: [] });
        expect(kept.done).toEqual(done.slice(done.length - kept.done.length));
        expect(kept.done.length).toBeLessThanOrEqual(200);
        const letters = JSON.stringify(kept).length;
        expect(letters).toBeLessThan(1_010_000);
        // None is left out for which there was room.
        const next = done[done.length - kept.done.length - 1];
        if (next && kept.done.length < 200) expect(letters + JSON.stringify(next).length).toBeGreaterThan(990_000);
        expect(readHistory(JSON.parse(JSON.stringify(kept))).done).toEqual(kept.done.map((one) => ({ ...one, kept: true })));
      }),
      { numRuns: runs(10, 60), seed: 32 },
    );
  }); // biome-ignore format: short

  it('that is damaged never makes the quilt unsound, and says that a step is lost', () => {
    const { app } = worked(3, 6, 2);
    const { project, history } = app.getState();
    let refused = 0;
    const rubbish = fc.constantFrom<unknown>(null, -1, 'x', [], {}, ['wall', 'cells', 99, 'turn'], ['blocks', 0, 'places'], ['fabrics']);
    fc.assert(
      fc.property(fc.nat(), fc.nat(), rubbish, (at, entry, value) => {
        const kept = JSON.parse(JSON.stringify(history)) as unknown;
        const holders: object[] = [];
        const walk = (one: unknown) => {
          if (typeof one !== 'object' || one === null) return;
          holders.push(one);
          for (const inner of Object.values(one)) walk(inner);
        };
        walk(kept);
        const holder = holders[at % holders.length]!;
        const keys = Object.keys(holder);
        Reflect.set(holder, keys[entry % Math.max(1, keys.length)] ?? 'x', value);
        const next = createApp(project, readHistory(kept));
        for (let step = 0; step < 6; step += 1) {
          next.getState().undo();
          expect(openDocument(next.getState().project).ok).toBe(true);
        }
        if (next.getState().announced.words.say.startsWith('This step cannot')) refused += 1;
      }),
      { numRuns: runs(60, 300), seed: 33 },
    );
    expect(refused).toBeGreaterThan(runs(1, 5));
  }); // biome-ignore format: short

  it.each([
    [null],
    [7],
    ['x'],
    [{}],
    [{ done: 1, undone: [] }],
    [{ done: Array.from({ length: 300 }, () => ({})), undone: [] }],
  ])('that is none (%j) is empty', (kept) => {
    expect(readHistory(kept)).toEqual(EMPTY_HISTORY satisfies History);
  });
});
