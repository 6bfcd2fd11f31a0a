// Whether an element has come into sight of the window, or near it, since it was first shown; blocks/useInSight.ts tells whether it still is.
import { type RefObject, useEffect, useState } from 'react';

/** Turns true once and stays so. */
export function useCameInSight(element: RefObject<Element | null>): boolean {
  const [seen, setSeen] = useState(false);
  useEffect(() => {
    const { current } = element;
    if (seen || !current) return undefined;
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some((entry) => entry.isIntersecting)) setSeen(true);
      },
      { rootMargin: '200px' },
    );
    observer.observe(current);
    return () => observer.disconnect();
  }, [element, seen]);
  return seen;
}
