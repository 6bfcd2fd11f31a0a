// The large area at the Wall step while something else than the wall lies on it: moves to make by hand, a photograph of
// the wall, several layouts to choose from, or tops of about a wanted size.
import { lazy, type ReactNode, Suspense } from 'react';
import { useApp } from '../../app';
import { useSeeking } from '../../session';
import { useSay } from '../../words';
import { LayoutsToChoose } from './LayoutsToChoose';
import { SizesToChoose } from './SizesToChoose';
import './wallWork.css';

const WallPhoto = lazy(() => import('../photo/WallPhotoStage'));
const MovesByHand = lazy(() => import('./byHand/MovesByHand'));

/** What lies on the large area, what it is called, and the words of the way back to it. */
export interface Work {
  readonly name: string;
  readonly back: string;
  readonly laid: ReactNode;
}

/** What lies on the large area at the Wall step; null where it is the wall itself. */
export function useWallWork(): Work | null {
  const { state } = useSeeking();
  const sizes = useApp((app) => app.laid.sizes);
  const moves = useApp((app) => app.laid.movesOpen);
  const photo = useApp((app) => app.laid.photoWall);
  const at = useApp((app) => app.step);
  if (at !== 'wall') return null;
  if (moves)
    return {
      name: 'List of moves',
      back: 'Back to the moves',
      laid: (
        <Loaded>
          <MovesByHand />
        </Loaded>
      ),
    };
  if (photo)
    return {
      name: 'Photograph of the wall',
      back: 'Back to the photograph',
      laid: (
        <Loaded>
          <WallPhoto />
        </Loaded>
      ),
    };
  const choice = { name: 'Layouts to choose from', back: 'Back to the layouts' };
  if (state.kind === 'offered') return { ...choice, laid: <LayoutsToChoose {...state} /> };
  return sizes ? { ...choice, laid: <SizesToChoose wanted={sizes} /> } : null;
}

/** What is loaded when it is asked for. */
function Loaded({ children }: { children: ReactNode }) {
  const say = useSay();
  return <Suspense fallback={<p role="status">{say('Loading …')}</p>}>{children}</Suspense>;
}
