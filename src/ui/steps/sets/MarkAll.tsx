// Sets the progress of all strip sets at once.
import { markSets } from '../../../editing/commands/setProgress';
import { counted } from '../../../model/phrase';
import type { StripSet } from '../../../model/project';
import { useApp } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { useSay } from '../../words';
import { SET_PROGRESS_OPTIONS } from './setNames';

export function MarkAll() {
  const say = useSay();
  const sets = useApp((app) => app.project.stripSets);
  const [run, problems] = useRun();
  if (sets.length < 2) return null;
  const mark = (progress: StripSet['progress']) =>
    run(
      markSets(
        sets.map((set) => set.id),
        progress,
      ),
    );
  return (
    <div>
      <div className="row">
        <span className="quiet">{say(counted(sets.length, 'Mark it as', 'Mark all {count} as'))}</span>
        {SET_PROGRESS_OPTIONS.map(({ value, label }) => (
          <button
            key={value}
            type="button"
            className="button"
            disabled={sets.every((set) => set.progress === value)}
            onClick={() => mark(value)}
          >
            {say(label)}
          </button>
        ))}
      </div>
      <Complaint problems={problems} />
    </div>
  );
}
