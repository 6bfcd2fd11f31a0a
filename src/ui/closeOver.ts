// What lies over the page: dialogs, menus, and the wall made large. The Back key closes it, as Escape does.
import type { AppStore } from '../store/app';

/** Closes what lies over the page; false where nothing does. */
export function closeOver(page: Document, app: AppStore): boolean {
  const over = [...page.querySelectorAll('[role="dialog"], [role="listbox"], [role="menu"]')].at(-1);
  if (over) {
    const within = over.contains(page.activeElement) ? page.activeElement : over;
    within?.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true, cancelable: true }));
    return true;
  }
  if (!app.getState().wallLarge) return false;
  app.getState().enlargeWall(false);
  return true;
}
