// Shows why an input or a command was refused, next to its control.
import { useCallback, useState } from 'react';
import type { Command } from '../../editing/apply';
import type { Problem } from '../../model/result';
import { useApp, useAppStore } from '../app';
import { useSay } from '../words';
import { Fractions } from './Fractions';

/** The first problem, if any. Screen readers read it when it appears. */
export function Complaint({ problems, id }: { problems: readonly Problem[]; id?: string }) {
  const say = useSay();
  return (
    <div role="alert" id={id}>
      {problems[0] ? (
        <p className="complaint">
          <Fractions text={say(problems[0].message)} />
        </p>
      ) : null}
    </div>
  );
}

const NONE = { problems: [], at: -1 };

/** A function that runs a command and returns true if it was done, and the problems of the last refusal, for a <Complaint>. */
export function useRun(): [
  run: (command: Command) => boolean,
  problems: readonly Problem[],
  clear: () => void,
] {
  const store = useAppStore();
  const revision = useApp((app) => app.revision);
  const [refusal, setRefusal] = useState<{ problems: readonly Problem[]; at: number }>(NONE);
  const run = useCallback(
    (command: Command) => {
      // The complaint says it, here and to screen readers: it is not announced on the wall as well.
      const problems = store.getState().run(command, 'here');
      setRefusal({ problems, at: store.getState().revision });
      return problems.length === 0;
    },
    [store],
  );
  // After a change, an undo or a redo its cause may be gone.
  const shown = refusal.at === revision ? refusal.problems : NONE.problems;
  return [run, shown, useCallback(() => setRefusal(NONE), [])];
}
