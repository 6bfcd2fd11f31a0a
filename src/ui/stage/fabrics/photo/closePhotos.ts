// Closes the work on photographs; what is half made stays for the next time.
import type { AppStore } from '../../../../store/app';
import type { Sitting } from '../../../../store/photo/sitting';

export function closePhotos(store: AppStore, sitting: Sitting): void {
  sitting.replace(null);
  store.getState().lay({ photos: false });
  requestAnimationFrame(() => document.querySelector<HTMLElement>('[data-photo-opener]')?.focus());
}
