// A double click, from habit or a worn mouse, must not do two things. Its second press is put aside where the first one has
// changed what lies under the pointer (other words on the button, another button), and where a thing would be added twice
// (data-once). Quick presses on one button that stays the same (a step up, a turn) all count.
import type { MouseEvent } from 'react';

let pressed = '';

/** For onClickCapture of a panel. Keys are no clicks of a pointer (detail 0) and always count. */
export function heedSecondPress(event: MouseEvent): void {
  const button = (event.target as Element).closest('button');
  const words = button?.textContent ?? '';
  if (event.detail <= 1) pressed = words;
  else if (button && (words !== pressed || button.matches('[data-once]'))) {
    event.preventDefault();
    event.stopPropagation();
  }
}
