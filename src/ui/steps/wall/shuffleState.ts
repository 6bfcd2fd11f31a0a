// A running shuffle: starts it, shows the best so far on the wall, and turns the answer into a preview to accept or leave.
import { useCallback, useEffect, useRef, useState } from 'react';
import type { ArrangeResult, ShuffleProgress, ShuffleWish } from '../../../arrange/shuffle';
import { phrase } from '../../../model/phrase';
import type { Problem } from '../../../model/result';
import { type RunningShuffle, startShuffle } from '../../../store/arrangeClient';
import { useAppStore } from '../../app';
import { type Pace, paced } from './pace';

export type ShuffleState =
  | { readonly kind: 'idle'; readonly problems: readonly Problem[] }
  | { readonly kind: 'running'; readonly progress: ShuffleProgress | null }
  | { readonly kind: 'done'; readonly result: ArrangeResult };

const IDLE: ShuffleState = { kind: 'idle', problems: [] };

export function useShuffle() {
  const store = useAppStore();
  const [state, setState] = useState<ShuffleState>(IDLE);
  const running = useRef<RunningShuffle | null>(null);
  const pace = useRef<Pace<ShuffleProgress> | null>(null);
  useEffect(
    () => () => {
      if (!running.current) return;
      running.current.cancel();
      running.current = null;
      store.getState().showPreview(null);
      store.getState().say(phrase('The shuffle was put aside.'));
    },
    [store],
  );
  // A change made by hand meanwhile makes the answer stale: it is put aside rather than laid over that change.
  useEffect(
    () =>
      store.subscribe((now, before) => {
        if (now.revision === before.revision) return;
        running.current?.cancel();
        setState((old) => (old.kind === 'done' ? IDLE : old));
      }),
    [store],
  );
  const start = useCallback(
    (wish: ShuffleWish) => {
      const { project, revision, showPreview } = store.getState();
      setState({ kind: 'running', progress: null });
      const label = phrase('shuffle for balance');
      const news = paced<ShuffleProgress>(withMoves, (progress) => {
        if (running.current !== shuffle) return;
        setState({ kind: 'running', progress });
        if (progress.moves) showPreview({ moves: progress.moves, label });
      });
      const shuffle = startShuffle(project, revision, wish, news.tell);
      running.current = shuffle;
      pace.current = news;
      void shuffle.answer.then((answer) => {
        if (running.current !== shuffle) return;
        running.current = null;
        const stale = answer.ok && answer.value.revision !== store.getState().revision;
        if (answer.ok && !stale) {
          const { result } = answer.value;
          showPreview(result.moves.length > 0 ? { moves: result.moves, label: result.label } : null);
          setState({ kind: 'done', result });
          return;
        }
        if (!stale) showPreview(null);
        setState({ kind: 'idle', problems: answer.ok ? [] : answer.problems });
      });
    },
    [store],
  );
  const stop = useCallback(() => {
    pace.current?.end();
    running.current?.stop();
  }, []);
  const leave = useCallback(() => {
    store.getState().showPreview(null);
    setState(IDLE);
  }, [store]);
  return { state, start, stop, leave };
}

/** The later of two, with the moves of the earlier where it has none. */
function withMoves(earlier: ShuffleProgress, later: ShuffleProgress): ShuffleProgress {
  return { ...later, moves: later.moves ?? earlier.moves };
}
