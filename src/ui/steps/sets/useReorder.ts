// Drags the rows of a list into another order by mouse, pen or touch. The list changes when the row is released. Escape ends the
// drag, and so does a change of the list meanwhile (an undo). The list itself handles keys.
import { type PointerEvent, useEffect, useEffectEvent, useRef, useState } from 'react';

interface Drag {
  readonly from: number;
  readonly to: number;
  /** How far the row was dragged, screen pixels. */
  readonly by: number;
  /** Height of the dragged row, screen pixels; the other rows move by it. */
  readonly height: number;
}

interface Start {
  readonly pointer: number;
  readonly y: number;
  readonly middles: readonly number[];
  readonly height: number;
  /** Index where it would be put down; null until it was dragged by SLACK. */
  readonly to: number | null;
}

/** Screen pixels after which a press becomes a drag. */
const SLACK = 4;

/** `items`: the present list; another list during a drag ends the drag, because its rows have other indices. */
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
        height: boxes[index]?.height ?? 0,
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
      setDrag({ from: index, to, by, height: from.height });
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
  /** Distance of a row from its place while another row is dragged, screen pixels. */
  const shift = (index: number): number => {
    if (!drag) return 0;
    if (index === drag.from) return drag.by;
    if (index > drag.from && index <= drag.to) return -drag.height;
    if (index < drag.from && index >= drag.to) return drag.height;
    return 0;
  };
  return { list, handle, shift, carried: drag?.from ?? null };
}

/** The list with the item at index `from` moved to index `to`, which counts without that item. */
export function reordered<T>(items: readonly T[], from: number, to: number): T[] {
  const rest = items.filter((_, index) => index !== from);
  return [...rest.slice(0, to), items[from]!, ...rest.slice(to)];
}
