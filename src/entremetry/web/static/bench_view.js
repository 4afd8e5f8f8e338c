"use strict";

// What the bench shows. Texts are set as text; buttons that stay keep their focus.

import { timerKey } from "./bench_state.js";
import { away, clock, clockFrom, countdown, lasting, named } from "./bench_words.js";

const MINUTE = 60_000;
const SOON = 10 * MINUTE;
const byId = (id) => document.getElementById(id);

function made(tag, words = "", className = "") {
  const element = document.createElement(tag);
  element.textContent = words;
  if (className) element.className = className;
  return element;
}

function setText(element, words) {
  if (element.textContent !== words) element.textContent = words;
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
    setText(byId("now-text"), waits ? "Nothing for your hands now. The rest waits." : allDone(plan));
    byId("now-others").replaceChildren();
    setText(byId("now-uses"), "");
    document.querySelector(".now-knobs").hidden = true;
    return;
  }
  document.querySelector(".now-knobs").hidden = false;
  setText(byId("now-name"), named(task));
  setText(byId("now-text"), task.text);
  byId("now-amounts").replaceChildren(...task.amounts.map((amount) => made("li", amount)));
  byId("now-others").replaceChildren(...partners(task, found).map(partner));
  const uses = task.uses.length ? `Takes up: ${task.uses.join(", ")}` : "";
  setText(byId("now-uses"), [`For ${task.dessert_name}.`, uses].filter(Boolean).join(" "));
  drawKnobs(task);
}

export function partners(task, found) {
  return found.tasks.filter((other) => task.together.includes(other.id) && other.state !== "done");
}

function partner(task) {
  const box = made("div", "", "now-other");
  const amounts = made("ul", "", "now-amounts");
  amounts.append(...task.amounts.map((amount) => made("li", amount)));
  box.append(made("p", `In one go with ${named(task)}, ${task.dessert_name}`, "now-with"), made("p", task.text), amounts);
  return box;
}

function allDone(plan) {
  if (!plan.tasks.length) return "There is nothing to do in this plan.";
  const plates = plan.served.map((each) => `${each.name} at ${clock(Date.parse(each.at), plan.zone)}`);
  return `All done. Served: ${plates.join(", ")}.`;
}

function whenWords(task, found, plan, now) {
  const planned = clockFrom(task.planned, now, plan.zone);
  if (task.failed) return "Again: it failed before";
  if (task.over) return `Now: its wait is over since ${clock(task.timer, plan.zone)}`;
  if (task.state === "under way") return `Now: under way since ${clock(task.started, plan.zone)}, ${lasting(task.lasts)} in all`;
  if (found.held) return `You begin again at ${clock(found.held, plan.zone)}`;
  if (task.planned > now + SOON) return `Free until ${planned}, in ${away(task.planned - now)}`;
  return `Now: planned for ${planned}${task.hands_on_min ? `, ${lasting(task.hands_on_min)} hands-on` : ""}`;
}

/** What the big button tells of a task in this state. */
export function mainTold(task) {
  if (task.state === "to come") return "begun";
  return task.waits && !task.over ? "left" : "done";
}

function drawKnobs(task) {
  const words = { begun: "Begin", left: "Hands off: it waits", done: "Done" };
  const tells = mainTold(task);
  setText(byId("main-knob"), words[tells]);
  byId("main-knob").dataset.tells = tells;
  byId("done-knob").hidden = tells === "done";
  setText(byId("late-name"), task.state === "to come" ? "I begin later" : "It takes longer");
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
  bar.setAttribute("aria-label", `${named(task)}: how much of the wait is over`);
  const words = made("p", task.text, "timer-text");
  const ends = clockFrom(task.timer, now, plan.zone);
  const until = made("p", task.over ? `It was over at ${ends}` : `Ready at ${ends}`, "timer-until");
  const knobs = made("div", "", "timer-knobs");
  if (task.over && !heard.has(timerKey(task))) knobs.append(knob(task, "hear", "Heard"));
  knobs.append(knob(task, "longer", "+5 min"), knob(task, "done", "Done"));
  item.append(left, made("h3", named(task)), words, until, bar, knobs);
  return item;
}

function knob(task, does, words) {
  const button = made("button", words, "knob plain");
  button.type = "button";
  button.dataset.does = does;
  button.dataset.task = task.id;
  button.dataset.focus = `${does} ${task.id}`;
  button.setAttribute("aria-label", `${words}: ${named(task)}`);
  return button;
}

function nextStep(task, plan, now) {
  const item = made("li");
  item.append(made("span", clockFrom(task.planned, now, plan.zone), "next-time"), made("strong", named(task)), made("span", task.text));
  return item;
}

/** What changes with every second. */
export function drawTimes(found, plan, now) {
  for (const task of found.timers) {
    const left = document.querySelector(`[data-timer="${CSS.escape(task.id)}"]`);
    const bar = document.querySelector(`[data-bar="${CSS.escape(task.id)}"]`);
    if (left) setText(left, task.over ? "Over" : countdown(task.timer - now));
    if (bar) bar.value = Math.min(bar.max, Math.max(0, now - task.started));
  }
  if (found.now) setText(byId("now-when"), whenWords(found.now, found, plan, now));
}
