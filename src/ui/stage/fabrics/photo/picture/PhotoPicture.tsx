// The photograph in hand with what is laid on it: the frames of fabrics, the ruler, or the marks of what is white. What a tap does depends on
// what is being done.
import { type PointerEvent, useRef } from 'react';
import type { Point } from '../../../../../geometry/point';
import { type Frame, frameCorners } from '../../../../../photo/pixels/frame';
import { type PhotoAtWork, patchInHand } from '../../../../../store/photo/patches';
import { useSay } from '../../../../words';
import { pointsOf } from '../../../photo/cornerNames';
import { FrameHandles } from './FrameHandles';
import { usePointUnder } from './Handle';
import { RulerHandles } from './RulerHandles';
import { TapCross } from './TapCross';

export const DOINGS = ['frame', 'size', 'light', 'several'] as const;
export type Doing = (typeof DOINGS)[number];

interface Props {
  photo: PhotoAtWork;
  doing: Doing;
  /** A tap on the photograph, or Enter on the cross. */
  onTap: (at: Point) => void;
}

export function PhotoPicture({ photo, doing, onTap }: Props) {
  const say = useSay();
  const picture = useRef<HTMLDivElement>(null);
  const { opened, patches } = photo;
  const { width, height } = opened;
  const under = usePointUnder(picture, opened);
  const taps = doing === 'light' || doing === 'several';
  const pressed = (event: PointerEvent) => {
    const at = taps && event.button === 0 ? under(event) : null;
    if (at) onTap(at);
  };
  const inHand = patchInHand(photo);
  return (
    <div className="photo-room">
      <div
        ref={picture}
        className={taps ? 'photo-picture taps' : 'photo-picture'}
        style={{ aspectRatio: `${width} / ${height}`, width: `min(100%, calc(66vh * ${width / height}))` }}
        onPointerUp={pressed}
      >
        <img src={photo.href} alt={say('Photograph {name}', { name: photo.name })} draggable={false} />
        <svg viewBox={`0 0 ${width} ${height}`} preserveAspectRatio="none" aria-hidden>
          {patches.map((patch) => (
            <Outline key={patch.key} frame={patch.frame} kind={patch === inHand ? 'in-hand' : 'other'} />
          ))}
          {doing === 'light' && opened.white ? <Outline frame={opened.white.frame} kind="proposed" /> : null}
          {doing === 'light' && photo.light?.at ? <Outline frame={photo.light.at} kind="white" /> : null}
        </svg>
        {doing === 'frame' && inHand ? <FrameHandles photo={photo} patch={inHand} under={under} /> : null}
        {doing === 'size' ? <RulerHandles photo={photo} under={under} /> : null}
        {taps ? (
          <TapCross
            key={`${photo.file.key} ${doing}`}
            name={say(doing === 'light' ? 'What is white or grey' : 'Fabric to tap')}
            size={opened}
            under={under}
            onTap={onTap}
          />
        ) : null}
      </div>
    </div>
  );
}

/** An outline with a light and a dark edge, so that it shows on any fabric. */
function Outline({ frame, kind }: { frame: Frame; kind: 'in-hand' | 'other' | 'proposed' | 'white' }) {
  const points = pointsOf(frameCorners(frame));
  return (
    <g className={`photo-outline ${kind}`}>
      <polygon points={points} className="edge-dark" />
      <polygon points={points} className="edge-light" />
    </g>
  );
}
