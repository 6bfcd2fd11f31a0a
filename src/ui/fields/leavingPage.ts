// Takes the text of a field when the page is reloaded or closed while a person types, as when the field is left. A text that is
// refused would be lost, so the browser then asks before it leaves the page.
import { flushSync } from 'react-dom';

/** Leaves the field that is typed into, which takes its text, and returns it; null where none is. */
export function leaveField(page: Document): HTMLInputElement | null {
  const field = page.activeElement;
  if (!(field instanceof HTMLInputElement)) return null;
  flushSync(() => field.blur());
  return field;
}

/** Listens for beforeunload; saving comes later, at pagehide. */
export function takeTypedOnLeaving(page: Document, view: Pick<Window, 'addEventListener'>): void {
  view.addEventListener('beforeunload', (event) => {
    if (leaveField(page)?.getAttribute('aria-invalid') === 'true') event.preventDefault();
  });
}
