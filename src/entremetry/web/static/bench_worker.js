// Keeps the bench of one plan, so that it opens without the network. Its scope is that page alone;
// the other pages have a worker of their own. BENCH, FILES and VERSION stand above, and what both share.

const PREFIX = `entremetry${BENCH}@`;
const CACHE = PREFIX + VERSION;
const PATIENCE = 4000; // ms until the kept answer is given in place of a slow one

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) => filled(cache, FILES)).then(() => self.skipWaiting()));
});

self.addEventListener("activate", (event) => {
  event.waitUntil(emptied().then(() => self.clients.claim()));
});

self.addEventListener("fetch", (event) => {
  if (!asks(event.request)) return;
  const url = new URL(event.request.url);
  if (isForGood(url)) event.respondWith(caches.open(CACHE).then((cache) => keptFirst(event, cache)));
  else if (FILES.includes(url.pathname)) event.respondWith(benchOfNow(event));
});

// The page tells from the mark of a kept answer that it is the last one, not one of now.
async function benchOfNow(event) {
  return freshFirst(event, await caches.open(CACHE), PATIENCE, keep, (answer) => answer.status < 500);
}

async function emptied() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)));
}
