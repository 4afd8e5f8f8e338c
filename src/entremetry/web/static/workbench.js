"use strict";

// Steppers: plus and minus beside a number, in the bounds the field itself states.
document.addEventListener("click", (event) => {
  const button = event.target.closest("[data-step]");
  if (!button) return;
  const field = document.getElementById(button.dataset.for);
  const wanted = (parseInt(field.value, 10) || 0) + Number(button.dataset.step);
  field.value = Math.min(Number(field.max), Math.max(Number(field.min), wanted));
  field.dispatchEvent(new Event("change", { bubbles: true }));
});

// A fault's button takes the reader to its line in the text.
document.addEventListener("click", (event) => {
  const button = event.target.closest(".to-line");
  const area = button && document.getElementById(button.dataset.area);
  if (!area) return;
  const lines = area.value.split("\n");
  const line = Math.min(Number(button.dataset.line), lines.length) - 1;
  const start = lines.slice(0, line).reduce((sum, text) => sum + text.length + 1, 0);
  area.focus();
  area.setSelectionRange(start, start + lines[line].length);
  area.scrollTop = Math.max(0, (line - 4) * parseFloat(getComputedStyle(area).lineHeight));
});

// Fields that follow another field of the page.
document.addEventListener("change", (event) => {
  for (const follower of document.querySelectorAll(`[data-follows="${event.target.name}"]`)) {
    follower.value = event.target.value;
  }
});

// The address tells the choice, so that it can be reloaded, kept and printed.
document.addEventListener("htmx:afterSwap", (event) => {
  const form = document.getElementById("choices");
  if (!form || event.detail.target.id !== "sheet") return;
  const choices = new URLSearchParams(new FormData(form));
  history.replaceState(history.state, "", `${form.getAttribute("action")}?${choices}`);
});

// What is open in the checks stays open when they come again.
document.addEventListener("htmx:beforeSwap", ({ detail: { target } }) => {
  if (target.id === "checks") target.toggleAttribute("data-opened", target.querySelector(".checks-fine[open]") !== null);
});
document.addEventListener("htmx:afterSettle", ({ detail: { target } }) => {
  if (target.id === "checks" && target.hasAttribute("data-opened")) target.querySelector(".checks-fine")?.setAttribute("open", "");
});

// Nothing typed is lost by leaving the page unawares.
for (const form of document.querySelectorAll("form[data-guard]")) {
  let touched = form.dataset.guard === "unsaved";
  form.addEventListener("input", () => { touched = true; });
  form.addEventListener("submit", () => { touched = false; });
  window.addEventListener("beforeunload", (event) => { if (touched) event.preventDefault(); });
}

// What went wrong is read first.
document.querySelector("[data-first]")?.focus();

// A request that fails is told where the answer would have been.
for (const name of ["htmx:sendError", "htmx:responseError", "htmx:timeout"]) {
  document.addEventListener(name, () => {
    const status = document.getElementById("status");
    if (status) status.textContent = document.body.dataset.noAnswer;
  });
}
