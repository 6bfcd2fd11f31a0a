// When something that opened in place closes again, the focus goes back to the button that opened it.
import { useEffect, useRef } from 'react';

/** Give the ref to the button; the focus returns when `open` turns false. */
export function useReturnFocus(open: boolean) {
  const opener = useRef<HTMLButtonElement>(null);
  const before = useRef(open);
  useEffect(() => {
    if (before.current && !open) opener.current?.focus();
    before.current = open;
  }, [open]);
  return opener;
}
