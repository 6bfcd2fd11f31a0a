// Stops the second press of a double click, so that it does not do two things: where the first press has changed what lies under
// the pointer (other words, another button), and where something would be added twice (data-once). Quick presses of a button that
// does not change (a step up, a turn) all count.
import type { MouseEvent } from 'react';

let pressed = '';

/** The handler for onClickCapture of a panel. Presses by key (detail 0) always count. */
export function heedSecondPress(event: MouseEvent): void {
  const button = (event.target as Element).closest('button');
  const words = button?.textContent ?? '';
  if (event.detail <= 1) pressed = words;
  else if (button && (words !== pressed || button.matches('[data-once]'))) {
    event.preventDefault();
    event.stopPropagation();
  }
}

/**
 * Stops presses of a button whose work is being done (aria-disabled). It keeps the focus meanwhile, which a disabled button would lose.
 */
export function heedBusy(event: MouseEvent): void {
  if (!(event.target as Element).closest('button[aria-disabled="true"]')) return;
  event.preventDefault();
  event.stopPropagation();
}
