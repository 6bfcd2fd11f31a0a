// The wedge in the hand while it is carried to another place.
import { findBlock } from '../../../../model/find';
import { useApp } from '../../../app';
import { WedgePicture } from '../WedgePicture';
import type { PlaceRef } from './trade';

export function CarriedWedge(props: {
  hand: { readonly x: number; readonly y: number } | null;
  from: PlaceRef | null;
}) {
  const project = useApp((app) => app.project);
  const wedge = props.from && findBlock(project, props.from.block)?.places[props.from.place];
  if (!props.hand || !wedge) return null;
  return (
    <div className="carried-wedge" style={{ left: props.hand.x, top: props.hand.y }} aria-hidden>
      <WedgePicture wedge={wedge} height={92} />
    </div>
  );
}
