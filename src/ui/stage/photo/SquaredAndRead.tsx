// A photographed block squared up, and beside it what was read of it.
import type { PicturedWedge } from '../../../model/project';
import { useSay } from '../../words';
import { ReadDrawing } from './ReadDrawing';

export function SquaredAndRead({ href, shown }: { href: string; shown: readonly PicturedWedge[] }) {
  const say = useSay();
  return (
    <div className="photo-pair">
      <figure>
        <img src={href} alt={say('The block squared up')} />
        <figcaption>{say('Squared up')}</figcaption>
      </figure>
      <figure>
        <ReadDrawing shown={shown} label={say('The block as it was read')} />
        <figcaption>{say('As read')}</figcaption>
      </figure>
    </div>
  );
}
