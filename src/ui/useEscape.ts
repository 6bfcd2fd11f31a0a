// Escape closes what was opened last: everything that opens in place registers here while it is open.
import { useEffect, useEffectEvent } from 'react';

/** The open things in the order in which they were opened, each with what closes it. */
const opened: (() => void)[] = [];

/** Closes what was opened last; false where nothing is open. */
export function closeLast(): boolean {
  const close = opened.at(-1);
  close?.();
  return close !== undefined;
}

/** While `open` is true, Escape calls `close`, unless something has been opened since. */
export function useEscape(close: () => void, open = true): void {
  const latest = useEffectEvent(close);
  useEffect(() => {
    if (!open) return;
    const entry = () => latest();
    opened.push(entry);
    return () => void opened.splice(opened.indexOf(entry), 1);
  }, [open]);
}
