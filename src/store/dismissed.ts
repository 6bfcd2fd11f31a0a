// Hints that were dismissed stay away in this browser (localStorage). They are no part of a project.
import { trying } from './storage/trying';

const KEY = 'wedgewall-dismissed';

/** Whether the hint of this name was dismissed. False in a browser that keeps nothing. */
export function isDismissed(hint: string, area: () => Storage): boolean {
  return dismissed(area).includes(hint);
}

/** Dismisses the hint. In a browser that keeps nothing it comes back with the next visit. */
export function dismissHint(hint: string, area: () => Storage): void {
  trying(() => area().setItem(KEY, [...new Set([...dismissed(area), hint])].join(' ')));
}

function dismissed(area: () => Storage): string[] {
  const noted = trying(() => area().getItem(KEY)) ?? '';
  return noted.split(' ').filter((hint) => hint !== '');
}
