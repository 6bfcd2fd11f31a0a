// Photographs that are dropped onto the large area, or pasted, while work that takes them lies on it.
import { useEffect, useEffectEvent } from 'react';

/** While it is on show: files dropped onto the large area, and pasted ones, are handed to `onTake`. */
export function usePhotoDrop(onTake: (files: readonly File[]) => void): void {
  const dropped = useEffectEvent((event: DragEvent) => {
    const over = event.target instanceof Element && event.target.closest('.large-area') !== null;
    if (!over || !event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    const files = [...event.dataTransfer.files];
    if (event.type === 'drop' && files.length > 0) onTake(files);
  });
  const pasted = useEffectEvent((event: ClipboardEvent) => {
    const files = [...(event.clipboardData?.files ?? [])];
    if (files.length === 0) return;
    event.preventDefault();
    onTake(files);
  });
  useEffect(() => {
    const drop = (event: DragEvent) => dropped(event);
    const paste = (event: ClipboardEvent) => pasted(event);
    document.addEventListener('dragover', drop);
    document.addEventListener('drop', drop);
    document.addEventListener('paste', paste);
    return () => {
      document.removeEventListener('dragover', drop);
      document.removeEventListener('drop', drop);
      document.removeEventListener('paste', paste);
    };
  }, []);
}
