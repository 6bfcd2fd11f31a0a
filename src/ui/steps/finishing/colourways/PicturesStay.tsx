// What a colourway cannot change: blocks that are pictures.
import { picturesInQuilt } from '../../../../model/colourway';
import { counted } from '../../../../model/phrase';
import { useApp } from '../../../app';
import { useSay } from '../../../words';

/** Says how many blocks no colourway can change; nothing where there are none. */
export function PicturesStay() {
  const say = useSay();
  const pictures = useApp((app) => picturesInQuilt(app.project));
  if (pictures === 0) return null;
  return (
    <p className="quiet">
      {say(
        counted(
          pictures,
          '1 block is a picture and stays as it is in every colourway.',
          '{count} blocks are pictures and stay as they are in every colourway.',
        ),
      )}
    </p>
  );
}
