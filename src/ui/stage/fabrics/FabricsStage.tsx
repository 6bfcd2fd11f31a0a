// The large area of the step Fabrics: the fabrics laid out as pieces of cloth, the grid into which strips are entered, or photographs of
// which fabrics are made. Photographs may be dropped or pasted onto all of them.
import { lazy, Suspense } from 'react';
import { useApp } from '../../app';
import { usePhotoDrop } from '../usePhotoDrop';
import { FabricsLaidOut } from './FabricsLaidOut';
import { StripGrid } from './grid/StripGrid';
import { useTakePhotos } from './photo/useTakePhotos';

const PhotoStage = lazy(async () => ({ default: (await import('./photo/PhotoStage')).PhotoStage }));

export function FabricsStage() {
  const { strips, photos } = useApp((app) => app.laid);
  usePhotoDrop(useTakePhotos());
  if (!photos) return strips ? <StripGrid /> : <FabricsLaidOut />;
  return (
    <Suspense fallback={null}>
      <PhotoStage />
    </Suspense>
  );
}
