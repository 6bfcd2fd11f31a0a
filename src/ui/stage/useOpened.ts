// What is opened on the large area takes the focus, and gives it back to what opened it.
import { type RefObject, useEffect, useRef } from 'react';
import { usable } from '../parts';

/** For the first thing to do in what is opened, or its heading. A page that is loaded with it open keeps its focus where it is. */
export function useOpened<Entry extends HTMLElement>(): RefObject<Entry | null> {
  const entry = useRef<Entry>(null);
  useEffect(() => {
    const opener = document.activeElement;
    if (!(opener instanceof HTMLElement)) return;
    // What opened it may be gone by now, and the focus with it; on a page just loaded nothing was pressed.
    if (opener === document.body && !navigator.userActivation.hasBeenActive) return;
    entry.current?.focus();
    return () =>
      void requestAnimationFrame(() => {
        if (document.activeElement === document.body && usable(opener)) opener.focus();
      });
  }, []);
  return entry;
}
