// Keeps the bench of one plan, so that it opens without the network. Its scope is that page alone;
// every other page of the workbench is asked for as ever. BENCH, FILES and VERSION stand above.
"use strict";

const PREFIX = `entremetry${BENCH}@`;
const CACHE = PREFIX + VERSION;
const PATIENCE = 4000; // ms until the kept answer is given in place of a slow one

self.addEventListener("install", (event) => {
  event.waitUntil(filled().then(() => self.skipWaiting()));
});

self.addEventListener("activate", (event) => {
  event.waitUntil(emptied().then(() => self.clients.claim()));
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname, searchParams } = new URL(request.url);
  if (request.method !== "GET" || origin !== self.location.origin) return;
  const forGood = pathname.startsWith("/static/") && (searchParams.has("v") || pathname.startsWith("/static/vendor/"));
  if (forGood) event.respondWith(keptFirst(request));
  else if (FILES.includes(pathname)) event.respondWith(freshFirst(request));
});

async function filled() {
  const cache = await caches.open(CACHE);
  await cache.addAll(FILES);
}

async function emptied() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)));
}

async function keptFirst(request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(request)) || fresh(request, cache);
}

async function freshFirst(request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request);
  if (!kept) return fresh(request, cache);
  const answer = fresh(request, cache).then((found) => (found.status >= 500 ? null : found), () => null);
  const late = new Promise((resolve) => { setTimeout(resolve, PATIENCE, null); });
  return (await Promise.race([answer, late])) || marked(kept);
}

// The page tells from the mark that this is the last answer, not one of now.
function marked(kept) {
  const headers = new Headers(kept.headers);
  headers.set("X-Kept", "yes");
  return new Response(kept.body, { status: kept.status, headers });
}

async function fresh(request, cache) {
  const answer = await fetch(request);
  if (answer.ok) await cache.put(request, answer.clone());
  return answer;
}
