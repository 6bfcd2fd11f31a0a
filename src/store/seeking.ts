// Seeks several good orders that differ, in workers, whatever step is on show. It offers them under Wall until they are closed or
// the quilt changes.
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Alternative } from '../arrange/alternatives';
import { shuffleWish, stillFits } from '../arrange/asked';
import { phrase } from '../model/phrase';
import type { Problem } from '../model/result';
import type { AppStore } from './app';
import { type FoundAlternatives, startAlternatives } from './arranging/alternativesClient';
import type { Running } from './workers/workerClient';

export type SeekingState =
  | { readonly kind: 'idle'; readonly problems: readonly Problem[] }
  | { readonly kind: 'running'; readonly share: number }
  | { readonly kind: 'offered'; readonly alternatives: readonly Alternative[]; readonly capped: boolean };

export interface Seeking {
  readonly state: SeekingState;
  readonly start: () => void;
  /** Ends the search and offers the orders found so far. */
  readonly stop: () => void;
  /** Discards the orders on offer. */
  readonly close: () => void;
}

const IDLE: SeekingState = { kind: 'idle', problems: [] };
const WANTED = 4;

/** The store of an app's search; tests pass a `begin` of their own. */
export function createSeeking(
  app: AppStore,
  begin: typeof startAlternatives = startAlternatives,
): StoreApi<Seeking> {
  return createStore<Seeking>()((set, get) => {
    let running: Running<FoundAlternatives> | null = null;
    const dismiss = (problems: readonly Problem[]) => {
      running?.cancel();
      running = null;
      set({ state: { kind: 'idle', problems } });
    };
    app.subscribe((now, before) => {
      const { state } = get();
      if (now.revision === before.revision || state.kind === 'idle') return;
      if (stillFits(now.project, before.project)) return;
      const message = phrase('The quilt was changed, so the other layouts no longer fit it.');
      dismiss(now.project.id === before.project.id ? [{ code: 'stale', path: '', message }] : []);
    });
    const start = () => {
      const { project } = app.getState();
      dismiss([]);
      const seeking = begin(project, shuffleWish(project), WANTED, (share) => {
        if (running === seeking) set({ state: { kind: 'running', share } });
      });
      running = seeking;
      set({ state: { kind: 'running', share: 0 } });
      void seeking.answer.then((answer) => {
        if (running !== seeking || !answer) return;
        running = null;
        if (!answer.ok) set({ state: { kind: 'idle', problems: answer.problems } });
        else {
          const { alternatives, capped } = answer.value;
          set({ state: { kind: 'offered', alternatives, capped } });
        }
      });
    };
    return {
      state: IDLE,
      start,
      stop: () => running?.stop(),
      close: () => dismiss([]),
    };
  });
}
