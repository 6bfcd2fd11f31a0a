// Whether a media query fits the screen, as state.
import { useCallback, useSyncExternalStore } from 'react';

export function useScreen(query: string): boolean {
  const subscribe = useCallback(
    (heard: () => void) => {
      const list = globalThis.matchMedia(query);
      list.addEventListener('change', heard);
      return () => list.removeEventListener('change', heard);
    },
    [query],
  );
  return useSyncExternalStore(subscribe, () => globalThis.matchMedia(query).matches);
}
