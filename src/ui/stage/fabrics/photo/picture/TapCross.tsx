// A cross on the photograph for whoever taps by keys: arrows move it, Enter taps where it stands.
import { Crosshair } from 'lucide-react';
import { useId, useState } from 'react';
import type { Point } from '../../../../../geometry/point';
import type { PhotoAtWork } from '../../../../../store/photo/patches';
import { useSay } from '../../../../words';
import { arrowOf, Handle, type PointUnder, within } from './Handle';

interface Props {
  photo: PhotoAtWork;
  doing: 'light' | 'several' | 'frame' | 'size';
  under: PointUnder;
  onTap: (at: Point) => void;
}

export function TapCross({ photo, doing, under, onTap }: Props) {
  const say = useSay();
  const keys = useId();
  const size = photo.opened;
  const [at, setAt] = useState<Point>({ x: size.width / 2, y: size.height / 2 });
  return (
    <>
      <Handle
        name={say(doing === 'light' ? 'What is white or grey' : 'Fabric to tap')}
        describedBy={keys}
        className="photo-handle cross"
        at={at}
        size={size}
        under={under}
        onDrag={(to) => setAt(within(to, size))}
        onDrop={() => {}}
        onPress={() => onTap(at)}
        onKeyDown={(event) => {
          const arrow = arrowOf(event);
          const step = (event.shiftKey ? 0.002 : 0.02) * Math.min(size.width, size.height);
          if (arrow) setAt(within({ x: at.x + step * arrow.x, y: at.y + step * arrow.y }, size));
        }}
      >
        <Crosshair size={26} aria-hidden />
      </Handle>
      <span id={keys} className="hidden-text">
        {say('Arrows move it, Enter takes what it is on.')}
      </span>
    </>
  );
}
