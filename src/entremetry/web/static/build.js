"use strict";

// A renewed part keeps what is being typed, and the field it is typed in.
Idiomorph.defaults.ignoreActiveValue = true;

// What was opened to be explained stays open while its number changes.
Idiomorph.defaults.callbacks = {
  ...Idiomorph.defaults.callbacks,
  beforeAttributeUpdated: (name, node) => !(name === "open" && node.matches?.("details.figure")),
};

// The checks are asked again after every change.
document.addEventListener("htmx:afterSwap", (event) => {
  if (event.detail.target.id === "build") document.body.dispatchEvent(new Event("built"));
});

// A knob stands apart from its form; what it says goes along all the same.
document.addEventListener("htmx:configRequest", (event) => {
  const knob = event.detail.triggeringEvent?.submitter;
  if (knob?.name === "knob") event.detail.parameters.knob = knob.value;
});

// Measures on the drawing follow the finger; the field beside them keeps them.
let pulled = null;

function measured(grip, value) {
  const least = Number(grip.getAttribute("aria-valuemin"));
  const most = Number(grip.getAttribute("aria-valuemax"));
  return Math.min(most, Math.max(least, Math.round(value * 2) / 2));
}

// A measure with the page's own decimal sign; a document always has a point.
function said(value) {
  return `${value.toLocaleString(document.documentElement.lang, { useGrouping: false })} mm`;
}

function show(grip, value) {
  const before = Number(grip.dataset.start ?? grip.getAttribute("aria-valuenow"));
  const down = Number(grip.dataset.down) * (value - before) * Number(grip.dataset.unit);
  grip.setAttribute("transform", `translate(0 ${down})`);
  grip.setAttribute("aria-valuetext", said(value));
  grip.querySelector("text").textContent = said(value);
}

function keep(grip, value) {
  const field = document.getElementById(grip.dataset.field);
  if (!field || field.value === `${value} mm`) return;
  field.value = `${value} mm`;
  field.dispatchEvent(new Event("change", { bubbles: true }));
}

document.addEventListener("pointerdown", (event) => {
  const grip = event.target.closest(".grip");
  if (!grip || event.button) return;
  const frame = grip.ownerSVGElement.getScreenCTM();
  pulled = { grip, from: event.clientY, scale: frame.d, value: Number(grip.getAttribute("aria-valuenow")) };
  grip.dataset.start = String(pulled.value);
  grip.classList.add("pulled");
  grip.focus({ preventScroll: true });
  event.preventDefault();
});

document.addEventListener("pointermove", (event) => {
  if (!pulled) return;
  const units = (event.clientY - pulled.from) / pulled.scale;
  const moved = (Number(pulled.grip.dataset.down) * units) / Number(pulled.grip.dataset.unit);
  pulled.now = measured(pulled.grip, pulled.value + moved);
  show(pulled.grip, pulled.now);
});

for (const name of ["pointerup", "pointercancel"]) {
  document.addEventListener(name, () => {
    if (!pulled) return;
    const { grip, now } = pulled;
    pulled = null;
    grip.classList.remove("pulled");
    if (name === "pointerup" && now !== undefined) keep(grip, now);
    else show(grip, Number(grip.dataset.start));
  });
}

// With the keyboard: half a millimetre, or five with the big keys; kept when the hand rests.
const KEYS = { ArrowUp: -1, ArrowDown: 1, PageUp: -10, PageDown: 10 };
let resting = 0;

document.addEventListener("keydown", (event) => {
  const grip = event.target.closest?.(".grip");
  if (!grip || !(event.key in KEYS)) return;
  event.preventDefault();
  grip.dataset.start ??= grip.getAttribute("aria-valuenow");
  const now = Number(grip.dataset.now ?? grip.getAttribute("aria-valuenow"));
  const value = measured(grip, now + (KEYS[event.key] * Number(grip.dataset.down)) / 2);
  grip.dataset.now = String(value);
  show(grip, value);
  clearTimeout(resting);
  resting = setTimeout(() => { delete grip.dataset.now; delete grip.dataset.start; keep(grip, value); }, 700);
});

// Rows are carried by their handle; letting go sends the same form as the arrows do.
let carried = null;

document.addEventListener("pointerdown", (event) => {
  const handle = event.target.closest(".drag");
  if (!handle || event.button) return;
  const row = handle.closest(".place");
  carried = { row, rows: [...row.parentElement.children], from: event.clientY };
  carried.start = carried.rows.indexOf(row);
  carried.to = carried.start;
  row.classList.add("carried");
  event.preventDefault();
});

document.addEventListener("pointermove", (event) => {
  if (!carried) return;
  const { row, rows, start } = carried;
  row.style.translate = `0 ${event.clientY - carried.from}px`;
  const others = rows.filter((each) => each !== row);
  carried.to = others.filter((each) => {
    const box = each.getBoundingClientRect();
    return event.clientY > box.top + box.height / 2;
  }).length;
  rows.forEach((each) => each.classList.remove("drop-here", "drop-below"));
  if (carried.to === start) return;
  const mark = others[Math.min(carried.to, others.length - 1)];
  mark.classList.add(carried.to < others.length ? "drop-here" : "drop-below");
});

for (const name of ["pointerup", "pointercancel"]) {
  document.addEventListener(name, () => {
    if (!carried) return;
    const { row, rows, start, to } = carried;
    carried = null;
    row.style.translate = "";
    row.classList.remove("carried");
    rows.forEach((each) => each.classList.remove("drop-here", "drop-below"));
    const knob = row.querySelector("button[value^=move]");
    if (name !== "pointerup" || to === start || !knob) return;
    knob.value = `move ${to} ${row.dataset.path}`;
    knob.click();
  });
}
