// Dragging the rows of a list into another order by mouse, pen or touch. The list stays as it is until the row is let go;
// Escape gives it up, and so does any change of the list meanwhile (an undo). Keys are the list's own business.
import { type PointerEvent, useEffect, useEffectEvent, useRef, useState } from 'react';

interface Drag {
  readonly from: number;
  readonly to: number;
  /** How far the row has been carried, screen pixels. */
  readonly by: number;
  /** Height of the carried row, screen pixels: how far the others make room. */
  readonly room: number;
}

interface Start {
  readonly pointer: number;
  readonly y: number;
  readonly middles: readonly number[];
  readonly room: number;
  /** Where it would be put down; null until it has been carried far enough to count. */
  readonly to: number | null;
}

/** Screen pixels before a press becomes a drag. */
const SLACK = 4;

/** `items`: the list as it is; another one while a row is carried (an undo) gives the drag up, since its rows are counted anew. */
export function useReorder(items: unknown, onDrop: (from: number, to: number) => void) {
  const list = useRef<HTMLOListElement>(null);
  const start = useRef<Start | null>(null);
  const [drag, setDrag] = useState<Drag | null>(null);
  const giveUp = useEffectEvent(() => {
    start.current = null;
    setDrag(null);
  });
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || !start.current) return;
      event.stopPropagation();
      giveUp();
    };
    globalThis.addEventListener('keydown', key, { capture: true });
    return () => globalThis.removeEventListener('keydown', key, { capture: true });
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: when the list has changed
  useEffect(() => giveUp(), [items]);
  const handle = (index: number) => ({
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.button !== 0 || !list.current) return;
      const boxes = Array.from(list.current.children, (row) => row.getBoundingClientRect());
      start.current = {
        pointer: event.pointerId,
        y: event.clientY,
        middles: boxes.map((box) => box.top + box.height / 2),
        room: boxes[index]?.height ?? 0,
        to: null,
      };
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const from = start.current;
      if (from?.pointer !== event.pointerId) return;
      const by = event.clientY - from.y;
      if (from.to === null && Math.abs(by) < SLACK) return;
      const at = from.middles[index]! + by;
      const to = from.middles.filter((middle, other) => other !== index && middle < at).length;
      start.current = { ...from, to };
      setDrag({ from: index, to, by, room: from.room });
    },
    onPointerUp: (event: PointerEvent<HTMLElement>) => {
      const from = start.current;
      if (from?.pointer !== event.pointerId) return;
      start.current = null;
      setDrag(null);
      if (from.to !== null && from.to !== index) onDrop(index, from.to);
    },
    onPointerCancel: giveUp,
  });
  /** How far a row stands from its place while another is carried, screen pixels. */
  const shift = (index: number): number => {
    if (!drag) return 0;
    if (index === drag.from) return drag.by;
    if (index > drag.from && index <= drag.to) return -drag.room;
    if (index < drag.from && index >= drag.to) return drag.room;
    return 0;
  };
  return { list, handle, shift, carried: drag?.from ?? null };
}

/** The list with one item taken out and put in at another place (counted without it). */
export function reordered<T>(items: readonly T[], from: number, to: number): T[] {
  const rest = items.filter((_, index) => index !== from);
  return [...rest.slice(0, to), items[from]!, ...rest.slice(to)];
}
