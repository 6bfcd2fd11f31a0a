// Looks in a worker for what few blocks moved by hand can do, whatever step is on show, and offers it under Wall until it is closed
// or the quilt changes.
import { createStore, type StoreApi } from 'zustand/vanilla';
import { shuffleWish, stillFits } from '../arrange/asked';
import type { FewBlocks } from '../arrange/byHand/fewBlocks';
import { counted, phrase } from '../model/phrase';
import type { Problem } from '../model/result';
import type { AppStore } from './app';
import { startByHand } from './arranging/byHandClient';
import type { Running } from './workers/workerClient';

export type HandMovesState =
  | { readonly kind: 'idle'; readonly problems: readonly Problem[] }
  | { readonly kind: 'running'; readonly share: number }
  | { readonly kind: 'offered'; readonly found: FewBlocks };

export interface HandMoves {
  readonly state: HandMovesState;
  /** Looks for the best with one block touched, two and so on, up to `most`. */
  readonly start: (most: number) => void;
  /** Ends the search and offers what was found so far. */
  readonly stop: () => void;
  /** Discards what is on offer. */
  readonly close: () => void;
}

const IDLE: HandMovesState = { kind: 'idle', problems: [] };

/** The store of an app's search; tests pass a `begin` of their own. */
export function createHandMoves(app: AppStore, begin: typeof startByHand = startByHand): StoreApi<HandMoves> {
  return createStore<HandMoves>()((set, get) => {
    let running: Running<FewBlocks> | null = null;
    const dismiss = (problems: readonly Problem[]) => {
      running?.cancel();
      running = null;
      set({ state: { kind: 'idle', problems } });
    };
    app.subscribe((now, before) => {
      const { state } = get();
      if (now.revision === before.revision || state.kind === 'idle') return;
      if (stillFits(now.project, before.project)) return;
      // A list that was taken from the offers stays, so nothing is lost with them.
      const lost = now.project.id === before.project.id && (state.kind === 'running' || !now.laid.moves);
      const message = phrase('The quilt was changed, so the moves that were looked for no longer fit it.');
      dismiss(lost ? [{ code: 'stale', path: '', message }] : []);
    });
    const start = (most: number) => {
      const { project } = app.getState();
      dismiss([]);
      const { scopes, ...wish } = shuffleWish(project);
      const search = begin(project, { ...wish, scopes, most }, (share) => {
        if (running === search) set({ state: { kind: 'running', share } });
      });
      running = search;
      set({ state: { kind: 'running', share: 0 } });
      void search.answer.then((answer) => {
        if (running !== search || !answer) return;
        running = null;
        if (!answer.ok) {
          set({ state: { kind: 'idle', problems: answer.problems } });
          return;
        }
        set({ state: { kind: 'offered', found: answer.value } });
        const { length } = answer.value.offers;
        const words =
          length === 0
            ? phrase('No move that is allowed makes the top better.')
            : counted(
                length,
                '1 number of blocks to choose from.',
                '{count} numbers of blocks to choose from.',
              );
        if (app.getState().step === 'wall') app.getState().tell(words);
        else app.getState().announce(phrase('The moves by hand are found. They wait under Wall.'));
      });
    };
    return { state: IDLE, start, stop: () => running?.stop(), close: () => dismiss([]) };
  });
}
