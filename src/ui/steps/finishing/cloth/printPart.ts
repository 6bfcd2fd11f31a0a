// Prints one part of a panel alone, with all its folds open.

/** Prints a part alone. */
export function printPart(part: HTMLElement | null): void {
  if (!part) return;
  globalThis.addEventListener('afterprint', layBare(part), { once: true });
  globalThis.print();
}

/** Opens every fold of the part and shows it alone on paper; the function returned closes what was closed. */
export function layBare(part: HTMLElement): () => void {
  const page = document.documentElement;
  const folds = Array.from(part.querySelectorAll<HTMLDetailsElement>('details:not([open], .no-print)'));
  for (const fold of folds) fold.open = true;
  part.setAttribute('data-printed', '');
  page.setAttribute('data-print', 'cloth');
  return () => {
    page.removeAttribute('data-print');
    part.removeAttribute('data-printed');
    for (const fold of folds) fold.open = false;
  };
}
