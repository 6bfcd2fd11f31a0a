// Stops presses of buttons while a field near them is refused (aria-invalid), and moves the focus to that field, so that it is
// read out. All forms use it. Buttons with data-always (leave, close) always act.
import type { MouseEvent } from 'react';

const FORMS = '[data-form], section, form, li, details, .stack';

/** The handler for onClickCapture of a panel. `from`: the part a button belongs to where it stands elsewhere, as in the foot. */
export function heedRefusedFields(event: MouseEvent, from?: Element | null): void {
  const button = (event.target as Element).closest('button.button');
  if (!button || button.matches('.bare, [data-always], [aria-expanded]')) return;
  const refused = refusedNear(from ?? button);
  if (!refused) return;
  event.preventDefault();
  event.stopPropagation();
  refused.focus();
}

/**
 * The refused field nearest to the button, in the same fold or part of the panel. It ignores a field that a closed fold hides:
 * that could not get the focus, and the button would seem to do nothing.
 */
function refusedNear(button: Element): HTMLElement | null {
  // The main action of a step, in its foot, is about all of the panel.
  if (button.matches('.step-foot .solid')) return refusedIn(button.closest('.panel'));
  for (let part = button.parentElement?.closest(FORMS); part; part = part.parentElement?.closest(FORMS)) {
    const refused = refusedIn(part);
    if (refused) return refused;
    if (part.matches('section, .fold')) return null;
  }
  return null;
}

function refusedIn(part: Element | null): HTMLElement | null {
  const refused = part?.querySelectorAll<HTMLElement>('[aria-invalid="true"]') ?? [];
  return [...refused].find((field) => !field.closest('details:not([open])')) ?? null;
}
