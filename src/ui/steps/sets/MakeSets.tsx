// Makes sets at random from the strips on hand, by a mix number. Locked, sewn and cut sets stay.
import { Dices } from 'lucide-react';
import { useEffect, useState } from 'react';
import { type MadeSets, type MakingShare, setMakingOf } from '../../../cutting/sets/randomSets';
import { replaceSets } from '../../../editing/commands/stripSets';
import { counted, phrase } from '../../../model/phrase';
import type { Problem } from '../../../model/result';
import { meaningOf } from '../../../model/words/glossary';
import { type RunningMaking, startMaking } from '../../../store/sets/makingSets';
import { useApp, useAppStore } from '../../app';
import { Choice } from '../../fields/Choice';
import { Complaint, useRun } from '../../fields/Complaint';
import { CountField } from '../../fields/CountField';
import { DrawField } from '../../fields/DrawField';
import { Fractions } from '../../fields/Fractions';
import { ProgressBar } from '../../fields/ProgressBar';
import { useSay } from '../../words';
import { FootAction } from '../FootAction';
import { StripsLeftItems } from '../StripsLeft';

type Want = 'blocks' | 'sets' | 'most';
const MOST_SEED = 10_000;
/** The usual number of sets: about five for six blocks (common practice, no source). */
const USUAL_SETS = 5;

const CHANGED: Problem = {
  code: 'stale',
  path: 'stripSets',
  message: phrase('The quilt changed while the sets were made. Make them again.'),
};

export function MakeSets() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [want, setWant] = useState<Want>('blocks');
  const [blocks, setBlocks] = useState<number | null>(null);
  const [sets, setSets] = useState(USUAL_SETS);
  const [seed, setSeed] = useState(project.preferences.seed);
  const [making, setMaking] = useState<RunningMaking | null>(null);
  const [share, setShare] = useState<MakingShare>(null);
  const [failure, setFailure] = useState<readonly Problem[]>([]);
  const [made, setMade] = useState<MadeSets | null>(null);
  const [run, problems] = useRun();
  const wantedBlocks = blocks ?? Math.max(project.blocks.length, project.wall.cells.length);
  const wanted = want === 'most' ? 'most' : want === 'sets' ? { sets } : { blocks: wantedBlocks };
  const make = async (withSeed: number) => {
    setSeed(withSeed);
    const { project: asked, revision } = store.getState();
    const started = startMaking(setMakingOf(asked, wanted, withSeed), undefined, setShare);
    setShare(null);
    setMaking(started);
    const answer = await started.answer;
    setMaking(null);
    if (answer === null) return;
    if (!answer.ok) return setFailure(answer.problems);
    if (store.getState().revision !== revision) return setFailure([CHANGED]);
    setFailure([]);
    setMade(answer.value);
    const count = answer.value.sets.length;
    if (count > 0 && run(replaceSets(asked, answer.value.sets, withSeed))) {
      store.getState().announce(counted(count, 'Made 1 set.', 'Made {count} sets.'));
    }
  };
  useEffect(() => () => making?.cancel(), [making]);
  const kept = <T,>(set: (value: T) => void) => {
    return (value: T) => {
      set(value);
      return [];
    };
  };
  return (
    <section aria-label={say('Make sets at random')}>
      <h3>{say('Make sets at random')}</h3>
      <div className="stack">
        <Choice
          label="How many"
          value={want}
          options={[
            { value: 'blocks', label: 'enough for the blocks' },
            { value: 'sets', label: 'a number of sets' },
            { value: 'most', label: 'all the strips give' },
          ]}
          onChange={setWant}
        />
        {want === 'blocks' ? (
          <CountField
            label="Number of blocks"
            value={wantedBlocks}
            least={1}
            most={1600}
            onCommit={kept<number>(setBlocks)}
          />
        ) : null}
        {want === 'sets' ? (
          <CountField label="Number of sets" value={sets} least={1} most={400} onCommit={kept(setSets)} />
        ) : null}
        <DrawField
          label="Mix number"
          value={seed}
          most={MOST_SEED}
          same={meaningOf('mix number')}
          onChange={setSeed}
        />
        <Leaving />
        <div className="row">
          <FootAction>
            <button
              type="button"
              className="button solid"
              aria-disabled={making !== null}
              onClick={() => void make(seed)}
            >
              {say(making ? 'Making …' : 'Make sets')}
            </button>
          </FootAction>
          <button
            type="button"
            className="button"
            aria-disabled={making !== null}
            onClick={() => void make((seed + 1) % (MOST_SEED + 1))}
          >
            <Dices size={16} aria-hidden /> {say('Try another mix')}
          </button>
          {making ? (
            <button type="button" className="button" onClick={making.cancel}>
              {say('Stop')}
            </button>
          ) : null}
        </div>
        {making ? <ProgressBar label={say('Making strip sets')} share={share} /> : null}
        <Complaint problems={failure.length > 0 ? failure : problems} />
        {made ? <Notes made={made} /> : null}
      </div>
    </section>
  );
}

/** Words on what leaves the blocks with the planned sets. */
function Leaving() {
  const say = useSay();
  const sets = useApp((app) => app.project.stripSets);
  const blocks = useApp((app) => app.project.blocks);
  const gone = new Set(sets.filter((set) => set.progress === 'planned' && !set.locked).map((set) => set.id));
  if (gone.size === 0) return null;
  const wedges = blocks.flatMap((block) =>
    block.places.filter((place) => place && gone.has(place.set)),
  ).length;
  const say1 = counted(
    gone.size,
    'The 1 planned, unlocked set is replaced.',
    'The {count} planned, unlocked sets are replaced.',
  );
  const say2 = counted(
    wedges,
    '1 of their wedges leaves its block.',
    '{count} of their wedges leave their blocks.',
  );
  return (
    <p className="quiet">
      {wedges === 0 ? say(say1) : say(phrase('{one} {other}', { one: say1, other: say2 }))}
    </p>
  );
}

function Notes({ made }: { made: MadeSets }) {
  const say = useSay();
  const left = made.left.reduce((sum, row) => sum + row.count, 0);
  return (
    <div role="status">
      <ul className="set-notes">
        <li>
          {say('{made}, {left}.', {
            made: counted(made.sets.length, '1 set made', '{count} sets made'),
            left: counted(left, '1 strip left over', '{count} strips left over'),
          })}
        </li>
        <StripsLeftItems left={made.whyLeft} />
        {made.notes.map((note) => (
          <li key={say(note)} className="complaint">
            <Fractions text={say(note)} />
          </li>
        ))}
      </ul>
    </div>
  );
}
