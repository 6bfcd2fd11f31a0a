// Moves the focus back to the button that opened something in place, when that closes.
import { useEffect, useRef } from 'react';

/** A ref for the button; the focus returns to it when `open` becomes false. */
export function useReturnFocus(open: boolean) {
  const opener = useRef<HTMLButtonElement>(null);
  const before = useRef(open);
  useEffect(() => {
    if (before.current && !open) opener.current?.focus();
    before.current = open;
  }, [open]);
  return opener;
}
