// Seeking several good orders that differ: runs beside the page, its answer kept until the quilt changes.
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Alternative } from '../../../arrange/alternatives';
import type { ShuffleWish } from '../../../arrange/shuffle';
import type { Problem } from '../../../model/result';
import { type RunningAlternatives, startAlternatives } from '../../../store/arrangeClient';
import { useAppStore } from '../../app';

export type AlternativesState =
  | { readonly kind: 'idle'; readonly problems: readonly Problem[] }
  | { readonly kind: 'running'; readonly share: number }
  | { readonly kind: 'offered'; readonly alternatives: readonly Alternative[] };

const IDLE: AlternativesState = { kind: 'idle', problems: [] };
const WANTED = 4;

export function useAlternatives() {
  const store = useAppStore();
  const [state, setState] = useState<AlternativesState>(IDLE);
  const running = useRef<RunningAlternatives | null>(null);
  useEffect(() => () => running.current?.cancel(), []);
  useEffect(
    () =>
      store.subscribe((now, before) => {
        if (now.revision === before.revision) return;
        running.current?.cancel();
        setState((old) => (old.kind === 'offered' ? IDLE : old));
      }),
    [store],
  );
  const start = useCallback(
    (wish: ShuffleWish) => {
      const { project, revision } = store.getState();
      setState({ kind: 'running', share: 0 });
      const seeking = startAlternatives(project, revision, wish, WANTED, (share) => {
        if (running.current === seeking) setState({ kind: 'running', share });
      });
      running.current = seeking;
      void seeking.answer.then((answer) => {
        if (running.current !== seeking) return;
        running.current = null;
        if (!answer.ok) setState({ kind: 'idle', problems: answer.problems });
        else if (answer.value.revision !== store.getState().revision) setState(IDLE);
        else setState({ kind: 'offered', alternatives: answer.value.alternatives });
      });
    },
    [store],
  );
  const stop = useCallback(() => running.current?.stop(), []);
  const close = useCallback(() => {
    store.getState().showPreview(null);
    setState(IDLE);
  }, [store]);
  return { state, start, stop, close };
}
