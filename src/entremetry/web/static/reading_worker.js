// Keeps the pages that were read, so that they can be read again when the workbench does not answer.
// What changes something always goes to the workbench. FILES and WORDS stand above, and what is shared.

const PAGES = "entremetry/pages";
const STATIC = "entremetry/files";
const LIST = "/worker/pages"; // what a cook reads: addresses, each with a state
const NOTHING = "/worker/nothing-kept";
const PATIENCE = 8000; // ms until the kept page is given in place of a slow one
const MOST_PAGES = 150;
const MOST_FILES = 200;
const REST = 900_000; // ms between looks at the list
const PAUSE = 2000; // ms between questions for a page that is being worked out
const MOST_ASKED = 60;
const TITLE = "X-Title";
const NO_READING = /^\/(backup|safe|new|worker|static|plans\/new|plans\/making|kitchen\/walk)(\/|$)|\/(edit|build|publish|progress|anew|bench)(\/|$)|\.\w+$/;

let reading = false;

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(STATIC).then((cache) => filled(cache, [...FILES, NOTHING])).then(() => self.skipWaiting()));
});

self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  if (!asks(event.request)) return;
  const url = new URL(event.request.url);
  if (isForGood(url)) event.respondWith(caches.open(STATIC).then((cache) => keptFirst(event, cache)));
  else if (isPage(event.request)) event.respondWith(pageFor(event, !NO_READING.test(url.pathname)));
  else if (isPart(event.request) && !NO_READING.test(url.pathname)) event.respondWith(partFor(event));
});

self.addEventListener("message", (event) => {
  if (!event.data.reading || reading) return;
  reading = true;
  event.waitUntil(read(event.data.reading).catch(() => null).then(() => { reading = false; }));
});

const isPage = (request) => request.mode === "navigate" && request.destination === "document";
const isPart = (request) => request.headers.has("HX-Request");

async function pageFor(event, readable) {
  const cache = await caches.open(PAGES);
  try {
    const found = readable ? await freshFirst(event, cache, PATIENCE, keepPage, () => true) : await fetch(event.request);
    return found.headers.has(KEPT) ? await asKept(found) : found;
  } catch {
    return nothingKept(cache);
  }
}

// A part without a page of its own says by its mark that it was kept.
async function partFor(event) {
  const found = await freshFirst(event, await caches.open(PAGES), PATIENCE, keepPage, () => true);
  if (!found.headers.has(KEPT)) return found;
  const headers = new Headers(found.headers);
  headers.set("X-Words", encodeURIComponent(keptWords(found)));
  return new Response(found.body, { headers });
}

/** Keep a page with its title; the oldest goes. A page that is still being worked out is none. */
async function keepPage(cache, request, answer) {
  if (answer.status !== 200 || !answer.headers.get("Content-Type")?.startsWith("text/html")) return;
  const [, title = ""] = /^<!doctype[^]*?<title>([^<]*)/i.exec(await answer.clone().text()) || [];
  await keep(cache, request, answer, { [TITLE]: encodeURIComponent(title.split(" · ")[0].trim()) });
  await trimmed(cache, MOST_PAGES);
  await trimmed(await caches.open(STATIC), MOST_FILES);
}

async function trimmed(cache, most) {
  const oldest = (await cache.keys()).slice(0, -most);
  await Promise.all(oldest.map((request) => cache.delete(request)));
}

/** Fetch what a cook reads, one after another, as far as it changed since it was kept. */
async function read(here) {
  const cache = await caches.open(PAGES);
  const last = await cache.match(LIST);
  if (last && Date.now() - Date.parse(last.headers.get(KEPT)) < REST) return;
  const listed = await (await fetch(LIST)).json();
  const same = new Set(last && (await last.json()).map((entry) => JSON.stringify(entry)));
  const kept = [];
  for (const entry of [{ address: here }, ...listed]) {
    const request = new Request(entry.address, entry.part ? { headers: { "HX-Request": "true" } } : {});
    if (NO_READING.test(new URL(request.url).pathname)) continue;
    if (!same.has(JSON.stringify(entry)) || !(await cache.match(request))) await keepPage(cache, request, await ready(request));
    if (await cache.match(request)) kept.push(entry);
  }
  await keep(cache, LIST, new Response(JSON.stringify(kept)));
}

/** What a request gives once it is worked out, or what it gave last. */
async function ready(request) {
  let answer = await fetch(request.clone());
  for (let asked = 1; answer.status === 202 && asked < MOST_ASKED; asked += 1) {
    await new Promise((resolve) => { setTimeout(resolve, PAUSE); });
    answer = await fetch(request.clone());
  }
  return answer;
}

async function asKept(answer) {
  return withWords(answer, 200, keptWords(answer), "");
}

async function nothingKept(cache) {
  const page = await (await caches.open(STATIC)).match(NOTHING);
  const links = new Map(); // of each page the one that was kept last
  for (const request of (await cache.keys()).reverse()) {
    const title = decodeURIComponent((await cache.match(request)).headers.get(TITLE) || "");
    const { pathname, search } = new URL(request.url);
    if (!title || links.has(pathname)) continue;
    const words = pathname.endsWith("/page") ? `${title}: ${WORDS.recipe}` : title;
    links.set(pathname, `<li><a href="${(pathname + search).replaceAll("&", "&amp;")}">${words}</a></li>`);
  }
  return withWords(page, 503, WORDS.silent, [...links.values()].join("\n"));
}

/** A page that says before anything else that it was kept, and lists what else is. */
async function withWords(page, status, words, links) {
  const headers = new Headers(page.headers);
  headers.delete("Content-Length");
  const banner = `<aside id="kept" class="kept" data-needs="${WORDS.needs}"><p role="status">${words}</p><a class="button quiet" href="">${WORDS.again}</a></aside>`;
  const html = (await page.text()).replace("<main", () => `${banner}<main`).replace("<!-- kept -->", () => links);
  return new Response(html, { status, headers });
}

function keptWords(answer) {
  const when = new Date(answer.headers.get(KEPT));
  const today = when.toDateString() === new Date().toDateString();
  const day = today ? {} : { day: "numeric", month: "long" };
  const time = when.toLocaleString(WORDS.language, { ...day, hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
  return WORDS.kept.replace("{time}", time);
}
