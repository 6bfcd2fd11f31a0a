// Runs the shuffle of the open quilt. It goes on in its workers whatever step is on show; its best so far is the preview while the
// Wall step is open; its answer waits there until it is kept, left, or the quilt has changed.
import { createStore, type StoreApi } from 'zustand/vanilla';
import { shuffleWish, stillFits } from '../arrange/asked';
import type { ShuffleProgress } from '../arrange/shuffle';
import type { ArrangeResult } from '../arrange/verdict';
import type { Command } from '../editing/apply';
import { keepShuffle } from '../editing/commands/wall';
import type { Move } from '../model/moves';
import { type Phrase, phrase } from '../model/phrase';
import type { Problem } from '../model/result';
import type { App, AppStore } from './app';
import { type Pace, paced } from './arranging/pace';
import { startShuffle } from './arranging/shuffleClient';
import type { Running } from './workers/workerClient';

export type ShuffleState =
  | { readonly kind: 'idle'; readonly problems: readonly Problem[] }
  | { readonly kind: 'running'; readonly progress: ShuffleProgress | null }
  /** `keep` is the command that is the preview; null where no order is better. */
  | { readonly kind: 'done'; readonly result: ArrangeResult; readonly keep: Command | null };

export interface Shuffling {
  readonly shuffle: ShuffleState;
  readonly start: () => void;
  /** Ends the search; its best so far becomes the answer. */
  readonly stop: () => void;
  /** Discards the answer and ends its preview. */
  readonly leave: () => void;
}

const IDLE: ShuffleState = { kind: 'idle', problems: [] };

/** The store of an app's shuffle; tests pass a `begin` and a `pace` of their own. */
export function createShuffling(
  app: AppStore,
  begin: typeof startShuffle = startShuffle,
  pace: typeof paced<ShuffleProgress> = paced,
): StoreApi<Shuffling> {
  return createStore<Shuffling>()((set, get) => {
    let running: { readonly shuffle: Running<ArrangeResult>; readonly news: Pace<ShuffleProgress> } | null =
      null;
    /** The best order found so far, whether it is on show or not. */
    let best: Command | null = null;
    const show = () => {
      if (app.getState().step !== 'wall') return;
      app.getState().showPreview(best);
    };
    const become = (shuffle: ShuffleState) => {
      if (shuffle.kind === 'idle') best = null;
      set({ shuffle });
    };
    const dismiss = (problems: readonly Problem[]) => {
      running?.news.end();
      running?.shuffle.cancel();
      running = null;
      become({ kind: 'idle', problems });
    };
    app.subscribe((now, before) => {
      const { shuffle } = get();
      if (shuffle.kind === 'idle') return;
      const changed = now.revision !== before.revision;
      if (changed && !stillFits(now.project, before.project))
        dismiss(now.project.id === before.project.id ? [stale(shuffle)] : []);
      // A change ends every preview; an order that still fits is shown again.
      else if (changed) show();
      else if (now.step !== before.step) changeStep(app, now, before, get().shuffle, show);
    });
    const start = () => {
      const { project } = app.getState();
      dismiss([]);
      const news = pace(withMoves, (progress) => {
        if (running?.news !== news) return;
        if (progress.moves) best = keeping(progress.moves);
        set({ shuffle: { kind: 'running', progress } });
        if (progress.moves) show();
      });
      const shuffle = begin(project, shuffleWish(project), news.tell);
      running = { shuffle, news };
      become({ kind: 'running', progress: null });
      void shuffle.answer.then((answer) => {
        if (running?.shuffle !== shuffle || !answer) return;
        running = null;
        news.end();
        best = answer.ok ? keeping(answer.value.moves) : null;
        become(
          answer.ok
            ? { kind: 'done', result: answer.value, keep: best }
            : { kind: 'idle', problems: answer.problems },
        );
        show();
        if (app.getState().step !== 'wall')
          app.getState().announce(phrase('The shuffle is done. Its layout waits under Wall.'));
        else if (answer.ok) app.getState().tell(foundWords(answer.value.verdictWords, best));
      });
    };
    return {
      shuffle: IDLE,
      start,
      stop: () => {
        running?.news.end();
        running?.shuffle.stop();
      },
      leave: () => {
        dismiss([]);
        show();
      },
    };
  });
}

/** Ends the preview of the best order when another step comes on show, and shows it again with the Wall step. */
function changeStep(app: AppStore, now: App, before: App, shuffle: ShuffleState, show: () => void): void {
  if (now.step === 'wall') {
    show();
    return;
  }
  if (before.step !== 'wall') return;
  app.getState().showPreview(null);
  const goesOn = phrase('The shuffle goes on; its layout will wait under Wall.');
  app.getState().announce(shuffle.kind === 'running' ? goesOn : phrase('The layout found waits under Wall.'));
}

/** The command that keeps an order; null without moves. */
function keeping(moves: readonly Move[]): Command | null {
  return moves.length > 0 ? keepShuffle(moves) : null;
}

/** What is told when it is done: the panel has the figures too. */
function foundWords(verdict: Phrase, best: Command | null): Phrase {
  return best
    ? phrase('{verdict}. The wall shows the new layout; nothing is changed yet.', { verdict })
    : phrase('{verdict}. Nothing that is free to move makes the top better.', { verdict });
}

function stale(shuffle: ShuffleState): Problem {
  const meanwhile = phrase('The quilt was changed while the shuffle ran, so the shuffle was stopped.');
  const since = phrase('The quilt was changed, so the layout the shuffle had found no longer fits it.');
  return { code: 'stale', path: '', message: shuffle.kind === 'running' ? meanwhile : since };
}

/** The later progress, with the moves of the earlier one where it has none. */
function withMoves(earlier: ShuffleProgress, later: ShuffleProgress): ShuffleProgress {
  return { ...later, moves: later.moves ?? earlier.moves };
}
