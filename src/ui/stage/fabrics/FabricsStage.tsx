// The large area of the step Fabrics: the fabrics laid out as pieces of cloth, the grid into which strips are entered, or photographs of
// which fabrics are made. Photographs may be dropped or pasted onto all of them.
import { useApp } from '../../app';
import { later } from '../../later';
import { Shown } from '../../Shown';
import { usePhotoDrop } from '../usePhotoDrop';
import { FabricsLaidOut } from './FabricsLaidOut';
import { StripGrid } from './grid/StripGrid';
import { useTakePhotos } from './photo/useTakePhotos';

const PHOTO = later(async () => (await import('./photo/PhotoStage')).PhotoStage);

export function FabricsStage() {
  const { strips, photos } = useApp((app) => app.laid);
  usePhotoDrop(useTakePhotos());
  if (!photos) return strips ? <StripGrid /> : <FabricsLaidOut />;
  return <Shown part={PHOTO} given={{}} />;
}
