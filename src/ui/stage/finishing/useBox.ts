// The size of a part of the page in pixels, as it changes.
import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

export interface BoxSize {
  readonly width: number;
  readonly height: number;
}

/** A ref for the element, and the size inside its borders; 0 × 0 before it is on the page. */
export function useBox<E extends HTMLElement>(): [ref: RefObject<E | null>, size: BoxSize] {
  const ref = useRef<E>(null);
  const [size, setSize] = useState<BoxSize>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    const measure = () => setSize({ width: element.clientWidth, height: element.clientHeight });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
