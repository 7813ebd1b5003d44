// Keeps the field page on the device, so that it opens without network. What it keeps stands in
// self.KEPT, which the server writes above this line; a changed list is a new worker.
'use strict';

const CACHE = 'loopwright-field-' + self.KEPT.join('|').split('').reduce(
  (hash, letter) => (hash * 31 + letter.charCodeAt(0)) >>> 0, 7).toString(16);

self.addEventListener('install', event => {
  const fresh = self.KEPT.map(address => new Request(address, { cache: 'reload' }));
  event.waitUntil(caches.open(CACHE).then(cache => cache.addAll(fresh)).then(() => self.skipWaiting()));
});

self.addEventListener('activate', event => {
  event.waitUntil(caches.keys()
    .then(names => Promise.all(names
      .filter(name => name.startsWith('loopwright-field-') && name !== CACHE)
      .map(name => caches.delete(name))))
    .then(() => self.clients.claim()));
});

// the page and what belongs to it come from the device first; everything else only from the server
self.addEventListener('fetch', event => {
  const address = new URL(event.request.url);
  if (event.request.method !== 'GET' || address.origin !== self.location.origin) return;
  const key = address.pathname === '/field/' ? '/field/' : address.pathname + address.search;
  if (!self.KEPT.includes(key)) return;
  event.respondWith(caches.open(CACHE)
    .then(cache => cache.match(key))
    .then(kept => kept || fetch(event.request)));
});
