// The two states of a quilt that two windows have changed, side by side, to take one. What was not taken comes back by an undo.
import { useEffect, useState } from 'react';
import { nextLabels } from '../../../editing/history';
import type { Phrase } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import type { StoredProject } from '../../../store/storage/storage';
import { useApp } from '../../app';
import { useSession } from '../../session';
import { useSay } from '../../words';
import { QuiltPicture } from '../quilts/QuiltPicture';

export function BothStates({ onTake }: { onTake: (which: 'this' | 'other') => void }) {
  const say = useSay();
  const session = useSession();
  const project = useApp((app) => app.project);
  const history = useApp((app) => app.history);
  const revision = useApp((app) => app.revision);
  const [other, setOther] = useState<StoredProject | null>(null);
  useEffect(() => {
    let left = false;
    const look = () => void session.otherState().then((found) => !left && setOther(found));
    look();
    // It may go on changing.
    const end = session.state.subscribe((now, before) => now.projects !== before.projects && look());
    return () => {
      left = true;
      end();
    };
  }, [session]);
  return (
    <ul className="both-states" aria-label={say('Both states of the quilt')}>
      <State
        title={say('This window')}
        of={`here ${revision}`}
        project={project}
        last={nextLabels(history).undo}
        onTake={() => onTake('this')}
      />
      {other ? (
        <State
          title={say('The other window')}
          of={`${other.project.id} ${other.revision}`}
          project={other.project}
          last={nextLabels(other.history).undo}
          onTake={() => onTake('other')}
        />
      ) : null}
    </ul>
  );
}

interface StateProps {
  title: string;
  of: string;
  project: Project;
  /** The change made last. */
  last: Phrase | null;
  onTake: () => void;
}

function State({ title, of, project, last, onTake }: StateProps) {
  const say = useSay();
  return (
    <li>
      <QuiltPicture key={of} of={of} open={() => Promise.resolve(project)} side={112} />
      <div className="stack">
        <p>
          {title}: <bdi>{project.name}</bdi>
          <br />
          <span className="quiet">
            {last
              ? say('{count} blocks · last change: {change}', { count: project.blocks.length, change: last })
              : say('{count} blocks', { count: project.blocks.length })}
          </span>
        </p>
        <button
          type="button"
          className="button"
          aria-label={say('Take {state}', { state: title })}
          onClick={onTake}
        >
          {say('Take this one')}
        </button>
      </div>
    </li>
  );
}
