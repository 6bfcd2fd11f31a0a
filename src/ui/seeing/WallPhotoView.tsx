// A photograph of the real wall beside the wall on screen, seen in the same way.
import { X } from 'lucide-react';
import { useLayoutEffect, useRef } from 'react';
import type { WallPhoto } from '../../store/app';
import { useAppStore } from '../app';
import { useSay } from '../words';

interface Props {
  photo: WallPhoto;
  /** Inches that its height stands for: those of the quilt. */
  height: number;
}

export function WallPhotoView({ photo, height }: Props) {
  const say = useSay();
  const store = useAppStore();
  const image = useRef<SVGImageElement>(null);
  useLayoutEffect(() => {
    const address = URL.createObjectURL(photo.image);
    image.current?.setAttribute('href', address);
    return () => URL.revokeObjectURL(address);
  }, [photo]);
  const width = (height * photo.width) / photo.height;
  return (
    <figure className="wall-photo">
      <svg
        className="photo"
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={say('Photograph of the wall: {name}', { name: photo.name })}
      >
        <g className="seen">
          <image ref={image} width={width} height={height} preserveAspectRatio="none" />
        </g>
      </svg>
      <button
        type="button"
        className="button bare"
        aria-label={say('Remove the photograph')}
        title={say('Remove the photograph')}
        onClick={() => store.getState().lookAt({ photo: null })}
      >
        <X size={16} aria-hidden />
      </button>
    </figure>
  );
}
