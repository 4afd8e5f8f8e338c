// What the workers share: answers kept for when the workbench gives none. The server puts this
// before the part of each worker, so that one script is all that a browser has to fetch.
"use strict";

const KEPT = "X-Kept"; // header of a kept answer: when it was kept

/** Whether a request asks this workbench for something, and changes nothing. */
function asks(request) {
  return request.method === "GET" && new URL(request.url).origin === self.location.origin;
}

/** Whether what stands at an address never changes. */
function isForGood({ pathname, searchParams }) {
  return pathname.startsWith("/static/") && (searchParams.has("v") || pathname.startsWith("/static/vendor/"));
}

/** Fetch and keep all of these, or fail. */
async function filled(cache, addresses) {
  await Promise.all(addresses.map(async (address) => {
    const answer = await fetch(address, { cache: "no-cache" });
    if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
    await keep(cache, address, answer);
  }));
}

async function keep(cache, request, answer, more = {}) {
  const headers = new Headers({ ...Object.fromEntries(answer.headers), ...more, [KEPT]: new Date().toISOString() });
  await cache.put(request, new Response(answer.body, { status: answer.status, headers }));
}

async function keptFirst(event, cache) {
  return (await cache.match(event.request)) || fresh(event, cache, keep);
}

/** The answer of now; the kept one if none comes in time. Without either it fails. */
async function freshFirst(event, cache, patience, keeping, counts) {
  const kept = await cache.match(event.request);
  const answer = fresh(event, cache, keeping);
  if (!kept) return answer;
  event.waitUntil(answer.then(() => null, () => null)); // one that comes late is kept all the same
  const late = new Promise((resolve) => { setTimeout(resolve, patience, null); });
  const found = answer.then((given) => (counts(given) ? given : null), () => null);
  return (await Promise.race([found, late])) || kept;
}

async function fresh(event, cache, keeping) {
  const answer = await fetch(event.request);
  if (answer.ok) event.waitUntil(keeping(cache, event.request, answer.clone()));
  return answer;
}
