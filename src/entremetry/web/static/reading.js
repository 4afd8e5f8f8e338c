// Pages that were read can be read again without the workbench; a worker keeps them, and some more.

const SETTLED = 4000; // ms until a page is read and not passed through
const ASK = 5000; // ms between looks whether the workbench is back
const kept = document.getElementById("kept");

if (navigator.serviceWorker && window.isSecureContext) begin();
if (kept) waitForTheWorkbench();

async function begin() {
  try {
    await navigator.serviceWorker.register("/worker.js");
  } catch {
    return; // a browser that keeps nothing: every page is asked for
  }
  const { active } = await navigator.serviceWorker.ready;
  if (!kept) setTimeout(() => active.postMessage({ reading: location.pathname + location.search }), SETTLED);
}

// A kept page changes nothing, and makes way for the page of now.
function waitForTheWorkbench() {
  for (const form of document.querySelectorAll('form[method="post"]')) shut(form);
  setInterval(look, ASK);
  window.addEventListener("online", look);
}

function shut(form) {
  for (const field of form.elements) field.disabled = true;
  if (!form.closest("main")) return;
  const words = document.createElement("p");
  words.className = "hint";
  words.textContent = kept.dataset.needs;
  form.append(words);
}

async function look() {
  const answer = await fetch(location.href, { method: "HEAD", cache: "no-store" }).catch(() => null);
  if (answer && answer.status < 500) location.reload();
}

// A kept part in a page of now says so.
document.addEventListener("htmx:afterRequest", ({ detail }) => {
  const words = detail.xhr.getResponseHeader("X-Words");
  if (!words || kept) return;
  const status = document.getElementById("status") || document.getElementById("main").appendChild(document.createElement("p"));
  status.setAttribute("role", "status");
  status.textContent = decodeURIComponent(words);
});
