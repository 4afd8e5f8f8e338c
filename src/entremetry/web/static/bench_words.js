"use strict";

// Hours, minutes and steps as the bench says them.

const DAY = 86_400_000; // ms
const LANGUAGE = document.documentElement.lang;
const WORDS = JSON.parse(document.body.dataset.words);

/** A message that the page brought along, with its fields filled in. */
export function words(key, fields = {}) {
  return filled(WORDS[key], fields);
}

/** The same for a message for so many of a thing. */
export function counted(key, number) {
  const [one, many] = WORDS[key];
  return filled(new Intl.PluralRules(LANGUAGE).select(number) === "one" ? one : many, { number });
}

function filled(message, fields) {
  return message.replace(/\{(\w+)\}/g, (_, name) => fields[name]);
}

export function clock(moment, zone) {
  return new Intl.DateTimeFormat(LANGUAGE, { timeZone: zone, hour: "2-digit", minute: "2-digit", hourCycle: "h23" }).format(moment);
}

export function day(moment, zone) {
  return new Intl.DateTimeFormat(LANGUAGE, { timeZone: zone, weekday: "long" }).format(moment);
}

/** Hour; after the weekday if that is another one, and with the date if it is not of these days. */
export function clockFrom(moment, seen, zone) {
  if (Math.abs(moment - seen) > 5 * DAY) return `${date(moment, zone)}, ${clock(moment, zone)}`;
  const other = day(moment, zone) !== day(seen, zone);
  return other ? `${day(moment, zone)} ${clock(moment, zone)}` : clock(moment, zone);
}

function date(moment, zone) {
  return new Intl.DateTimeFormat(LANGUAGE, { timeZone: zone, weekday: "long", day: "numeric", month: "long" }).format(moment);
}

/** How long until something, in days if it is more than two. */
export function away(milliseconds) {
  if (milliseconds < 2 * DAY) return lasting(milliseconds / 60_000);
  return counted("days", Math.round(milliseconds / DAY));
}

export function lasting(minutes) {
  const whole = Math.round(Math.abs(minutes));
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  return [hours ? `${hours} h` : "", rest || !hours ? `${rest} min` : ""].filter(Boolean).join(" ");
}

/** A time that is left, as a timer shows it: 1:23:45, or 4:05. */
export function countdown(milliseconds) {
  const seconds = Math.max(0, Math.ceil(milliseconds / 1000));
  const two = (number) => String(number).padStart(2, "0");
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return hours ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

export function named(task) {
  const name = task.component_name || task.dessert_name;
  return task.rounds > 1 ? words("round", { name, number: task.round, all: task.rounds }) : name;
}
