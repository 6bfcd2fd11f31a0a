// The wedge under the hand that carries it to a place.
import { useApp } from '../../app';
import { WedgePicture } from '../../steps/blocks/WedgePicture';
import { carriedWedge, useTrading } from '../../steps/blocks/workshop/trade';

export function CarriedWedge() {
  const project = useApp((app) => app.project);
  const { carried } = useTrading();
  const wedge = carried && carriedWedge(project, carried.from);
  if (!wedge) return null;
  const { x, y } = carried.hand;
  return (
    <div className="carried-wedge" style={{ left: x, top: y }} aria-hidden>
      <WedgePicture wedge={wedge} height={132} />
    </div>
  );
}
