import { describe, expect, it } from 'vitest';
import { createProject } from '../../../src/model/create';
import { phrase } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { failed, ok, type Result } from '../../../src/model/result';
import { createAutosave, saveOnLeaving } from '../../../src/store/storage/autosave';

const project = (notes: string): Project => ({ ...createProject('p', 'Project'), notes });

/** An autosave with a timer that runs when told and a saving that answers when told. */
function bench() {
  const timers: (() => void)[] = [];
  const delays: number[] = [];
  const savings: {
    notes: string;
    answer: (result: Result<unknown>) => void;
    fail: (error: unknown) => void;
  }[] = [];
  const states: string[] = [];
  const left: string[] = [];
  const autosave = createAutosave({
    delay: 800,
    save: (saved) =>
      new Promise((resolve, reject) => {
        savings.push({ notes: saved.notes, answer: resolve, fail: reject });
      }),
    leave: (project) => left.push(project.notes),
    schedule: (run, delay) => {
      timers.push(run);
      delays.push(delay);
      return () => {
        timers.splice(timers.indexOf(run), 1);
      };
    },
    onState: (state) => states.push(typeof state === 'string' ? state : state.problem.code),
  });
  return {
    autosave,
    timers,
    delays,
    savings,
    states,
    left,
    ring: () => timers.shift()?.(),
    settle: () => new Promise<void>((resolve) => setTimeout(resolve, 0)),
  };
}

describe('saving by itself', () => {
  it('saves several quick changes once, in their last state', async () => {
    const { autosave, timers, savings, states, ring, settle } = bench();
    autosave.changed(project('one'));
    autosave.changed(project('two'));
    expect(timers).toHaveLength(1);
    expect(savings).toEqual([]);
    ring();
    expect(savings.map((saving) => saving.notes)).toEqual(['two']);
    savings[0]!.answer(ok(1));
    await settle();
    expect(states).toEqual(['unsaved', 'saving', 'saved']);
    expect(timers).toEqual([]);
  });

  it('does not put a saving off while the work goes on', () => {
    const { autosave, timers } = bench();
    autosave.changed(project('one'));
    const [first] = timers;
    autosave.changed(project('two'));
    expect(timers[0]).toBe(first);
  });

  it('never runs two savings at once, and saves afterwards what changed meanwhile', async () => {
    const { autosave, savings, states, ring, settle } = bench();
    autosave.changed(project('one'));
    ring();
    autosave.changed(project('two'));
    ring();
    expect(savings).toHaveLength(1);
    savings[0]!.answer(ok(1));
    await settle();
    expect(states.at(-1)).toBe('unsaved');
    ring();
    expect(savings.map((saving) => saving.notes)).toEqual(['one', 'two']);
    savings[1]!.answer(ok(2));
    await settle();
    expect(states.at(-1)).toBe('saved');
  });

  it('shows a refusal until a later saving succeeds, and keeps the work for it', async () => {
    const { autosave, savings, states, timers, ring, settle } = bench();
    autosave.changed(project('one'));
    ring();
    savings[0]!.answer(failed('storage-full', '', phrase('No room.')));
    await settle();
    expect(states.at(-1)).toBe('storage-full');
    autosave.changed(project('two'));
    expect(states.at(-1)).toBe('storage-full');
    expect(timers).toHaveLength(1);
    ring();
    savings[1]!.answer(ok(1));
    await settle();
    expect(states.at(-1)).toBe('saved');
    expect(savings[1]!.notes).toBe('two');
  });

  it('tries a failed saving again by itself, later each time, until it succeeds', async () => {
    const { autosave, savings, states, delays, timers, ring, settle } = bench();
    autosave.changed(project('one'));
    for (let attempt = 0; attempt < 9; attempt += 1) {
      ring();
      savings[attempt]!.answer(failed('storage-silent', '', phrase('No answer.')));
      await settle();
    }
    expect(delays).toEqual([800, 2000, 4000, 8000, 16000, 32000, 60000, 60000, 60000, 60000]);
    ring();
    savings[9]!.answer(ok(1));
    await settle();
    expect([states.at(-1), timers]).toEqual(['saved', []]);
    autosave.changed(project('two'));
    expect(delays.at(-1)).toBe(800);
  });

  it('does not let a change wait for the time of the next attempt', async () => {
    const { autosave, savings, delays, ring, settle } = bench();
    autosave.changed(project('one'));
    ring();
    savings[0]!.answer(failed('storage-full', '', phrase('No room.')));
    await settle();
    autosave.changed(project('two'));
    autosave.changed(project('three'));
    expect(delays).toEqual([800, 2000, 800]);
    ring();
    expect(savings[1]!.notes).toBe('three');
  });

  it('notes what could not be saved at once, so that a crash loses nothing', async () => {
    const { autosave, savings, left, ring, settle } = bench();
    autosave.changed(project('one'));
    ring();
    savings[0]!.answer(failed('storage-full', '', phrase('No room.')));
    await settle();
    expect(left).toEqual(['one']);
    autosave.changed(project('two'));
    ring();
    savings[1]!.fail(new Error('disk on fire'));
    await settle();
    expect(left).toEqual(['one', 'two']);
    autosave.stop();
  });

  it('does not try again what has no other outcome', async () => {
    const { autosave, savings, timers, ring, settle } = bench();
    autosave.changed(project('one'));
    ring();
    savings[0]!.answer(failed('removed-elsewhere', '', phrase('Removed.')));
    await settle();
    expect(timers).toEqual([]);
  });

  it('turns a saving that throws into a problem', async () => {
    const { autosave, savings, states, ring, settle } = bench();
    autosave.changed(project('one'));
    ring();
    savings[0]!.fail(new Error('disk on fire'));
    await settle();
    expect(states.at(-1)).toBe('storage-failed');
  });

  it('saves at once on demand, with everything changed until then', async () => {
    const { autosave, savings, timers, ring, settle } = bench();
    autosave.changed(project('one'));
    ring();
    autosave.changed(project('two'));
    const flushed = autosave.flush();
    expect(timers).toEqual([]);
    savings[0]!.answer(ok(1));
    await settle();
    expect(savings.map((saving) => saving.notes)).toEqual(['one', 'two']);
    savings[1]!.answer(ok(2));
    expect(await flushed).toBe('saved');
    expect(timers).toEqual([]);
  });

  it('gives the problem when a saving on demand fails, instead of trying for ever', async () => {
    const { autosave, savings } = bench();
    autosave.changed(project('one'));
    const flushed = autosave.flush();
    savings[0]!.answer(failed('changed-elsewhere', '', phrase('Changed elsewhere.')));
    expect(await flushed).toMatchObject({ problem: { code: 'changed-elsewhere' } });
    expect(savings).toHaveLength(1);
  });

  it('has nothing to do on demand when nothing changed', async () => {
    const { autosave, savings, states } = bench();
    expect(await autosave.flush()).toBe('saved');
    expect([savings, states]).toEqual([[], []]);
  });

  it('saves and says no more once stopped', async () => {
    const { autosave, savings, states, timers, ring, settle } = bench();
    autosave.changed(project('one'));
    ring();
    autosave.changed(project('two'));
    autosave.stop();
    savings[0]!.answer(ok(1));
    await settle();
    autosave.changed(project('three'));
    expect(timers).toEqual([]);
    expect(savings).toHaveLength(1);
    expect(states).toEqual(['unsaved', 'saving']);
  });

  it('saves when the page is hidden, and leaves a note of unsaved work when it goes away', async () => {
    const { autosave, savings, left, settle } = bench();
    const view = new EventTarget() as unknown as Window;
    const page = Object.assign(new EventTarget(), { visibilityState: 'visible' });
    const end = saveOnLeaving(autosave, page as unknown as Document, view);
    autosave.changed(project('one'));
    page.dispatchEvent(new Event('visibilitychange'));
    expect(savings).toHaveLength(0);
    page.visibilityState = 'hidden';
    page.dispatchEvent(new Event('visibilitychange'));
    expect(savings.map((saving) => saving.notes)).toEqual(['one']);
    expect(left).toEqual([]);
    autosave.changed(project('two'));
    view.dispatchEvent(new Event('pagehide'));
    expect(left).toEqual(['two']);
    savings[0]!.answer(ok(1));
    await settle();
    expect(savings.map((saving) => saving.notes)).toEqual(['one', 'two']);
    savings[1]!.answer(ok(2));
    await settle();
    view.dispatchEvent(new Event('pagehide'));
    expect(left).toEqual(['two']);
    end();
    autosave.changed(project('three'));
    view.dispatchEvent(new Event('pagehide'));
    expect(left).toEqual(['two']);
    autosave.stop();
  });
});
