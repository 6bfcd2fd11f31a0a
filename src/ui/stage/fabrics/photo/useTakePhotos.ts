// Photographs that are dropped onto the large area, pasted, or chosen: the work on them comes onto the large area. Its code is fetched then.
import { useCallback, useEffect } from 'react';
import { useAppStore } from '../../../app';

/** Takes files in; the work on photographs opens. */
export function useTakePhotos(): (files: readonly File[]) => void {
  const store = useAppStore();
  return useCallback(
    (files) => {
      if (files.length === 0) return;
      store.getState().lay({ photos: true });
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
