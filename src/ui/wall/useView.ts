// The view of the wall: it fits the quilt until the person zooms or pans, and follows the window's size. The top is drawn on a
// sheet larger than the window. During a gesture a CSS transform moves the sheet; it is drawn again only when a zoom rests or a
// pan reaches its edge, because painting 400 printed blocks is slow.
import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Point } from '../../geometry/point';
import {
  between,
  closeTo,
  covers,
  fitted,
  isLarger,
  marginOf,
  panned,
  recentred,
  type Size,
  type View,
  zoomed,
} from './view';

const REST = 140;

export interface WallView {
  readonly window: Size;
  /** The view that the sheet is drawn for; a pan may have moved it since. */
  readonly sheet: View;
  /** The view on screen, also during a gesture. */
  readonly now: RefObject<View>;
  readonly isFitted: boolean;
  /** Whether the quilt is larger than the frame at this moment, also during a gesture. */
  readonly isLarger: () => boolean;
  readonly pan: (across: number, down: number) => void;
  readonly zoom: (factor: number, about?: { left: number; top: number }) => void;
  /** Shows a point of the quilt in the middle, at so many pixels to the inch. */
  readonly goTo: (point: Point, scale: number) => void;
  readonly fit: () => void;
}

/** The view that a person chose: of which wall, and in a window of which size. */
interface Chosen {
  readonly of: string;
  readonly view: View;
  readonly window: Size;
}

/**
 * The view of a quilt in a frame, with functions to pan, zoom and fit it. A small wall shows the whole quilt. A zoom is forgotten
 * where `of` changes: with another quilt, or where the wall hangs in another frame.
 */
export function useView(
  frame: RefObject<HTMLElement | null>,
  element: RefObject<HTMLElement | null>,
  quilt: Size,
  small: boolean,
  of: string,
): WallView {
  const [window, setWindow] = useState<Size>({ width: 800, height: 600 });
  const [chosen, setChosen] = useState<Chosen | null>(null);
  if (chosen && chosen.of !== of) setChosen(null);
  const margin = small ? 8 : marginOf(window);
  const { width, height } = quilt;
  const size = useMemo(() => ({ width, height }), [width, height]);
  const fit = useMemo(() => fitted(size, window, margin, !small), [size, window, margin, small]);
  const rest = useMemo(
    () => (chosen && !small ? recentred(chosen.view, chosen.window, window, size) : fit),
    [chosen, small, window, size, fit],
  );
  const [sheet, setSheet] = useState(rest);
  const drawn = covers(sheet, rest, window) ? sheet : rest;
  if (drawn !== sheet) setSheet(drawn);
  const now = useRef<View>(rest);
  const timer = useRef<number | undefined>(undefined);

  useLayoutEffect(() => {
    const area = frame.current;
    if (!area) return;
    const measure = () => {
      const box = area.getBoundingClientRect();
      if (box.width > 0 && box.height > 0) setWindow({ width: box.width, height: box.height });
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(area);
    return () => observer.disconnect();
  }, [frame]);

  useLayoutEffect(() => {
    now.current = rest;
    if (element.current) element.current.style.transform = between(drawn, rest);
  }, [drawn, rest, element]);

  useEffect(() => () => clearTimeout(timer.current), []);

  const show = useCallback(
    (next: View) => {
      now.current = next;
      if (element.current) element.current.style.transform = between(drawn, next);
      clearTimeout(timer.current);
      const choose = () => setChosen({ of, view: next, window });
      timer.current = globalThis.setTimeout(choose, REST) as unknown as number;
    },
    [drawn, element, of, window],
  );

  const pan = useCallback(
    (across: number, down: number) => show(panned(now.current, across, down, size, window)),
    [show, size, window],
  );
  const zoom = useCallback(
    (factor: number, about?: { left: number; top: number }) => {
      const spot = about ?? { left: window.width / 2, top: window.height / 2 };
      show(zoomed(now.current, factor, spot, fit, size, window));
    },
    [show, window, fit, size],
  );
  const goTo = useCallback(
    (point: Point, scale: number) => show(closeTo(point, scale, size, window)),
    [show, window, size],
  );
  const larger = useCallback(() => isLarger(now.current, size, window), [size, window]);
  const refit = useCallback(() => {
    clearTimeout(timer.current);
    setChosen(null);
  }, []);
  return {
    window,
    sheet: drawn,
    now,
    isFitted: chosen === null,
    isLarger: larger,
    pan,
    zoom,
    goTo,
    fit: refit,
  };
}
