// The frame in hand by numbers, and another frame beside it.
import { Plus, Trash2 } from 'lucide-react';
import type { Frame } from '../../../../photo/pixels/frame';
import type { Patch, PhotoAtWork } from '../../../../store/photo/patches';
import { firstFrame } from '../../../../store/photo/patches';
import { useSay } from '../../../words';
import { NumberField } from './NumberField';
import { LEAST_FRAME, movedBy, sizedTo, turnedTo } from './picture/frameMoves';
import { useSitting } from './sitting';

export function FramePart({ photo, patch }: { photo: PhotoAtWork; patch: Patch }) {
  const say = useSay();
  const sitting = useSitting();
  const { frame } = patch;
  const size = photo.opened;
  const put = (next: Frame, changed: boolean) => {
    if (changed) sitting.editPatch(photo.file.key, patch.key, { frame: next });
    return changed;
  };
  const move = (x: number, y: number) => {
    const next = movedBy(frame, x - frame.x, y - frame.y, size);
    return put(next, Math.hypot(next.x - x, next.y - y) < 0.01);
  };
  const resize = (width: number, height: number) => {
    const next = sizedTo(frame, width, height, size);
    return put(next, next.width === width && next.height === height);
  };
  return (
    <div className="stack">
      <p className="quiet">
        {say(
          'Lay the frame on a flat part of the fabric, with as much of the print as you can, top side up.',
        )}
      </p>
      <details>
        <summary>{say('Frame by numbers')}</summary>
        <div className="photo-numbers">
          <NumberField
            label="Middle, across (pixels)"
            value={frame.x}
            least={0}
            most={size.width}
            onCommit={(x) => move(x, frame.y)}
          />
          <NumberField
            label="Middle, down (pixels)"
            value={frame.y}
            least={0}
            most={size.height}
            onCommit={(y) => move(frame.x, y)}
          />
          <NumberField
            label="Width (pixels)"
            value={frame.width}
            least={LEAST_FRAME}
            most={size.width}
            onCommit={(width) => resize(width, frame.height)}
          />
          <NumberField
            label="Height (pixels)"
            value={frame.height}
            least={LEAST_FRAME}
            most={size.height}
            onCommit={(height) => resize(frame.width, height)}
          />
          <NumberField
            label="Turned (degrees)"
            value={frame.angle}
            least={-180}
            most={180}
            onCommit={(angle) => {
              const next = turnedTo(frame, angle, size);
              return put(next, next !== frame);
            }}
          />
        </div>
      </details>
      <div className="row">
        <button
          data-once
          type="button"
          className="button"
          onClick={() => sitting.addFrame(photo.file.key, firstFrame(size))}
        >
          <Plus size={16} aria-hidden /> {say('Another frame')}
        </button>
        <button type="button" className="button" onClick={() => sitting.removePhoto(photo.file.key)}>
          <Trash2 size={16} aria-hidden /> {say('Remove this photograph')}
        </button>
      </div>
    </div>
  );
}
