// Brings what was opened on the large area to the top of the panel, which may be scrolled to another part.
import { type RefObject, useEffect, useRef } from 'react';

/** A ref for the part of the panel that is there while the thing is open. */
export function useOpenInSight(): RefObject<HTMLElement | null> {
  const part = useRef<HTMLElement>(null);
  useEffect(() => {
    part.current?.scrollIntoView({ block: 'start' });
  }, []);
  return part;
}
