// The large area at the Wall step while there is something to choose from: several layouts, or tops of about a wanted size.
import type { ReactNode } from 'react';
import { useApp } from '../../app';
import { later } from '../../later';
import { Shown } from '../../Shown';
import { useSeeking } from '../../session';
import './wallWork.css';

const LAYOUTS = later(async () => (await import('./LayoutsToChoose')).LayoutsToChoose);
const SIZES = later(async () => (await import('./SizesToChoose')).SizesToChoose);

/** What lies on the large area at the Wall step; null where it is the wall itself. */
export function useWallWork(): ReactNode {
  const { state } = useSeeking();
  const sizes = useApp((app) => app.laid.sizes);
  const at = useApp((app) => app.step);
  if (at !== 'wall') return null;
  if (state.kind === 'offered') return <Shown key="layouts" part={LAYOUTS} given={state} />;
  return sizes ? <Shown key="sizes" part={SIZES} given={{ wanted: sizes }} /> : null;
}
