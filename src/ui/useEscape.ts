// Escape closes what was opened last: everything that opens in place registers here while it is open.
import { useEffect, useEffectEvent } from 'react';

type Close = () => void;

/** The open things in the order in which they were opened: what closes each. */
const opened: Close[] = [];

function forget(close: Close): void {
  const at = opened.indexOf(close);
  if (at >= 0) opened.splice(at, 1);
}

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
    return () => forget(entry);
  }, [open]);
}

/** From now on Escape closes folds too. Only those the person opened: what a page opens by itself stays. */
export function heedFolds(page: Document): void {
  const folds = new Map<HTMLDetailsElement, Close>();
  const drop = (fold: HTMLDetailsElement) => {
    const close = folds.get(fold);
    if (close) forget(close);
    folds.delete(fold);
  };
  page.addEventListener(
    'toggle',
    ({ target: fold }) => {
      if (!(fold instanceof HTMLDetailsElement)) return;
      // Folds that left the page with their step are no longer open.
      for (const one of folds.keys()) if (one === fold || !one.isConnected) drop(one);
      const summary = fold.querySelector('summary');
      if (!fold.open || page.activeElement !== summary) return;
      const close = () => {
        drop(fold);
        if (!fold.isConnected) return void closeLast();
        fold.open = false;
        summary?.focus();
      };
      folds.set(fold, close);
      opened.push(close);
    },
    true,
  );
}
