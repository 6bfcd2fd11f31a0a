// Decides when the open project is saved: soon after a change, one saving at a time, and at once when the page is left. The caller
// decides how it is saved, and against which revision.
import type { Project } from '../../model/project';
import type { Problem, Result } from '../../model/result';
import { storageProblem } from './storageProblem';

/** 'unsaved': a change waits to be saved. A problem stays until a saving succeeds; it is tried again by itself, later each time. */
export type AutosaveState = 'saved' | 'saving' | 'unsaved' | { readonly problem: Problem };

export interface Autosave {
  /** Takes a changed project; saves it after the delay, together with later changes. */
  changed(project: Project): void;
  /** Saves waiting changes at once; resolves when none waits or a saving has failed. Never rejects. */
  flush(): Promise<AutosaveState>;
  /** Passes waiting changes to the option `leave`, as the page goes away, and tries to save them as well. */
  leave(): void;
  /** Drops waiting changes and saves no more: for a project that is closed or replaced. */
  stop(): void;
}

export interface AutosaveOptions {
  readonly save: (project: Project) => Promise<Result<unknown>>;
  /** Notes an unsaved project synchronously; see ProjectStorage.leave. */
  readonly leave: (project: Project) => void;
  /** Milliseconds from the first unsaved change to its saving. Later changes do not delay it, so that steady work is saved too. */
  readonly delay: number;
  /** Calls `run` after `delay` milliseconds, unless the returned function is called first. */
  readonly schedule?: (run: () => void, delay: number) => () => void;
  readonly onState: (state: AutosaveState) => void;
}

/** What another attempt would not change: the person decides. */
const FINAL: ReadonlySet<string> = new Set(['removed-elsewhere', 'changed-elsewhere']);
/** Milliseconds to the first attempt after a failure, and at most to any. */
const FIRST_PAUSE = 2_000;
const LONGEST_PAUSE = 60_000;

function pause(attempts: number): number {
  return Math.min(FIRST_PAUSE * 2 ** (attempts - 1), LONGEST_PAUSE);
}

/** An autosave for one project. Its first state is 'saved', without a call of onState. */
export function createAutosave(options: AutosaveOptions): Autosave {
  const { save, delay, schedule = later, onState } = options;
  let waiting: Project | null = null;
  let running: Promise<void> | null = null;
  let callOff: (() => void) | null = null;
  let attempts = 0;
  /** Whether the saving that is due is another attempt at a failed one. */
  let again = false;
  let stopped = false;
  let state: AutosaveState = 'saved';

  const show = (next: AutosaveState) => {
    if (stopped || next === state) return;
    state = next;
    onState(next);
  };
  const arm = (after: number) => {
    callOff ??= schedule(() => {
      callOff = null;
      again = false;
      run();
    }, after);
  };
  const disarm = () => {
    callOff?.();
    callOff = null;
    again = false;
  };
  const run = () => {
    if (running || waiting === null || stopped) return;
    running = saveWaiting(waiting).finally(() => {
      running = null;
      if (waiting === null || stopped) return;
      if (typeof state === 'string') arm(delay);
      else if (!FINAL.has(state.problem.code)) {
        // A change meanwhile has armed it already.
        again = callOff === null;
        arm(pause(attempts));
      }
    });
  };
  const saveWaiting = async (project: Project) => {
    if (typeof state === 'string') show('saving');
    const problem = await outcome(save, project);
    if (problem) {
      attempts += 1;
      // A page that crashes has no time for it.
      if (!stopped) options.leave(waiting ?? project);
      show({ problem });
      return;
    }
    attempts = 0;
    if (waiting === project) waiting = null;
    show(waiting === null ? 'saved' : 'unsaved');
  };
  const flush = async () => {
    disarm();
    if (running) await running;
    while (waiting !== null && !stopped) {
      disarm();
      run();
      await running;
      if (typeof state !== 'string') return state;
    }
    disarm();
    return state;
  };
  return {
    changed: (project) => {
      if (stopped) return;
      waiting = project;
      if (typeof state === 'string' && state !== 'saving') show('unsaved');
      // What is tried again later need not wait so long once there is something new.
      if (again) disarm();
      arm(delay);
    },
    flush,
    leave: () => {
      if (waiting === null) return;
      options.leave(waiting);
      void flush();
    },
    stop: () => {
      stopped = true;
      waiting = null;
      disarm();
    },
  };
}

/** Saves when the page is hidden and notes unsaved work when it goes away, until the returned function is called. */
export function saveOnLeaving(
  autosave: Pick<Autosave, 'flush' | 'leave'>,
  page: Pick<Document, 'addEventListener' | 'removeEventListener' | 'visibilityState'>,
  view: Pick<Window, 'addEventListener' | 'removeEventListener'>,
): () => void {
  const leave = () => autosave.leave();
  const hide = () => {
    if (page.visibilityState === 'hidden') void autosave.flush();
  };
  view.addEventListener('pagehide', leave);
  page.addEventListener('visibilitychange', hide);
  return () => {
    view.removeEventListener('pagehide', leave);
    page.removeEventListener('visibilitychange', hide);
  };
}

async function outcome(save: AutosaveOptions['save'], project: Project): Promise<Problem | null> {
  try {
    const result = await save(project);
    return result.ok ? null : (result.problems[0] ?? storageProblem('unknown'));
  } catch (error) {
    return storageProblem(error);
  }
}

function later(run: () => void, delay: number): () => void {
  const timer = setTimeout(run, delay);
  return () => clearTimeout(timer);
}
