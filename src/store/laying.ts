// Lays out the whole quilt that is open, in a worker, whatever step is on show; then it is one change, and the Wall step comes on
// show. What was done stays on show until the quilt changes.
import { createStore, type StoreApi } from 'zustand/vanilla';
import { stillFits } from '../arrange/asked';
import { layQuilt } from '../editing/commands/layQuilt';
import type { LayingProgress, LayingWish, QuiltLaid } from '../editing/whole/layingQuilt';
import { type Phrase, phrase } from '../model/phrase';
import type { Problem } from '../model/result';
import type { AppStore } from './app';
import { startLaying } from './arranging/layingClient';
import type { Running } from './workers/workerClient';

export type LayingState =
  | { readonly kind: 'idle'; readonly problems: readonly Problem[] }
  | { readonly kind: 'running'; readonly progress: LayingProgress }
  /** `wish` as it was asked; `changed`: whether there was anything to lay out. */
  | {
      readonly kind: 'done';
      readonly words: readonly Phrase[];
      readonly wish: LayingWish;
      readonly changed: boolean;
    };

export interface Laying {
  readonly state: LayingState;
  readonly start: (wish: Omit<LayingWish, 'seed'>) => void;
  /** Ends the shuffle with the order found so far; before the shuffle nothing is changed at all. */
  readonly stop: () => void;
  /** Takes the last one back and lays the quilt out by the next number. */
  readonly another: () => void;
  /** Takes the words off. */
  readonly close: () => void;
}

const IDLE: LayingState = { kind: 'idle', problems: [] };
/** Numbers of mixes run from 0 to this (MakeSets of the screen takes no larger one). */
const MOST_SEED = 10_000;

/** The store of an app's laying out; tests pass a `begin` of their own. */
export function createLaying(app: AppStore, begin: typeof startLaying = startLaying): StoreApi<Laying> {
  return createStore<Laying>()((set, get) => {
    let running: Running<QuiltLaid> | null = null;
    const become = (state: LayingState) => set({ state });
    const dismiss = (problems: readonly Problem[]) => {
      running?.cancel();
      running = null;
      become({ kind: 'idle', problems });
    };
    app.subscribe((now, before) => {
      const { state } = get();
      if (now.revision === before.revision || state.kind === 'idle') return;
      const same = now.project.id === before.project.id;
      if (state.kind === 'running' && same && stillFits(now.project, before.project)) return;
      dismiss(state.kind === 'running' && same ? [CHANGED] : []);
    });
    const lay = (wish: LayingWish) => {
      const { project } = app.getState();
      dismiss([]);
      become({ kind: 'running', progress: { stage: 'sets', share: null } });
      const laying = begin(project, wish, (progress) => {
        if (running === laying) become({ kind: 'running', progress });
      });
      running = laying;
      void laying.answer.then((answer) => {
        if (running !== laying || !answer) return;
        running = null;
        if (answer.ok) take(answer.value, wish);
        else become({ kind: 'idle', problems: answer.problems });
      });
    };
    const take = ({ parts, words }: QuiltLaid, wish: LayingWish) => {
      become(IDLE);
      const refused = parts === null ? [] : app.getState().run(layQuilt(parts));
      if (refused.length > 0) return become({ kind: 'idle', problems: refused });
      become({ kind: 'done', words, wish, changed: parts !== null });
      if (parts !== null) app.getState().goTo('wall');
      if (words[0]) app.getState().announce(words[0]);
    };
    return {
      state: IDLE,
      start: (wish) => lay({ ...wish, seed: app.getState().project.preferences.seed }),
      stop: () => {
        const { state } = get();
        if (state.kind !== 'running') return;
        if (state.progress.stage === 'shuffle') running?.stop();
        else dismiss([]);
      },
      another: () => {
        const { state } = get();
        if (state.kind !== 'done') return;
        const { wish, changed } = state;
        if (changed) app.getState().undo();
        lay({ ...wish, seed: (wish.seed + 1) % (MOST_SEED + 1) });
      },
      close: () => dismiss([]),
    };
  });
}

const CHANGED: Problem = {
  code: 'stale',
  path: '',
  message: phrase('The quilt was changed while it was laid out, so nothing was laid out. Try again.'),
};
