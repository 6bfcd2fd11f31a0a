// A photograph with four corners laid on it. They are dragged, or moved by arrow keys, under a loupe; what else lies on the photograph is
// drawn between the corners.
import { type ReactNode, useRef, useState } from 'react';
import type { Point } from '../../../geometry/point';
import { useSay } from '../../words';
import { arrowOf, Handle, usePointUnder, within } from '../fabrics/photo/picture/Handle';
import { CornerFields } from './CornerFields';
import { CORNER_NAMES, pointsOf } from './cornerNames';
import { Loupe } from './Loupe';
import './photo.css';

interface Props {
  /** The photograph in words. */
  label: string;
  href: string;
  size: { readonly width: number; readonly height: number };
  corners: readonly Point[];
  onLay: (corners: readonly Point[]) => void;
  /** In pixels of the photograph. */
  children?: (corners: readonly Point[]) => ReactNode;
}

export function CornerPicture({ label, href, size, corners, onLay, children }: Props) {
  const say = useSay();
  const picture = useRef<HTMLDivElement>(null);
  const [dragged, setDragged] = useState<readonly Point[] | null>(null);
  const [held, setHeld] = useState<number | null>(null);
  const { width, height } = size;
  const shown = dragged ?? corners;
  const under = usePointUnder(picture, size);
  const moved = (corner: number, by: Point) => {
    const from = corners[corner]!;
    return corners.with(corner, within({ x: from.x + by.x, y: from.y + by.y }, size));
  };
  return (
    <div className="corner-room">
      <div
        ref={picture}
        className="corner-picture"
        style={{ aspectRatio: `${width} / ${height}`, width: `min(100%, calc(64vh * ${width / height}))` }}
      >
        <img src={href} alt={label} draggable={false} />
        <svg viewBox={`0 0 ${width} ${height}`} preserveAspectRatio="none" aria-hidden>
          {children?.(shown)}
          <polygon points={pointsOf(shown)} className="edge-dark" />
          <polygon points={pointsOf(shown)} className="edge-light" />
        </svg>
        {CORNER_NAMES.map((name, corner) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: it only sees which handle has the focus
          <span key={name} onFocus={() => setHeld(corner)} onBlur={() => setHeld(null)}>
            <Handle
              name={say(name)}
              describedBy="corner-keys"
              className="corner-handle"
              at={shown[corner]!}
              size={size}
              under={under}
              onDrag={(to, from) => {
                setHeld(corner);
                setDragged(moved(corner, { x: to.x - from.x, y: to.y - from.y }));
              }}
              onDrop={() => {
                if (dragged) onLay(dragged);
                setDragged(null);
                setHeld(null);
              }}
              onKeyDown={(event) => {
                const arrow = arrowOf(event);
                const step = event.shiftKey ? 10 : 1;
                setHeld(corner);
                if (arrow) onLay(moved(corner, { x: step * arrow.x, y: step * arrow.y }));
              }}
            />
          </span>
        ))}
        {held === null ? null : <Loupe href={href} size={size} at={shown[held]!} corners={shown} />}
      </div>
      <p id="corner-keys" className="hidden-text">
        {say('Arrows move it by a pixel, Shift and arrows by ten.')}
      </p>
      <CornerFields size={size} corners={corners} onLay={onLay} />
    </div>
  );
}
