// Keeps every file of the built page, so that the workbench opens with no network at all.
// Own files only; nothing from another host is ever asked for.
const FILES = __FILES__;
const SHELF = 'pintrue-__MARK__';

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(SHELF)
      .then((shelf) => shelf.addAll(FILES))
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(
          names.filter((n) => n.startsWith('pintrue-') && n !== SHELF).map((n) => caches.delete(n)),
        ),
      )
      .then(() => self.clients.claim()),
  );
});

self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== self.location.origin) return;
  event.respondWith(
    caches.open(SHELF).then(async (shelf) => {
      const kept = await shelf.match(event.request, { ignoreSearch: true });
      if (kept) return kept;
      if (event.request.mode === 'navigate') return (await shelf.match('./')) ?? fetch(event.request);
      return fetch(event.request);
    }),
  );
});
