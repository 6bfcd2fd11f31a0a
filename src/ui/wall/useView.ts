// The view of the wall: it fits the quilt until the person zooms or pans, and follows the window's size. The top is drawn on a
// sheet larger than the window. During a gesture a CSS transform moves the sheet; it is drawn again only when a zoom rests or a
// pan reaches its edge, because painting 400 printed blocks is slow.
import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { between, covers, fitted, panned, type Size, type View, zoomed } from './view';

const REST = 140;

export interface WallView {
  readonly window: Size;
  /** The view that the sheet is drawn for; a pan may have moved it since. */
  readonly sheet: View;
  /** The view on screen, also during a gesture. */
  readonly now: RefObject<View>;
  readonly isFitted: boolean;
  readonly pan: (across: number, down: number) => void;
  readonly zoom: (factor: number, about?: { left: number; top: number }) => void;
  readonly fit: () => void;
}

/** The view of a quilt in a frame, with functions to pan, zoom and fit it. A small wall shows the whole quilt, and forgets no zoom. */
export function useView(
  frame: RefObject<HTMLElement | null>,
  element: RefObject<HTMLElement | null>,
  quilt: Size,
  small: boolean,
): WallView {
  const [window, setWindow] = useState<Size>({ width: 800, height: 600 });
  const [chosen, setChosen] = useState<View | null>(null);
  const margin = small ? 8 : Math.min(48, Math.max(14, window.width * 0.04));
  const { width, height } = quilt;
  const fit = useMemo(
    () => fitted({ width, height }, window, margin, !small),
    [width, height, window, margin, small],
  );
  const rest = (small ? null : chosen) ?? fit;
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
      timer.current = globalThis.setTimeout(() => setChosen(next), REST) as unknown as number;
    },
    [drawn, element],
  );

  const pan = useCallback((across: number, down: number) => show(panned(now.current, across, down)), [show]);
  const zoom = useCallback(
    (factor: number, about?: { left: number; top: number }) =>
      show(zoomed(now.current, factor, about ?? { left: window.width / 2, top: window.height / 2 }, fit)),
    [show, window, fit],
  );
  const refit = useCallback(() => {
    clearTimeout(timer.current);
    setChosen(null);
  }, []);
  return { window, sheet: drawn, now, isFitted: chosen === null, pan, zoom, fit: refit };
}
