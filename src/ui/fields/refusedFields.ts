// A button never acts on a field that was refused: its press is stopped, and the field gets the focus and is read out.
// One place for all forms; a field tells by aria-invalid. A button with data-always (leaving, closing) is let through.
import type { MouseEvent } from 'react';

const FORMS = '[data-form], section, form, li, details, .stack';

/** For onClickCapture of a panel. */
export function heedRefusedFields(event: MouseEvent): void {
  const button = (event.target as Element).closest('button.button');
  if (!button || button.matches('.bare, [data-always], [aria-expanded]')) return;
  const refused = refusedBeside(button);
  if (!refused) return;
  event.preventDefault();
  event.stopPropagation();
  refused.focus();
}

/**
 * The refused field nearest to the button, in the fold or the part of the panel the button stands in. One that a fold hides is
 * passed over: it could not get the focus, and the button would seem to do nothing.
 */
function refusedBeside(button: Element): HTMLElement | null {
  for (let part = button.parentElement?.closest(FORMS); part; part = part.parentElement?.closest(FORMS)) {
    const refused = [...part.querySelectorAll<HTMLElement>('[aria-invalid="true"]')].find(
      (field) => !field.closest('details:not([open])'),
    );
    if (refused) return refused;
    if (part.matches('section, .fold')) return null;
  }
  return null;
}
