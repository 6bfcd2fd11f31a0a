// The frame in hand: its middle moves it, its corners size it, the knob over its upper side turns it. By keys: arrows move, Shift sizes,
// brackets turn.
import { Move, RotateCw } from 'lucide-react';
import { type KeyboardEvent, useId, useState } from 'react';
import { type Frame, frameCorners, inFrame } from '../../../../../photo/pixels/frame';
import type { Patch, PhotoAtWork } from '../../../../../store/photo/patches';
import { isKey } from '../../../../keys';
import { useSay } from '../../../../words';
import { CORNER_NAMES, pointsOf } from '../../../photo/cornerNames';
import { useSitting } from '../sitting';
import { cornerTo, facing, movedBy, sizedTo, turnedTo } from './frameMoves';
import { arrowOf, Handle, type PointUnder } from './Handle';

interface Props {
  photo: PhotoAtWork;
  patch: Patch;
  under: PointUnder;
}

/** An arrow moves by this share of the shorter side of the photograph. */
const STEP = 0.005;

export function FrameHandles({ photo, patch, under }: Props) {
  const say = useSay();
  const sitting = useSitting();
  const keys = useId();
  // While it is dragged the fabric is not read.
  const [dragged, setDragged] = useState<Frame | null>(null);
  const size = photo.opened;
  const put = (frame: Frame) => sitting.editPatch(photo.file.key, patch.key, { frame });
  const drop = () => {
    if (dragged) put(dragged);
    setDragged(null);
  };
  const frame = dragged ?? patch.frame;
  const corners = frameCorners(frame);
  const byKeys = (event: KeyboardEvent) => {
    const step = STEP * Math.min(size.width, size.height);
    const arrow = arrowOf(event);
    if (arrow && isKey(event, 'frameSize'))
      put(
        sizedTo(
          patch.frame,
          patch.frame.width + 2 * step * arrow.x,
          patch.frame.height + 2 * step * arrow.y,
          size,
        ),
      );
    else if (arrow) put(movedBy(patch.frame, step * arrow.x, step * arrow.y, size));
    else if (isKey(event, 'frameOn')) put(turnedTo(patch.frame, patch.frame.angle + 1, size));
    else if (isKey(event, 'frameBack')) put(turnedTo(patch.frame, patch.frame.angle - 1, size));
  };
  const shared = { size, under, onDrop: drop };
  return (
    <>
      {dragged ? (
        <svg viewBox={`0 0 ${size.width} ${size.height}`} preserveAspectRatio="none" aria-hidden>
          <polygon className="photo-dragged" points={pointsOf(corners)} />
        </svg>
      ) : null}
      <Handle
        {...shared}
        name={say('Frame')}
        describedBy={keys}
        className="photo-handle middle"
        at={frame}
        onDrag={(to, from) => setDragged(movedBy(patch.frame, to.x - from.x, to.y - from.y, size))}
        onKeyDown={byKeys}
      >
        <Move size={18} aria-hidden />
      </Handle>
      <span id={keys} className="hidden-text">
        {say('Arrows move it, Shift and arrows size it, brackets turn it.')}
      </span>
      {CORNER_NAMES.map((name, corner) => (
        <Handle
          {...shared}
          key={name}
          name={say(name)}
          className="photo-handle corner"
          at={corners[corner]!}
          onDrag={(to) => setDragged(cornerTo(patch.frame, corner, to, size))}
          onKeyDown={(event) => {
            const arrow = arrowOf(event);
            const step = STEP * Math.min(size.width, size.height);
            const { x, y } = corners[corner]!;
            if (arrow)
              put(cornerTo(patch.frame, corner, { x: x + step * arrow.x, y: y + step * arrow.y }, size));
          }}
        />
      ))}
      <Handle
        {...shared}
        name={say('Turn the frame')}
        describedBy={keys}
        className="photo-handle turn"
        at={inFrame(frame)(0.5, 0)}
        outwards={frame.angle}
        onDrag={(to) => setDragged(facing(patch.frame, to, size))}
        onKeyDown={(event) => {
          const arrow = arrowOf(event);
          if (arrow) put(turnedTo(patch.frame, patch.frame.angle + arrow.x + arrow.y, size));
          else byKeys(event);
        }}
      >
        <RotateCw size={16} aria-hidden />
      </Handle>
    </>
  );
}
