// The parts of the screen in their order, and how keys go from one to the next.

/** What can have the focus and is reached by Tab; not the links that only lead on. */
const FOCUSABLE =
  ':is(button, a[href], input, select, textarea, summary, [tabindex]):not([tabindex="-1"], [hidden], .skip-links > *)';

/** Each part, and where the focus enters it; without a place it enters at its first control. */
const PARTS: readonly { readonly part: string; readonly enter?: string }[] = [
  { part: '.top-bar' },
  { part: '.selvedge', enter: '[aria-current]' },
  { part: '.panel', enter: 'h2' },
  { part: '.large-area > .work' },
  { part: '.wall-area', enter: '[data-cell][tabindex="0"]' },
  { part: '.value-strip' },
];

/** Whether an element can be given the focus now. */
export function usable(control: Element): boolean {
  return (
    control.isConnected &&
    !control.matches(':disabled') &&
    control.closest('[inert]') === null &&
    control.checkVisibility({ visibilityProperty: true })
  );
}

/** The first control of a part that can be used, the part itself among them. */
export function firstUsable(part: Element): HTMLElement | null {
  const all = [part, ...part.querySelectorAll(FOCUSABLE)].filter((one) => one.matches(FOCUSABLE));
  return (all.find(usable) as HTMLElement | undefined) ?? null;
}

/** Moves the focus from the part that has it to the next one (by 1), or the one before (by -1). Parts that are not there are left out. */
export function goOn(page: Document, by: 1 | -1): void {
  const at = PARTS.findIndex(({ part }) => page.activeElement?.closest(part));
  const from = at < 0 && by < 0 ? 0 : at;
  for (let step = 1; step <= PARTS.length; step++) {
    const to = (from + by * step + PARTS.length * 2) % PARTS.length;
    const entry = entryOf(page, PARTS[to]!);
    if (!entry) continue;
    entry.focus();
    return;
  }
}

function entryOf(page: Document, { part, enter }: (typeof PARTS)[number]): HTMLElement | null {
  const element = page.querySelector(part);
  if (!element) return null;
  const entry = enter === undefined ? null : element.querySelector<HTMLElement>(enter);
  return entry && usable(entry) ? entry : firstUsable(element);
}
