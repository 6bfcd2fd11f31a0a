// The page is reloaded or closed while a field is being typed into: what can be used is taken, as when the field is left.
// What cannot be used would be lost, so the browser is told to ask first.
import { flushSync } from 'react-dom';

/** Listens before the page is left; saving comes after it, at pagehide. */
export function takeTypedOnLeaving(page: Document, view: Pick<Window, 'addEventListener'>): void {
  view.addEventListener('beforeunload', (event) => {
    const field = page.activeElement;
    if (!(field instanceof HTMLInputElement)) return;
    flushSync(() => field.blur());
    if (field.getAttribute('aria-invalid') === 'true') event.preventDefault();
  });
}
