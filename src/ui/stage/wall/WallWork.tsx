// The large area at the Wall step while something else than the wall lies on it: moves to make by hand, a photograph of
// the wall, several layouts to choose from, or tops of about a wanted size.
import type { ReactNode } from 'react';
import { useApp } from '../../app';
import { later } from '../../later';
import { Shown } from '../../Shown';
import { useSeeking } from '../../session';
import './wallWork.css';

const LAYOUTS = later(async () => (await import('./LayoutsToChoose')).LayoutsToChoose);
const SIZES = later(async () => (await import('./SizesToChoose')).SizesToChoose);
const PHOTO = later(async () => (await import('../photo/WallPhotoStage')).default);
const MOVES = later(async () => (await import('./byHand/MovesByHand')).default);

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
      laid: <Shown key="moves" part={MOVES} given={{}} />,
    };
  if (photo)
    return {
      name: 'Photograph of the wall',
      back: 'Back to the photograph',
      laid: <Shown key="photo" part={PHOTO} given={{}} />,
    };
  const choice = { name: 'Layouts to choose from', back: 'Back to the layouts' };
  if (state.kind === 'offered')
    return { ...choice, laid: <Shown key="layouts" part={LAYOUTS} given={state} /> };
  return sizes ? { ...choice, laid: <Shown key="sizes" part={SIZES} given={{ wanted: sizes }} /> } : null;
}
