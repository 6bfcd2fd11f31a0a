// Photographs that are dropped onto the large area, pasted, or chosen: the work on them comes onto the large area. Its code is fetched then.
import type { AppStore } from '../../../../store/app';
import { useAppStore } from '../../../app';

/** Lays the work on photographs on the large area, unfolded where it was folded away. */
export function openPhotos(store: AppStore): void {
  store.getState().fold('fabrics', false);
  store.getState().lay({ photos: true });
}

/** Takes files in; the work on photographs opens. */
export function useTakePhotos(): (files: readonly File[]) => void {
  const store = useAppStore();
  return (files) => {
    openPhotos(store);
    void import('../../../../store/photo/sitting').then(({ sittingOf }) => sittingOf(store).take(files));
  };
}
