// Whether an element is in sight on the large area, or nearly.
import { type RefObject, useEffect, useState } from 'react';
import { flows } from '../../flows';

/** How far beyond the edge counts as in sight, so that it is drawn before it comes. */
const NEARLY = '320px';

const watchers = new WeakMap<Element | Document, IntersectionObserver>();
const told = new WeakMap<Element, (inSight: boolean) => void>();

/** Milliseconds that it stays in sight before it counts, so that nothing is drawn for what only passes. */
const STAYS = 140;

/** True once it stays in sight, false when it is out again. One observer serves all elements of a scrolling area, or of the page. */
export function useInSight(element: RefObject<Element | null>): boolean {
  const [inSight, setInSight] = useState(false);
  useEffect(() => {
    const watched = element.current;
    const work = watched?.closest('.work');
    if (!watched || !work) return;
    let timer: ReturnType<typeof setTimeout> | undefined;
    told.set(watched, (now) => {
      clearTimeout(timer);
      if (now) timer = setTimeout(() => setInSight(true), STAYS);
      else setInSight(false);
    });
    const watcher = watcherOf(flows() ? document : work);
    watcher.observe(watched);
    return () => {
      clearTimeout(timer);
      watcher.unobserve(watched);
    };
  }, [element]);
  return inSight;
}

function watcherOf(area: Element | Document): IntersectionObserver {
  const known = watchers.get(area);
  if (known) return known;
  const watcher = new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) told.get(target)?.(isIntersecting);
    },
    { root: area, rootMargin: NEARLY },
  );
  watchers.set(area, watcher);
  return watcher;
}
