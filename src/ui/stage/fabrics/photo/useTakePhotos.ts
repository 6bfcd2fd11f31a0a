// Photographs that are dropped onto the large area, pasted, or chosen: the work on them comes onto the large area. Its code is fetched then.
import { useCallback, useEffect } from 'react';
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
  return useCallback(
    (files) => {
      if (files.length === 0) return;
      openPhotos(store);
      void import('../../../../store/photo/sitting').then(({ sittingOf }) => sittingOf(store).take(files));
    },
    [store],
  );
}

/** While it is on show: pictures dropped onto the large area, or pasted, are taken. */
export function usePhotoDrop(): void {
  const take = useTakePhotos();
  useEffect(() => {
    const dropped = (event: DragEvent) => {
      const over = event.target instanceof Element && event.target.closest('.large-area') !== null;
      if (!over || !event.dataTransfer?.types.includes('Files')) return;
      event.preventDefault();
      if (event.type === 'drop') take([...event.dataTransfer.files]);
    };
    const pasted = (event: ClipboardEvent) => {
      const files = [...(event.clipboardData?.files ?? [])];
      if (files.length === 0) return;
      event.preventDefault();
      take(files);
    };
    document.addEventListener('dragover', dropped);
    document.addEventListener('drop', dropped);
    document.addEventListener('paste', pasted);
    return () => {
      document.removeEventListener('dragover', dropped);
      document.removeEventListener('drop', dropped);
      document.removeEventListener('paste', pasted);
    };
  }, [take]);
}
