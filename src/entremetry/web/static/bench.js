"use strict";

// The bench: the step now, the next, the waits. What is tapped is kept here first, then sent.

import { stayAwake } from "./bench_awake.js";
import { fetched, forget, keep, newKey, send, waiting } from "./bench_keeping.js";
import { chime, isOn, turnOff, turnOn } from "./bench_sound.js";
import { lastTap, stateAt, timerKey } from "./bench_state.js";
import { drawClock, drawNow, drawSide, drawTimes, mainTold, partners } from "./bench_view.js";
import { clock, counted, lasting, named, words } from "./bench_words.js";

const BENCH = document.body.dataset.bench;
const TOKEN = document.body.dataset.token;
const MINUTE = 60_000;
const LISTEN = 15_000; // ms between looks at the workbench
const CHIME = 15_000; // ms between chimes while nobody heard
const TWICE = 600; // ms in which a second tap on a button that has changed is no answer
const SAID = ["begun", "left", "done", "again", "takes"];
const byId = (id) => document.getElementById(id);

let plan = null;
let pending = []; // told here, and not known to be with the workbench
let fresh = false; // whether the workbench answered last time
let refused = "";
let keepable = true; // whether this device can keep entries
let syncing = Promise.resolve();
let lastChime = 0;
let lastTapped = 0;
let drawn = "";
const announced = new Set();
const heard = new Set(JSON.parse(localStorage.getItem(`${BENCH} heard`) || "[]"));

function told() {
  const known = new Set(plan.told.map((entry) => entry.key));
  return [...plan.told, ...pending.filter((entry) => !known.has(entry.key))];
}

// Drawing: all of it when something changed, else the times alone.

function draw() {
  drawClock(Date.now(), plan?.zone);
  drawConnection();
  if (!plan) return;
  const now = Date.now();
  const found = stateAt(plan, told(), now);
  const looks = JSON.stringify([found.tasks, found.held, [...heard], Math.floor(now / MINUTE)]);
  if (looks !== drawn) {
    drawn = looks;
    byId("main").hidden = false;
    drawNow(found, plan, now);
    drawSide(found, plan, now, heard, lastTold(found));
  }
  drawTimes(found, plan, now);
  ringFor(found.timers.filter((task) => task.over && !heard.has(timerKey(task))));
}

function drawConnection() {
  const wait = pending.filter((entry) => !entry.refused && !entry.sent).length;
  const all = [
    words(fresh ? "connected" : "cut_off"),
    wait ? counted("entries", wait) : words("all_kept"),
    plan ? "" : words("never_opened"),
    refused ? words("refused", { status: refused }) : "",
    keepable ? "" : words("not_kept"),
  ].filter(Boolean).join(" ");
  if (byId("connection").textContent !== all) byId("connection").textContent = all;
  byId("connection").className = fresh && !refused && keepable ? "" : "cut-off";
}

function lastTold(found) {
  const entries = lastTap(told());
  const names = entries.map((entry) => found.tasks.find((task) => task.id === entry.task)).filter(Boolean).map(named);
  if (!names.length) return { words: "", entries: [] };
  const hour = clock(Date.parse(entries[0].at), plan.zone);
  return { words: words("told_last", { hour, steps: names.join(", "), state: words(`told_${entries[0].what}`) }), entries };
}

function ringFor(over) {
  const first = over.filter((task) => !announced.has(timerKey(task)));
  for (const task of first) announced.add(timerKey(task));
  if (first.length) say(words("timer_over", { steps: first.map(named).join(", ") }));
  if (over.length && (first.length || Date.now() - lastChime >= CHIME)) {
    lastChime = Date.now();
    chime();
  }
}

function say(text) {
  byId("said").textContent = text;
}

// Telling: kept on this device before anything else happens.

async function tell(what, tasks, minutes = () => 0) {
  const at = new Date(Date.now()).toISOString();
  const entries = tasks.map((task) => ({ key: newKey(), plan: BENCH, what, task: task ? task.id : "", minutes: minutes(task), at }));
  pending.push(...entries);
  draw();
  if (SAID.includes(what)) say(words("told_now", { steps: tasks.map(named).join(", "), state: words(`told_${what}`) }));
  await Promise.all(entries.map(keep)).catch(() => { keepable = false; });
  sync();
}

function stepNow() {
  const found = stateAt(plan, told(), Date.now());
  return found.now ? { found, task: found.now, all: [found.now, ...partners(found.now, found)] } : null;
}

const longer = (more) => (task) => Math.round(Math.max(task.lasts, (Date.now() - task.started) / MINUTE)) + more;

function late(more) {
  const { found, task, all } = stepNow();
  if (task.state !== "to come") return tell("takes", all, longer(more));
  const from = Math.max(Date.now(), found.held, task.planned);
  say(words("you_later", { time: lasting(more) }));
  return tell("held", [null], () => Math.ceil((from - Date.now()) / MINUTE) + more);
}

async function takeBack() {
  const found = stateAt(plan, told(), Date.now());
  const tasks = lastTap(told()).map((entry) => found.tasks.find((task) => task.id === entry.task)).filter(Boolean);
  await tell("not yet", tasks);
  say(words("taken_back", { steps: tasks.map(named).join(", ") }));
}

function hear(key) {
  heard.add(key);
  localStorage.setItem(`${BENCH} heard`, JSON.stringify([...heard].slice(-200)));
  draw();
}

// Sending: one entry after another, forgotten only when the workbench shows that it has them.

function sync() {
  syncing = syncing.then(exchange, exchange);
  return syncing;
}

async function exchange() {
  for (const entry of pending.filter((each) => !each.sent && !each.refused)) {
    const answer = await send(`${BENCH}/entries`, TOKEN, entry);
    if (answer === "unreachable") break;
    if (answer === "sent") entry.sent = true;
    else refused = entry.refused = answer;
  }
  await refresh();
}

async function refresh() {
  const found = await fetched(`${BENCH}/data`);
  fresh = found !== null && found.fresh;
  if (found && (fresh || !plan)) {
    if (plan && plan.made_at !== found.plan.made_at) say(words("made_anew"));
    plan = found.plan;
  }
  if (fresh) {
    const kept = pending.filter((entry) => entry.sent);
    pending = pending.filter((entry) => !entry.sent);
    await Promise.all(kept.map((entry) => forget(entry.key))).catch(() => { keepable = false; });
  }
  draw();
}

// Hands.

function tapped() {
  const once = Date.now() - lastTapped >= TWICE;
  if (once) lastTapped = Date.now();
  return once;
}

byId("main-knob").addEventListener("click", () => {
  const { task, all } = stepNow();
  if (tapped()) tell(mainTold(task), all);
});
byId("done-knob").addEventListener("click", () => { if (tapped()) tell("done", stepNow().all); });
byId("back-knob").addEventListener("click", takeBack);
for (const button of document.querySelectorAll("[data-late]")) {
  button.addEventListener("click", () => late(Number(button.dataset.late)));
}

byId("timers").addEventListener("click", (event) => {
  const button = event.target.closest("[data-does]");
  if (!button) return;
  const found = stateAt(plan, told(), Date.now());
  const task = found.timers.find((each) => each.id === button.dataset.task);
  if (!task) return;
  const all = [task, ...partners(task, found)];
  if (button.dataset.does === "hear") hear(timerKey(task));
  if (button.dataset.does === "longer") tell("takes", all, longer(5));
  if (button.dataset.does === "done") tell("done", all);
});

byId("problem-knob").addEventListener("click", () => {
  const { task } = stepNow();
  byId("problem-step").textContent = `${named(task)}: ${task.text}`;
  byId("problem").dataset.task = task.id;
  byId("problem").showModal();
});
byId("problem").addEventListener("click", (event) => {
  const button = event.target.closest("[data-problem]");
  if (!button) return;
  byId("problem").close();
  const found = stateAt(plan, told(), Date.now());
  const task = found.tasks.find((each) => each.id === byId("problem").dataset.task);
  if (button.dataset.problem === "again") tell("again", [task]);
  if (button.dataset.problem === "longer") tell("takes", [task], longer(Number(button.dataset.minutes)));
});

byId("sound").addEventListener("click", async () => {
  await (isOn() ? turnOff() : turnOn());
  byId("sound").setAttribute("aria-pressed", String(isOn()));
  byId("sound").textContent = words(isOn() ? "sound_on" : "sound_off");
});

async function awake() {
  const kept = await stayAwake();
  byId("awake").textContent = words(kept ? "screen_on" : "screen_off");
}

async function open() {
  pending = await waiting(BENCH).catch(() => { keepable = false; return []; });
  await sync();
  setInterval(draw, 1000);
  setInterval(sync, LISTEN);
  for (const name of ["online", "offline"]) window.addEventListener(name, sync);
  document.addEventListener("visibilitychange", () => { if (!document.hidden) { awake(); sync(); } });
  document.addEventListener("click", awake, { once: true });
  await awake();
}

navigator.serviceWorker?.register(`${BENCH}/worker.js`, { scope: BENCH });
open();
