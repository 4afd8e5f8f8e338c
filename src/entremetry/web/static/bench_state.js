"use strict";

// What stands where at a moment: the plan as it was made, and what was told since.
// Times are milliseconds since 1970; nothing here looks at a clock, a page or a network.

const MINUTE = 60_000;

/** Tasks of the plan with what was told of each, at a moment. */
export function stateAt(plan, told, now) {
  const held = heldUntil(told, now);
  const tasks = plan.tasks.map(begun).sort((a, b) => a.planned - b.planned);
  const known = new Map(tasks.map((task) => [task.id, task]));
  for (const entry of inOrder(told)) {
    const task = known.get(entry.task);
    if (task) hear(task, entry);
  }
  for (const task of tasks) settle(task, now);
  const work = tasks.filter((task) => !task.handsFree);
  work.sort((a, b) => b.urgent - a.urgent || a.planned - b.planned);
  return {
    held,
    now: work[0],
    next: work.slice(1, 3),
    timers: tasks.filter((task) => task.timer).sort((a, b) => a.timer - b.timer),
    done: tasks.filter((task) => task.state === "done"),
    tasks,
  };
}

export function inOrder(told) {
  return [...told].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

function heldUntil(told, now) {
  const ends = told
    .filter((entry) => entry.what === "held")
    .map((entry) => Date.parse(entry.at) + entry.minutes * MINUTE);
  const latest = Math.max(0, ...ends);
  return latest > now ? latest : 0;
}

// A task as the plan has it. `lasts`, `before` and `after` are minutes: in all, of the first hands,
// and of the hands that end a wait.
function begun(task) {
  const start = Date.parse(task.start);
  const hands = task.hands.map((one) => ({ start: Date.parse(one.start), end: Date.parse(one.end) }));
  const lasts = (Date.parse(task.end) - start) / MINUTE;
  const before = hands.length ? (hands[0].end - hands[0].start) / MINUTE : 0;
  const last = hands.length > 1 ? hands[hands.length - 1] : null;
  return {
    ...task,
    planned: hands.length ? hands[0].start : start,
    lasts,
    before,
    after: last ? (last.end - last.start) / MINUTE : 0,
    waits: task.waiting_min > 0,
    started: task.state === "to come" ? null : start,
    left: null,
    ended: task.state === "done" ? Date.parse(task.end) : null,
    failed: false,
  };
}

function hear(task, entry) {
  const at = Date.parse(entry.at);
  if (entry.what !== "takes") task.failed = entry.what === "again";
  if (entry.what === "begun") Object.assign(task, { started: at, left: null, ended: null });
  if (entry.what === "left") {
    task.started = task.started ?? at - task.before * MINUTE;
    task.lasts = (at - task.started) / MINUTE + task.lasts - task.before;
    task.left = at;
  }
  if (entry.what === "takes") task.lasts = entry.minutes;
  if (entry.what === "done") {
    task.started = task.started ?? at - task.lasts * MINUTE;
    task.ended = at;
  }
  if (entry.what === "not yet" || entry.what === "again") {
    Object.assign(task, { started: null, left: null, ended: null });
  }
}

// `timer` is the end of a wait that runs, `handsFree` whether nobody is needed by now. A wait that is
// over and ends with hands comes before everything else.
function settle(task, now) {
  const byItself = task.hands.length === 0;
  if (byItself && task.started === null && task.planned <= now) task.started = task.planned;
  task.state = task.ended !== null ? "done" : task.started !== null ? "under way" : "to come";
  const alone = task.left !== null || task.before === 0;
  const runs = task.state === "under way" && task.waits && alone;
  task.timer = runs ? task.started + (task.lasts - task.after) * MINUTE : null;
  task.over = runs && task.timer <= now;
  task.urgent = task.over && task.after > 0;
  task.handsFree = task.state === "done" || byItself || (runs && !task.urgent);
  if (task.state === "under way") task.planned = runs ? task.timer : task.started;
}

/** Name of one run of a timer: another length is another run. */
export function timerKey(task) {
  return `${task.id} ${task.timer}`;
}

/** What is told last and can be taken back: entries of one tap, about tasks. */
export function lastTap(told) {
  const taps = inOrder(told).filter((entry) => entry.what !== "held");
  const last = taps[taps.length - 1];
  if (!last || last.what === "not yet") return [];
  return taps.filter((entry) => entry.at === last.at && entry.what === last.what);
}
