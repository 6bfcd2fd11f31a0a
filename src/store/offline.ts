// Keeps the built tool in the browser for work without a network; says when a newer one is ready, and never changes what is open.

/**
 * Starts keeping the tool once the page is at rest. `onNewer` hears that a newer version is kept; it opens when all pages of this
 * one are closed. Browser only; where the browser keeps nothing the tool works on, with a network.
 */
export function keepOffline(onNewer: () => void): void {
  if (!('serviceWorker' in navigator)) return;
  const start = async () => {
    try {
      const kept = await navigator.serviceWorker.register('./sw.js', { updateViaCache: 'none' });
      if (kept.waiting && navigator.serviceWorker.controller) onNewer();
      kept.addEventListener('updatefound', () => tellWhenKept(kept.installing, onNewer));
    } catch {
      // A private window, or a page from a file: nothing can be kept, and nothing is lost by it.
    }
  };
  if (document.readyState === 'complete') void start();
  else window.addEventListener('load', () => void start(), { once: true });
}

function tellWhenKept(coming: ServiceWorker | null, onNewer: () => void): void {
  coming?.addEventListener('statechange', () => {
    // Without one before, this is the first that is kept: no news.
    if (coming.state === 'installed' && navigator.serviceWorker.controller) onNewer();
  });
}
