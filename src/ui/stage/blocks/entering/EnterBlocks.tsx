// Blocks entered as they are sewn, on the large area: wedge by wedge with keys or taps, or all at once from a list.
import { Camera } from 'lucide-react';
import { BLOCK_PROGRESS } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { PROGRESS_NAMES } from '../../../steps/blocks/blockWords';
import { useEscape } from '../../../useEscape';
import { useSay } from '../../../words';
import { ByKeys } from './ByKeys';
import { ByList } from './ByList';
import './entering.css';
import { StandInSets } from './StandInSets';
import { useEntering } from './useEntering';

export function EnterBlocks({ way }: { way: 'keys' | 'list' }) {
  const say = useSay();
  const store = useAppStore();
  useEscape(() => store.getState().lay({ entering: null, into: null }));
  const hasSets = useApp((app) => app.project.stripSets.length > 0);
  const [{ progress }, change] = useEntering();
  return (
    <section className="entering" aria-labelledby="entering-title">
      <header className="entering-head sheet-of-paper">
        <h2 id="entering-title">{say('Enter sewn blocks')}</h2>
        <Choice
          label="How to enter them"
          hideLabel
          value={way}
          options={[
            { value: 'keys', label: 'Wedge by wedge' },
            { value: 'list', label: 'From a list' },
          ]}
          onChange={(entering) => store.getState().lay({ entering })}
        />
        <button
          type="button"
          className="button"
          onClick={() => store.getState().lay({ entering: null, photoBlocks: true })}
        >
          <Camera size={16} aria-hidden /> {say('From a photograph')}
        </button>
        <label className="progress-of">
          <span>{say('Progress')}</span>
          <select
            value={progress}
            onChange={(event) => change({ progress: BLOCK_PROGRESS[event.target.selectedIndex]! })}
          >
            {BLOCK_PROGRESS.map((one) => (
              <option key={one} value={one}>
                {say(PROGRESS_NAMES[one])}
              </option>
            ))}
          </select>
        </label>
      </header>
      {hasSets ? way === 'keys' ? <ByKeys /> : <ByList /> : <StandInSets />}
    </section>
  );
}
