// The large area at the Wall step while there is something to choose from: several layouts, or tops of about a wanted size.
import type { ReactNode } from 'react';
import { useApp } from '../../app';
import { useSeeking } from '../../session';
import { LayoutsToChoose } from './LayoutsToChoose';
import { SizesToChoose } from './SizesToChoose';
import './wallWork.css';

/** What lies on the large area at the Wall step; null where it is the wall itself. */
export function useWallWork(): ReactNode {
  const { state } = useSeeking();
  const sizes = useApp((app) => app.laid.sizes);
  const at = useApp((app) => app.step);
  if (at !== 'wall') return null;
  if (state.kind === 'offered') return <LayoutsToChoose {...state} />;
  return sizes ? <SizesToChoose wanted={sizes} /> : null;
}
