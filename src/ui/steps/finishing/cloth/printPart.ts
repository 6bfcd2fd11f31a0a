// Prints one part of a panel alone, with all its folds open.

/** Opens every fold of the part, prints it, and closes the folds that were closed. */
export function printPart(part: HTMLElement | null): void {
  if (!part) return;
  const page = document.documentElement;
  const folds = Array.from(part.querySelectorAll<HTMLDetailsElement>('details:not([open], .no-print)'));
  for (const fold of folds) fold.open = true;
  part.setAttribute('data-printed', '');
  page.setAttribute('data-print', 'cloth');
  const restore = () => {
    page.removeAttribute('data-print');
    part.removeAttribute('data-printed');
    for (const fold of folds) fold.open = false;
  };
  globalThis.addEventListener('afterprint', restore, { once: true });
  globalThis.print();
}
