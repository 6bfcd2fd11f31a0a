// The largest top from the strips on hand as they are: the sets they make, the rule that leaves each strip, and laying the sets.
import { useMemo } from 'react';
import { asTheyAre } from '../../../../cutting/plan/asTheyAre';
import { laySets } from '../../../../editing/commands/stripSets';
import { counted } from '../../../../model/phrase';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';
import { StripsLeftItems } from '../../StripsLeft';
import type { AsTheyAreAnswer } from './useAsTheyAre';

export function AsTheyAre({ answer: { waiting, made, problems } }: { answer: AsTheyAreAnswer }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, refused] = useRun();
  const found = useMemo(() => made && asTheyAre(project, made.sets), [project, made]);
  if (problems.length > 0) return <Complaint problems={problems} />;
  if (waiting) return <p role="status">{say('Trying the strips as they are …')}</p>;
  if (!made || !found) return null;
  return (
    <>
      <ul className="onhand-words" aria-live="polite">
        {found.words.map((words, index) => (
          <li key={say(words)} className={index === 0 ? undefined : 'quiet'}>
            <Fractions text={say(words)} />
          </li>
        ))}
        <StripsLeftItems left={made.whyLeft} />
      </ul>
      {made.sets.length > 0 ? (
        <div>
          <button
            data-once
            type="button"
            className="button solid"
            onClick={() => run(laySets(store.getState().project, made.sets))}
          >
            {say(counted(made.sets.length, 'Use this: lay 1 set', 'Use this: lay {count} sets'))}
          </button>
        </div>
      ) : null}
      <Complaint problems={refused} />
    </>
  );
}
