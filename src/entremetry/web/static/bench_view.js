"use strict";

// What the bench shows. Texts are set as text; buttons that stay keep their focus.

import { timerKey } from "./bench_state.js";
import { away, clock, clockFrom, countdown, lasting, named, words } from "./bench_words.js";

const MINUTE = 60_000;
const SOON = 10 * MINUTE;
const byId = (id) => document.getElementById(id);

function made(tag, text = "", className = "") {
  const element = document.createElement(tag);
  element.textContent = text;
  if (className) element.className = className;
  return element;
}

function setText(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

// What the plan says is in the language that it was made in.
function ofPlan(element, plan) {
  element.lang = plan.language;
  return element;
}

export function drawClock(now, zone) {
  setText(byId("clock"), clock(now, zone));
}

/** The step now: what it is, what enters it, and what its big button does. */
export function drawNow(found, plan, now) {
  const task = found.now;
  byId("now-name").hidden = byId("now-amounts").hidden = !task;
  byId("now-when").className = `now-when ${task && task.state === "under way" ? "going" : ""}`;
  setText(byId("now-when"), task ? whenWords(task, found, plan, now) : "");
  if (!task) {
    if (document.querySelector(".now-knobs").contains(document.activeElement)) byId("main").focus();
    const waits = found.timers.length > 0;
    setText(byId("now-text"), waits ? words("rest_waits") : allDone(plan));
    byId("now-others").replaceChildren();
    setText(byId("now-uses"), "");
    document.querySelector(".now-knobs").hidden = true;
    return;
  }
  document.querySelector(".now-knobs").hidden = false;
  setText(byId("now-name"), named(task));
  setText(ofPlan(byId("now-text"), plan), task.text);
  ofPlan(byId("now-amounts"), plan).replaceChildren(...task.amounts.map((amount) => made("li", amount)));
  byId("now-others").replaceChildren(...partners(task, found).map((other) => partner(other, plan)));
  const uses = task.uses.length ? words("takes_up", { uses: task.uses.join(", ") }) : "";
  setText(byId("now-uses"), [words("for_dessert", { dessert: task.dessert_name }), uses].filter(Boolean).join(" "));
  drawKnobs(task);
}

export function partners(task, found) {
  return found.tasks.filter((other) => task.together.includes(other.id) && other.state !== "done");
}

function partner(task, plan) {
  const box = made("div", "", "now-other");
  const amounts = ofPlan(made("ul", "", "now-amounts"), plan);
  const joint = words("one_go", { step: named(task), dessert: task.dessert_name });
  amounts.append(...task.amounts.map((amount) => made("li", amount)));
  box.append(made("p", joint, "now-with"), ofPlan(made("p", task.text), plan), amounts);
  return box;
}

function allDone(plan) {
  if (!plan.tasks.length) return words("nothing_to_do");
  const plates = plan.served.map((each) => words("plate", { name: each.name, hour: clock(Date.parse(each.at), plan.zone) }));
  return words("all_done", { plates: plates.join(", ") });
}

function whenWords(task, found, plan, now) {
  const planned = clockFrom(task.planned, now, plan.zone);
  if (task.failed) return words("again");
  if (task.over) return words("over_since", { hour: clock(task.timer, plan.zone) });
  if (task.state === "under way") return words("under_way", { hour: clock(task.started, plan.zone), time: lasting(task.lasts) });
  if (found.held) return words("begin_again", { hour: clock(found.held, plan.zone) });
  if (task.planned > now + SOON) return words("free", { hour: planned, time: away(task.planned - now) });
  if (!task.hands_on_min) return words("planned", { hour: planned });
  return words("planned_hands", { hour: planned, time: lasting(task.hands_on_min) });
}

/** What the big button tells of a task in this state. */
export function mainTold(task) {
  if (task.state === "to come") return "begun";
  return task.waits && !task.over ? "left" : "done";
}

function drawKnobs(task) {
  const keys = { begun: "begin", left: "leave", done: "done" };
  const tells = mainTold(task);
  setText(byId("main-knob"), words(keys[tells]));
  byId("main-knob").dataset.tells = tells;
  byId("done-knob").hidden = tells === "done";
  setText(byId("late-name"), words(task.state === "to come" ? "later" : "longer"));
}

/** Waits with their times, what comes next, and what was told last. */
export function drawSide(found, plan, now, heard, last) {
  byId("no-timers").hidden = found.timers.length > 0;
  const focused = document.activeElement?.dataset?.focus;
  byId("timers").replaceChildren(...found.timers.map((task) => timer(task, plan, now, heard)));
  if (focused) document.querySelector(`[data-focus="${CSS.escape(focused)}"]`)?.focus();
  const shown = found.next.filter((task) => !found.now || !found.now.together.includes(task.id));
  byId("next").replaceChildren(...shown.map((task) => nextStep(task, plan, now)));
  document.querySelector(".next").hidden = shown.length === 0;
  setText(byId("last"), last.words);
  document.querySelector(".last").hidden = !last.words;
  byId("back-knob").hidden = !last.entries.length;
}

function timer(task, plan, now, heard) {
  const item = made("li", "", task.over ? "timer over" : "timer");
  const left = made("p", "", "timer-left");
  left.dataset.timer = task.id;
  const bar = document.createElement("progress");
  bar.max = Math.max(1, task.timer - task.started);
  bar.dataset.bar = task.id;
  bar.setAttribute("aria-label", words("bar", { step: named(task) }));
  const text = ofPlan(made("p", task.text, "timer-text"), plan);
  const ends = clockFrom(task.timer, now, plan.zone);
  const until = made("p", words(task.over ? "was_over" : "ready", { hour: ends }), "timer-until");
  const knobs = made("div", "", "timer-knobs");
  if (task.over && !heard.has(timerKey(task))) knobs.append(knob(task, "hear", words("heard")));
  knobs.append(knob(task, "longer", words("more", { minutes: 5 })), knob(task, "done", words("done")));
  item.append(left, made("h3", named(task)), text, until, bar, knobs);
  return item;
}

function knob(task, does, text) {
  const button = made("button", text, "knob plain");
  button.type = "button";
  button.dataset.does = does;
  button.dataset.task = task.id;
  button.dataset.focus = `${does} ${task.id}`;
  button.setAttribute("aria-label", words("knob", { does: text, step: named(task) }));
  return button;
}

function nextStep(task, plan, now) {
  const item = made("li");
  item.append(made("span", clockFrom(task.planned, now, plan.zone), "next-time"), made("strong", named(task)), ofPlan(made("span", task.text), plan));
  return item;
}

/** What changes with every second. */
export function drawTimes(found, plan, now) {
  for (const task of found.timers) {
    const left = document.querySelector(`[data-timer="${CSS.escape(task.id)}"]`);
    const bar = document.querySelector(`[data-bar="${CSS.escape(task.id)}"]`);
    if (left) setText(left, task.over ? words("over") : countdown(task.timer - now));
    if (bar) bar.value = Math.min(bar.max, Math.max(0, now - task.started));
  }
  if (found.now) setText(byId("now-when"), whenWords(found.now, found, plan, now));
}
