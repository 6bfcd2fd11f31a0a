// Closes the grid of strips, unless a cell holds what was refused: that would be lost, and gets the focus instead.
import type { AppStore } from '../../../../store/app';

export function closeGrid(store: AppStore): void {
  const refused = document.querySelector<HTMLElement>('.strip-grid [aria-invalid="true"]');
  if (refused) {
    refused.focus();
    return;
  }
  store.getState().lay({ strips: false });
  requestAnimationFrame(() => document.querySelector<HTMLElement>('[data-strips-opener]')?.focus());
}
