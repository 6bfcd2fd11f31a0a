// An open set in the wedges step: how to cut it, counts by tip, what one more wedge would take, and its progress.
import { useMemo } from 'react';
import { layingWords } from '../../../cutting/wedges/laying';
import type { LedgerRow } from '../../../cutting/wedges/ledger';
import { lengthForFirst, oneMoreWords } from '../../../cutting/wedges/oneMore';
import { markSets } from '../../../editing/commands/setProgress';
import { changeSet } from '../../../editing/commands/stripSets';
import { heightShort } from '../../../geometry/stripSet';
import { type Phrase, phrase } from '../../../model/phrase';
import type { Project, StripSet } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Choice } from '../../fields/Choice';
import { Complaint, useRun } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { MendSet } from '../sets/MendSet';
import { OpenSetHead } from '../sets/OpenSetHead';
import { SET_PROGRESS_OPTIONS } from '../sets/setNames';
import { useOpenInSight } from '../useOpenInSight';
import { CutCounts } from './CutCounts';

export function OpenCuts({ row }: { row: LedgerRow }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const section = useOpenInSight();
  const { set } = row;
  const lines = useMemo(() => tableLines(row, project), [row, project]);
  const change = (to: Partial<StripSet>) => run(changeSet(store.getState().project, set.id, to));
  if (heightShort(row.height, project.wedge) > 0) {
    return (
      <section className="stack set-open" ref={section} aria-label={say('Set {set}', { set: set.label })}>
        <OpenSetHead set={set} />
        {set.strips.length > 0 ? <MendSet set={set} /> : <p>{say('This set has no strips yet.')}</p>}
      </section>
    );
  }
  return (
    <section className="stack set-open" ref={section} aria-label={say('Set {set}', { set: set.label })}>
      <OpenSetHead set={set} />
      <ul className="set-aids">
        {lines.map((line) => (
          <li key={line.say}>
            <span>
              <Fractions text={say(line)} />
            </span>
          </li>
        ))}
      </ul>
      <CutCounts row={row} />
      <div className="row wdg-choices">
        <Choice
          label="First wedge"
          value={set.firstTip}
          options={[
            { value: 'up', label: 'tip up' },
            { value: 'down', label: 'tip down' },
          ]}
          onChange={(firstTip) => change({ firstTip })}
        />
        <Choice
          label="Progress"
          value={set.progress}
          options={SET_PROGRESS_OPTIONS}
          onChange={(progress) => run(markSets([set.id], progress))}
        />
      </div>
      <Complaint problems={problems} />
    </section>
  );
}

/** Instructions for cutting this set, in order. */
function tableLines(row: LedgerRow, { wedge }: Project): Phrase[] {
  const { set } = row;
  const needs = lengthForFirst(set, wedge);
  if (needs !== null) {
    return [
      phrase('No wedge fits on it; the first one needs a length of {length}.', {
        length: { atLeast: needs },
      }),
    ];
  }
  const lines = [
    phrase(
      set.firstTip === 'up'
        ? 'Straighten the left end, and lay the first wedge there, tip up, with its rim on the edge of the first strip.'
        : 'Straighten the left end, and lay the first wedge there, tip down, with its rim on the edge of the last strip.',
    ),
  ];
  lines.push(...layingWords(set, wedge));
  const more = oneMoreWords(set, wedge);
  return more ? [...lines, more] : lines;
}
