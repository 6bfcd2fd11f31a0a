// Shows why an input or a command was refused, next to its control.
import { useCallback, useState } from 'react';
import type { Command } from '../../editing/apply';
import type { Problem } from '../../model/result';
import { useAppStore } from '../app';
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

/** A function that runs a command and returns true if it was done, and the problems of the last refusal, for a <Complaint>. */
export function useRun(): [
  run: (command: Command) => boolean,
  problems: readonly Problem[],
  clear: () => void,
] {
  const store = useAppStore();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const run = useCallback(
    (command: Command) => {
      const refused = store.getState().run(command);
      setProblems(refused);
      return refused.length === 0;
    },
    [store],
  );
  return [run, problems, useCallback(() => setProblems([]), [])];
}
