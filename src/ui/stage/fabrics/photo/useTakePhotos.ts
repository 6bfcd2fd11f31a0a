// Photographs that are dropped onto the large area, pasted, or chosen: the work on them comes onto the large area. Its code is fetched then.
import { type DragEvent, useCallback, useEffect } from 'react';
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

/** Handlers for the area onto which files are dropped; while it is on show, a pasted picture is taken too. */
export function usePhotoDrop() {
  const take = useTakePhotos();
  useEffect(() => {
    const pasted = (event: ClipboardEvent) => {
      const files = [...(event.clipboardData?.files ?? [])];
      if (files.length === 0) return;
      event.preventDefault();
      take(files);
    };
    document.addEventListener('paste', pasted);
    return () => document.removeEventListener('paste', pasted);
  }, [take]);
  return {
    onDragOver: (event: DragEvent) => {
      if (event.dataTransfer.types.includes('Files')) event.preventDefault();
    },
    onDrop: (event: DragEvent) => {
      if (!event.dataTransfer.types.includes('Files')) return;
      event.preventDefault();
      take([...event.dataTransfer.files]);
    },
  };
}
