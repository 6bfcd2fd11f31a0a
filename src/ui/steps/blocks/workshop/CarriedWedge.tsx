// The wedge under the hand that carries it to another place.
import { findBlock } from '../../../../model/find';
import { useApp } from '../../../app';
import { WedgePicture } from '../WedgePicture';
import { useTrading } from './trade';

export function CarriedWedge() {
  const project = useApp((app) => app.project);
  const { carried } = useTrading();
  const wedge = carried && findBlock(project, carried.from.block)?.places[carried.from.place];
  if (!wedge) return null;
  const { x, y } = carried.hand;
  return (
    <div className="carried-wedge" style={{ left: x, top: y }} aria-hidden>
      <WedgePicture wedge={wedge} height={92} />
    </div>
  );
}
