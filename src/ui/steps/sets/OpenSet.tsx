// The open strip set in the panel: what mends its height, strips, length, pressing, progress, lock and removal.
import { Lock, LockOpen, Trash2 } from 'lucide-react';
import { useState } from 'react';
import { lengthForFirst } from '../../../cutting/wedges/oneMore';
import { markSets } from '../../../editing/commands/setProgress';
import { changeSet, removeSet } from '../../../editing/commands/stripSets';
import { counted, phrase } from '../../../model/phrase';
import type { StripSet } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { useApp, useAppStore } from '../../app';
import { Choice } from '../../fields/Choice';
import { Complaint, useRun } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { LengthField } from '../../fields/LengthField';
import { TextField } from '../../fields/TextField';
import { useEscape } from '../../useEscape';
import { useSay } from '../../words';
import { useOpenInSight } from '../useOpenInSight';
import { MendSet } from './MendSet';
import { OpenSetHead } from './OpenSetHead';
import { StripList } from './StripList';
import { SET_PROGRESS_OPTIONS } from './setNames';

const LONGEST_LETTER = 4;

export function OpenSet({ set }: { set: StripSet }) {
  const say = useSay();
  const store = useAppStore();
  const [run, problems] = useRun();
  const section = useOpenInSight();
  const wedge = useApp((app) => app.project.wedge);
  const needs = lengthForFirst(set, wedge);
  const change = (to: Parameters<typeof changeSet>[2]) =>
    store.getState().run(changeSet(store.getState().project, set.id, to), 'here');
  return (
    <section className="stack set-open" ref={section} aria-label={say('Set {set}', { set: set.label })}>
      <OpenSetHead set={set} />
      <MendSet set={set} />
      <StripList set={set} />
      <div className="fab-three">
        <LengthField
          label="Usable length"
          value={set.length}
          least={0}
          most={4000}
          onCommit={(length) => change({ length })}
          describedBy={needs === null ? undefined : `needs-${set.id}`}
        />
        <TextField
          label="Letter"
          value={set.label}
          longest={LONGEST_LETTER}
          onCommit={(label) => change({ label })}
        />
      </div>
      {needs === null ? null : (
        <p className="complaint" id={`needs-${set.id}`} role="status">
          <Fractions
            text={say('No wedge fits on this length; the first one needs {length}.', {
              length: { atLeast: needs },
            })}
          />
        </p>
      )}
      <Choice
        label="All seams pressed"
        value={set.pressing}
        options={[
          { value: 'last', label: '↑ to the last strip' },
          { value: 'first', label: '↓ to the first' },
        ]}
        onChange={(pressing) => run(changeSet(store.getState().project, set.id, { pressing }))}
      />
      <div className="spread">
        <Choice
          label="Progress"
          value={set.progress}
          options={SET_PROGRESS_OPTIONS}
          onChange={(progress) => run(markSets([set.id], progress))}
        />
        <button
          type="button"
          className="button set-lock"
          aria-pressed={set.locked}
          title={say('A locked set stays when sets are made at random')}
          onClick={() => run(changeSet(store.getState().project, set.id, { locked: !set.locked }))}
        >
          {set.locked ? <Lock size={16} aria-hidden /> : <LockOpen size={16} aria-hidden />}{' '}
          {say(set.locked ? 'Locked' : 'Lock')}
        </button>
      </div>
      <Complaint problems={problems} />
      <RemoveSet set={set} />
    </section>
  );
}

/** Removes a set: at once if no block uses it, else after words on what leaves the blocks with it. */
function RemoveSet({ set }: { set: StripSet }) {
  const say = useSay();
  const store = useAppStore();
  const blocks = useApp((app) => app.project.blocks);
  const [asked, setAsked] = useState(false);
  useEscape(() => setAsked(false), asked);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const used = blocks.flatMap((block) => block.places.filter((place) => place?.set === set.id)).length;
  const remove = () => {
    setAsked(false);
    setProblems(store.getState().run(removeSet(store.getState().project, set.id), 'here'));
  };
  const warning = counted(
    used,
    '1 wedge of set {set} is in a block; its place will be empty.',
    '{count} wedges of set {set} are in blocks; their places will be empty.',
    { set: set.label },
  );
  return (
    <div>
      {asked ? (
        <div className="stack">
          <p role="status">{say(warning)}</p>
          <div className="row">
            <button type="button" className="button solid" onClick={remove}>
              {say('Remove it anyway')}
            </button>
            <button data-always type="button" className="button" onClick={() => setAsked(false)}>
              {say('Cancel')}
            </button>
          </div>
        </div>
      ) : (
        <button type="button" className="button" onClick={() => (used > 0 ? setAsked(true) : remove())}>
          <Trash2 size={16} aria-hidden /> {say(phrase('Remove set {set}', { set: set.label }))}
        </button>
      )}
      <Complaint problems={problems} />
    </div>
  );
}
