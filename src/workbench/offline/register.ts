/** Asks the browser to keep the page for use without a network. Silent where that is not possible (file:, old browsers). */
export function keepOffline(): void {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) return;
  window.addEventListener('load', () => {
    navigator.serviceWorker.register('./sw.js').catch(() => {
      // The page works as before, only not without its server; nothing of the person's is at stake.
    });
  });
}
