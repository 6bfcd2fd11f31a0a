// Keeps the built tool in the browser, so that it works without a network, and says when a newer version is kept.

/**
 * Keeps the tool once the page has loaded. Calls `onNewer` when a newer version is kept; that version opens when all pages of
 * this one are closed. Browser only; in a browser that keeps nothing, the tool works only with a network.
 */
export function keepOffline(onNewer: () => void): void {
  if (!('serviceWorker' in navigator)) return;
  // Read at once: the first version kept takes over the page, sometimes before it says that it is installed.
  const keptBefore = navigator.serviceWorker.controller !== null;
  const start = async () => {
    try {
      const kept = await navigator.serviceWorker.register('./sw.js', { updateViaCache: 'none' });
      if (!keptBefore) return;
      if (kept.waiting) onNewer();
      kept.addEventListener('updatefound', () => tellWhenKept(kept.installing, onNewer));
    } catch {
      // In a private window, or in a page opened from a file, the browser keeps nothing; the tool still works.
    }
  };
  if (document.readyState === 'complete') void start();
  else window.addEventListener('load', () => void start(), { once: true });
}

function tellWhenKept(coming: ServiceWorker | null, onNewer: () => void): void {
  coming?.addEventListener('statechange', () => {
    if (coming.state === 'installed') onNewer();
  });
}
