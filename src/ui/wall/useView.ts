// The wall's view: fits the quilt until the person zooms or pans, follows the window's size. While a gesture lasts the
// picture is moved by a CSS transform; the viewBox is committed when it rests, since redrawing 400 printed blocks is slow.
import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { between, fitted, panned, type Size, type View, zoomed } from './view';

const REST = 140;

export interface WallView {
  readonly window: Size;
  /** What is drawn, and what is shown while a gesture lasts. */
  readonly drawn: View;
  readonly now: RefObject<View>;
  readonly isFitted: boolean;
  /** True while a gesture moves the picture ahead of what is drawn. */
  readonly isMoving: boolean;
  readonly pan: (across: number, down: number) => void;
  readonly zoom: (factor: number, about?: { left: number; top: number }) => void;
  readonly fit: () => void;
}

export function useView(
  frame: RefObject<HTMLElement | null>,
  svg: RefObject<SVGSVGElement | null>,
  quilt: Size,
): WallView {
  const [window, setWindow] = useState<Size>({ width: 800, height: 600 });
  const [chosen, setChosen] = useState<View | null>(null);
  const margin = Math.min(48, Math.max(14, window.width * 0.04));
  const { width, height } = quilt;
  const fit = useMemo(() => fitted({ width, height }, window, margin), [width, height, window, margin]);
  const drawn = chosen ?? fit;
  const now = useRef<View>(drawn);
  const [isMoving, setMoving] = useState(false);
  const timer = useRef<number | undefined>(undefined);

  useLayoutEffect(() => {
    const element = frame.current;
    if (!element) return;
    const measure = () => {
      const box = element.getBoundingClientRect();
      if (box.width > 0 && box.height > 0) setWindow({ width: box.width, height: box.height });
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [frame]);

  useLayoutEffect(() => {
    now.current = drawn;
    if (svg.current) svg.current.style.transform = '';
  }, [drawn, svg]);

  useEffect(() => () => clearTimeout(timer.current), []);

  const show = useCallback(
    (next: View) => {
      now.current = next;
      setMoving(true);
      if (svg.current) {
        svg.current.style.willChange = 'transform';
        svg.current.style.transform = between(drawn, next);
      }
      clearTimeout(timer.current);
      timer.current = globalThis.setTimeout(() => {
        if (svg.current) svg.current.style.willChange = '';
        setChosen(next);
        setMoving(false);
      }, REST) as unknown as number;
    },
    [drawn, svg],
  );

  const pan = useCallback((across: number, down: number) => show(panned(now.current, across, down)), [show]);
  const zoom = useCallback(
    (factor: number, about?: { left: number; top: number }) =>
      show(zoomed(now.current, factor, about ?? { left: window.width / 2, top: window.height / 2 }, fit)),
    [show, window, fit],
  );
  const refit = useCallback(() => {
    clearTimeout(timer.current);
    setMoving(false);
    setChosen(null);
  }, []);
  return { window, drawn, now, isFitted: chosen === null, isMoving, pan, zoom, fit: refit };
}
