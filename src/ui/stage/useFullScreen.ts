// The wall that fills the screen: the page fills the window by CSS (shell.css) and, where the browser lets it, the window the screen.
import { useEffect } from 'react';
import { useApp, useAppStore } from '../app';
import { useEscape } from '../useEscape';

/** Whether the wall fills the screen; Escape makes it small again, also the browser's own way out of its full screen. */
export function useFullScreen(): boolean {
  const store = useAppStore();
  const full = useApp((app) => app.wallFull);
  useEscape(() => store.getState().fillScreen(false), full);
  useEffect(() => {
    if (!full) return;
    const page = document.documentElement;
    const left = () => {
      if (!document.fullscreenElement) store.getState().fillScreen(false);
    };
    // Some phones have no full screen, or refuse it: then the window is filled, which is enough.
    void page.requestFullscreen?.().then(
      () => document.addEventListener('fullscreenchange', left),
      () => {},
    );
    return () => {
      document.removeEventListener('fullscreenchange', left);
      if (document.fullscreenElement) void document.exitFullscreen();
    };
  }, [full, store]);
  return full;
}
