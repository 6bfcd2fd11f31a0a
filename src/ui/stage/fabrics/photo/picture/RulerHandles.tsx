// The two points that are set on a ruler in the photograph, and the line between them.
import { useState } from 'react';
import type { Point } from '../../../../../geometry/point';
import type { PhotoAtWork } from '../../../../../store/photo/patches';
import { useSay } from '../../../../words';
import { useSitting } from '../sitting';
import { rulerOf, withRuler } from '../trueSize';
import { arrowOf, Handle, type PointUnder, within } from './Handle';

export function RulerHandles({ photo, under }: { photo: PhotoAtWork; under: PointUnder }) {
  const say = useSay();
  const sitting = useSitting();
  const [dragged, setDragged] = useState<{ readonly one: Point; readonly other: Point } | null>(null);
  const size = photo.opened;
  const ruler = rulerOf(photo);
  const shown = dragged ?? ruler;
  const put = (points: { readonly one: Point; readonly other: Point }) =>
    sitting.edit(photo.file.key, () => withRuler({ ...ruler, ...points }));
  const ends = [
    ['one', 'First point on the ruler'],
    ['other', 'Second point on the ruler'],
  ] as const;
  return (
    <>
      <svg viewBox={`0 0 ${size.width} ${size.height}`} preserveAspectRatio="none" aria-hidden>
        <g className="photo-outline in-hand">
          {(['edge-dark', 'edge-light'] as const).map((edge) => (
            <line
              key={edge}
              className={edge}
              x1={shown.one.x}
              y1={shown.one.y}
              x2={shown.other.x}
              y2={shown.other.y}
            />
          ))}
        </g>
      </svg>
      {ends.map(([end, name]) => (
        <Handle
          key={end}
          name={say(name)}
          className="photo-handle point"
          at={shown[end]}
          size={size}
          under={under}
          onDrag={(to) => setDragged({ ...ruler, [end]: within(to, size) })}
          onDrop={() => {
            if (dragged) put(dragged);
            setDragged(null);
          }}
          onKeyDown={(event) => {
            const arrow = arrowOf(event);
            const step = (event.shiftKey ? 0.02 : 0.002) * Math.min(size.width, size.height);
            const { x, y } = ruler[end];
            if (arrow)
              put({ ...ruler, [end]: within({ x: x + step * arrow.x, y: y + step * arrow.y }, size) });
          }}
        />
      ))}
    </>
  );
}
