// A thing on the photograph that is dragged or moved by keys: 44 px under a finger, over the point it stands for.
import { type KeyboardEvent, type ReactNode, type RefObject, useRef } from 'react';
import type { Point } from '../../../../../geometry/point';
import { isKey } from '../../../../keys';

/** The point of the photograph under the pointer; null where the picture is not on the page. */
export type PointUnder = (event: { readonly clientX: number; readonly clientY: number }) => Point | null;

/** How a picture of so many pixels finds the point under a pointer, however large it is on the page. */
export function usePointUnder(
  picture: RefObject<HTMLElement | null>,
  { width, height }: Props['size'],
): PointUnder {
  return ({ clientX, clientY }) => {
    const box = picture.current?.getBoundingClientRect();
    return box
      ? { x: ((clientX - box.left) / box.width) * width, y: ((clientY - box.top) / box.height) * height }
      : null;
  };
}

interface Props {
  name: string;
  /** Where it stands, in pixels of the photograph. */
  at: Point;
  size: { readonly width: number; readonly height: number };
  className: string;
  /** Set off from its point, in this direction (degrees clockwise from up), so that it covers nothing. */
  outwards?: number;
  children?: ReactNode;
  describedBy?: string | undefined;
  under: PointUnder;
  /** While it is dragged: where the pointer is, and where it went down. */
  onDrag: (to: Point, from: Point) => void;
  onDrop: () => void;
  onKeyDown?: (event: KeyboardEvent) => void;
  onPress?: (() => void) | undefined;
}

export function Handle({
  name,
  at,
  size,
  under,
  onDrag,
  onDrop,
  onPress,
  describedBy,
  outwards,
  children,
  ...rest
}: Props) {
  const from = useRef<Point | null>(null);
  return (
    <button
      type="button"
      aria-label={name}
      aria-describedby={describedBy}
      style={{
        left: `${(100 * at.x) / size.width}%`,
        top: `${(100 * at.y) / size.height}%`,
        transform: outwards === undefined ? undefined : `rotate(${outwards}deg) translateY(-30px)`,
      }}
      onPointerDown={(event) => {
        event.stopPropagation();
        event.currentTarget.setPointerCapture(event.pointerId);
        from.current = under(event);
      }}
      onPointerMove={(event) => {
        const to = under(event);
        if (from.current && to) onDrag(to, from.current);
      }}
      onPointerUp={(event) => {
        // It is no tap on the photograph.
        event.stopPropagation();
        if (from.current) onDrop();
        from.current = null;
      }}
      onPointerCancel={() => {
        if (from.current) onDrop();
        from.current = null;
      }}
      onClick={onPress}
      {...rest}
    >
      {children}
    </button>
  );
}

const ARROWS: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/** The step of an arrow key, one in its direction; null for other keys. The page does not scroll by it. */
export function arrowOf(event: KeyboardEvent): Point | null {
  const arrow = isKey(event, 'frameMove') ? ARROWS[event.key] : undefined;
  if (arrow) event.preventDefault();
  return arrow ?? null;
}

/** A point moved inside the photograph. */
export function within({ x, y }: Point, { width, height }: Props['size']): Point {
  return { x: Math.max(0, Math.min(width, x)), y: Math.max(0, Math.min(height, y)) };
}
