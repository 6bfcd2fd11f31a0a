// The line under the wall that always says how it stands: clashes and score, and what the hand or the preview would make of them.
import { Printer } from 'lucide-react';
import { weightsOf } from '../../../balance/score/wishes';
import { SCORE_MEANS } from '../../../model/words/score';
import { useApp } from '../../app';
import { useSay } from '../../words';
import type { Gesture } from '../hands/gesture';
import { standingWords } from './standingWords';
import { useStanding } from './useStanding';
import { WallMapButton } from './WallMapButton';

export function StandingLine({ gesture, small }: { gesture: Gesture | null; small: boolean }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const preview = useApp((app) => app.preview);
  const { now, after } = useStanding(project, preview, gesture);
  const empty = project.wall.cells.every((cell) => cell === null);
  const words = now && !empty ? standingWords(now, after, weightsOf(project.preferences)) : null;
  return (
    <div className="standing">
      <p title={say(SCORE_MEANS)}>
        {empty ? say('No block hangs yet') : null}
        {words?.map((one, at) => (
          // Elements that stay: to put others in for each cell that the hand enters has the styles of the whole area worked out again.
          // biome-ignore lint/suspicious/noArrayIndexKey: clashes and score, always in this order
          <span key={at}>{say(one)} </span>
        ))}
      </p>
      {small ? null : (
        <div className="row">
          <button
            type="button"
            className="button bare wall-map"
            title={say('Print the quilt with its sizes and the map of its wall')}
            disabled={empty}
            onClick={() => globalThis.print()}
          >
            <Printer size={15} aria-hidden /> {say('Print')}
          </button>
          <WallMapButton />
        </div>
      )}
    </div>
  );
}
