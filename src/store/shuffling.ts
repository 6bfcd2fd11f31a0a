// Runs the shuffle of the open quilt. It goes on in its workers whatever step is on show; its best so far is the preview while the
// Wall step is open; its answer waits there until it is kept, left, or the quilt has changed.
import { createStore, type StoreApi } from 'zustand/vanilla';
import { shuffleWish, stillFits } from '../arrange/asked';
import type { ProvingProgress } from '../arrange/provingFurther';
import type { ShuffleProgress, ShuffleWish } from '../arrange/shuffle';
import type { ArrangeResult } from '../arrange/verdict';
import type { Command } from '../editing/apply';
import { keepShuffle } from '../editing/commands/wall';
import type { Move } from '../model/moves';
import { type Phrase, phrase } from '../model/phrase';
import type { Problem } from '../model/result';
import type { App, AppStore } from './app';
import { paced } from './arranging/pace';
import { startProving } from './arranging/provingClient';
import { startShuffle } from './arranging/shuffleClient';
import type { Running } from './workers/workerClient';

export type ShuffleState =
  | { readonly kind: 'idle'; readonly problems: readonly Problem[] }
  | { readonly kind: 'running'; readonly progress: ShuffleProgress | null }
  /** `keep` is the command that is the preview; null where no order is better. Problems: why it could not search on. */
  | (Found & { readonly kind: 'done'; readonly problems?: readonly Problem[] })
  /** It goes on from what was found until nothing better can exist. */
  | (Found & { readonly kind: 'proving'; readonly progress: ProvingProgress | null });

interface Found {
  readonly result: ArrangeResult;
  readonly keep: Command | null;
}

export interface Shuffling {
  readonly shuffle: ShuffleState;
  readonly start: () => void;
  /** Searches on from the answer, where something is left to search. */
  readonly goOn: () => void;
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
  pace: typeof paced = paced,
  further: typeof startProving = startProving,
): StoreApi<Shuffling> {
  return createStore<Shuffling>()((set, get) => {
    let running: {
      readonly shuffle: Running<ArrangeResult>;
      readonly news: { readonly end: () => void };
    } | null = null;
    /** The best order found so far, whether it is on show or not. */
    let best: Command | null = null;
    /** What the shuffle was asked; the person may ask for something else before it goes on. */
    let wish: ShuffleWish | null = null;
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
    /** Has workers search: what they tell is shown, and what they answer becomes the layout found. */
    const search = <News extends { readonly moves: readonly Move[] | null }>(
      begun: (tell: (news: News) => void) => Running<ArrangeResult>,
      shown: (news: News | null) => ShuffleState,
      failed: (problems: readonly Problem[]) => ShuffleState,
    ) => {
      const news = pace<News>(withMoves, (progress) => {
        if (running?.news !== news) return;
        if (progress.moves) best = keeping(progress.moves);
        set({ shuffle: shown(progress) });
        if (progress.moves) show();
      });
      const shuffle = begun(news.tell);
      running = { shuffle, news };
      become(shown(null));
      void shuffle.answer.then((answer) => {
        if (running?.shuffle !== shuffle || !answer) return;
        running = null;
        news.end();
        if (answer.ok) best = keeping(answer.value.moves);
        become(answer.ok ? { kind: 'done', result: answer.value, keep: best } : failed(answer.problems));
        show();
        if (app.getState().step !== 'wall')
          app.getState().announce(phrase('The shuffle is done. Its layout waits under Wall.'));
        else if (answer.ok) app.getState().tell(foundWords(answer.value.verdictWords, best));
      });
    };
    const start = () => {
      const { project } = app.getState();
      dismiss([]);
      const asked = shuffleWish(project);
      wish = asked;
      search<ShuffleProgress>(
        (tell) => begin(project, asked, tell),
        (progress) => ({ kind: 'running', progress }),
        (problems) => ({ kind: 'idle', problems }),
      );
    };
    const goOn = () => {
      const { shuffle } = get();
      const asked = wish;
      if (shuffle.kind !== 'done' || !shuffle.result.left || !asked) return;
      const { project } = app.getState();
      const { result } = shuffle;
      search<ProvingProgress>(
        (tell) => further(project, asked, result, tell),
        (progress) => ({ kind: 'proving', result, keep: best, progress }),
        // What the shuffle found is not lost with a worker.
        (problems) => {
          best = keeping(result.moves);
          return { kind: 'done', result, keep: best, problems };
        },
      );
    };
    return {
      shuffle: IDLE,
      start,
      goOn,
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
  app.getState().announce(shuffle.kind !== 'done' ? goesOn : phrase('The layout found waits under Wall.'));
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
  return { code: 'stale', path: '', message: shuffle.kind !== 'done' ? meanwhile : since };
}

/** The later progress, with the moves of the earlier one where it has none. */
function withMoves<News extends { readonly moves: readonly Move[] | null }>(
  earlier: News,
  later: News,
): News {
  return { ...later, moves: later.moves ?? earlier.moves };
}
