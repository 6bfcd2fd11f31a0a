// The large area. It belongs to the step: what is in the hands there lies on it at a size at which cloth can be judged, with the wall
// small beside it. One press makes the wall large; the work stays where it was underneath.
import { ArrowLeft } from 'lucide-react';
import { useEffect } from 'react';
import type { Step } from '../../store/app';
import { useApp, useAppStore } from '../app';
import { later } from '../later';
import { Shown } from '../Shown';
import { STEP_WORKS } from '../stepParts';
import { useEscape } from '../useEscape';
import { WallView } from '../wall/WallView';
import { useSay } from '../words';
import { useBeginning } from './beginning/useBeginning';
import './stage.css';
import { useFullScreen } from './useFullScreen';
import { useScreen } from './useScreen';
import { useWallWork, type Work } from './wall/WallWork';
import { WORK_NAMES } from './workNames';

const BEGINNING = later(async () => (await import('./beginning/Beginning')).Beginning);

export function Stage({ number }: { number: boolean }) {
  const say = useSay();
  const store = useAppStore();
  const step = useApp((app) => app.step);
  const enlarged = useApp((app) => app.wallLarge);
  const beginning = useBeginning();
  const onWall = useWallWork();
  const work = step === 'wall' ? onWall : workOf(step);
  const full = useFullScreen();
  const large = work === null || enlarged || full;
  // On a phone photographs of fabrics take the room of the panel, which is the main part else (photo.css).
  const phone = useScreen('(max-width: 720px)');
  const photos = useApp((app) => app.laid.photos);
  const instead = phone && photos && step === 'fabrics';
  useEscape(() => store.getState().enlargeWall(false), enlarged && work !== null && !full);
  useEffect(() => {
    if (beginning && full) store.getState().fillScreen(false);
  }, [store, beginning, full]);
  if (beginning)
    return (
      <div className="large-area">
        <Shown part={BEGINNING} given={{}} />
      </div>
    );
  return (
    <div className={large ? 'large-area' : 'large-area with-work'}>
      {work === null ? null : (
        <section
          key={step}
          className="work"
          role={instead ? 'main' : undefined}
          inert={large}
          aria-label={say(work.name)}
        >
          {work.laid}
        </section>
      )}
      <WallView number={number} small={!large} />
      {large && work !== null && !full ? (
        <button
          type="button"
          className="button back-to-work"
          onClick={() => store.getState().enlargeWall(false)}
        >
          <ArrowLeft size={16} aria-hidden /> {say(work.back)}
        </button>
      ) : null}
    </div>
  );
}

/** What a step lays on the large area. */
function workOf(step: Exclude<Step, 'wall'>): Work {
  return {
    name: WORK_NAMES[step],
    back: BACK_NAMES[step],
    laid: <Shown key={step} part={STEP_WORKS[step]} given={{}} />,
  };
}

const BACK_NAMES: Readonly<Record<Exclude<Step, 'wall'>, string>> = {
  fabrics: 'Back to the fabrics',
  sets: 'Back to the strip sets',
  wedges: 'Back to the wedges',
  blocks: 'Back to the blocks',
  finishing: 'Back to finishing',
};
