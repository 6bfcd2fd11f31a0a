// Keeps the focus near where it was when the control that had it disappears or can no longer be used: without this it falls to the
// body, and the next Tab begins at the top of the page.
import { firstUsable, usable } from './parts';

/** Milliseconds in which a part that moves the focus itself has done so. */
const SETTLES = 150;
/** A control that is used up is looked for no further than in these. */
const REGIONS = '.panel, .work, .large-area, .top-bar, [role="dialog"]';

/** The control that had the focus, and the elements it stood in, each with its number among its neighbours. */
interface Held {
  readonly control: Element;
  readonly within: readonly { readonly element: Element; readonly at: number }[];
}

/** Watches a page from now on. */
export function keepFocus(page: Document): void {
  let held: Held | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const lost = () => page.activeElement === page.body && held !== null && !usable(held.control);
  const settle = () => {
    timer = undefined;
    if (!held || !lost()) return;
    const next = nearest(page, held);
    next?.focus({ preventScroll: true });
    // No farther than it must: what the person was at stays in sight. The foot that is always there lies where scrolling leaves room for it.
    const foot = next?.closest('.step-foot');
    if (!foot || getComputedStyle(foot).position !== 'sticky') next?.scrollIntoView({ block: 'nearest' });
  };
  page.addEventListener('focusin', ({ target }) => {
    if (target instanceof Element) held = heldBy(target);
  });
  // Who presses beside the control that has the focus has left it. (Pressed itself, it gets no focus anew.)
  page.addEventListener('pointerdown', ({ target }) => {
    if (!(target instanceof Node && held?.control.contains(target))) held = null;
  });
  // A control that is disabled or hidden loses the focus only when the page is drawn, after its change is told here.
  const mayGo = (changes: readonly MutationRecord[]) =>
    page.activeElement === page.body ||
    held?.control.isConnected === false ||
    changes.some(({ type }) => type === 'attributes');
  new MutationObserver((changes) => {
    if (timer === undefined && mayGo(changes)) timer = setTimeout(settle, SETTLES);
  }).observe(page.body, {
    childList: true,
    subtree: true,
    attributeFilter: ['disabled', 'hidden', 'inert', 'open'],
  });
}

function heldBy(control: Element): Held {
  const within: { element: Element; at: number }[] = [];
  for (let one = control; one.parentElement; one = one.parentElement) {
    within.push({ element: one.parentElement, at: [...one.parentElement.children].indexOf(one) });
    if (one.parentElement.matches(REGIONS)) break;
  }
  return { control, within };
}

/** The control that takes the focus over: the same one drawn anew, what can stop the work just begun, or what stands nearest. */
function nearest(page: Document, { control, within }: Held): HTMLElement | null {
  const cell = control.closest('[data-cell]')?.getAttribute('data-cell');
  const again = [
    page.getElementById(control.id),
    page.querySelector<HTMLElement>(`[data-cell="${cell}"]`),
    page.querySelector<HTMLElement>('.step-foot .foot-progress button'),
  ].find((one) => one && usable(one));
  if (again) return again;
  for (const { element, at } of within) {
    if (!element.isConnected) continue;
    const children = [...element.children];
    for (const child of [...children.slice(at), ...children.slice(0, at).reverse()]) {
      const found = firstUsable(child);
      if (found) return found;
    }
  }
  return page.querySelector<HTMLElement>('.panel h2');
}
