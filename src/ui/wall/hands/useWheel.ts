// The wheel and the pinch of a trackpad on the wall. React's own wheel events cannot prevent scrolling.
import { type RefObject, useEffect, useLayoutEffect, useRef } from 'react';
import { flows } from '../../flows';
import type { WallView } from '../useView';

/** A pinch as Safari tells it (no standard); other browsers tell a trackpad's pinch as a wheel with Ctrl. */
interface Pinch extends UIEvent {
  /** How far the fingers are apart, as a multiple of the beginning. */
  readonly scale: number;
  readonly clientX: number;
  readonly clientY: number;
}

/**
 * Zooms at the pointer with the wheel or a pinch, or pans sideways with Shift. Where the page scrolls as a whole the wheel is the page's,
 * and the wall's with Ctrl.
 */
export function useWheel(frame: RefObject<HTMLElement | null>, view: Pick<WallView, 'pan' | 'zoom'>): void {
  const scale = useRef(1);
  const fingers = useRef(0);
  const latest = useRef(view);
  useLayoutEffect(() => {
    latest.current = view;
  });
  // Listened to once: a wheel that may not scroll is noted by the browser for all that lies below, and the whole wall painted for it.
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const about = (event: { readonly clientX: number; readonly clientY: number }) => {
      const box = element.getBoundingClientRect();
      return { left: event.clientX - box.left, top: event.clientY - box.top };
    };
    const wheel = (event: WheelEvent) => {
      if (flows() && !event.ctrlKey) return;
      event.preventDefault();
      if (event.shiftKey) latest.current.pan(-event.deltaY - event.deltaX, 0);
      else latest.current.zoom(Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0016)), about(event));
    };
    const touch = (event: TouchEvent) => {
      fingers.current = event.touches.length;
    };
    // The page itself is zoomed unless both are prevented. Fingers on the glass are hands of their own (useHands.ts).
    const begin = (event: Event) => {
      event.preventDefault();
      scale.current = 1;
    };
    const pinch = (event: Event) => {
      event.preventDefault();
      const now = (event as Pinch).scale;
      if (fingers.current === 0) latest.current.zoom(now / scale.current, about(event as Pinch));
      scale.current = now;
    };
    const end = new AbortController();
    const options = { passive: false, signal: end.signal };
    element.addEventListener('wheel', wheel, options);
    element.addEventListener('gesturestart', begin, options);
    element.addEventListener('gesturechange', pinch, options);
    for (const name of ['touchstart', 'touchend', 'touchcancel'] as const)
      element.addEventListener(name, touch, { ...options, passive: true });
    return () => end.abort();
  }, [frame]);
}
