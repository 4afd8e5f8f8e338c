"use strict";

// Hours, minutes and steps as the bench says them.

export function clock(moment, zone) {
  return new Intl.DateTimeFormat("en-GB", { timeZone: zone, hour: "2-digit", minute: "2-digit", hourCycle: "h23" }).format(moment);
}

export function day(moment, zone) {
  return new Intl.DateTimeFormat("en-GB", { timeZone: zone, weekday: "long" }).format(moment);
}

/** Hour, after the weekday if it is another day than the one that is seen. */
export function clockFrom(moment, seen, zone) {
  const other = day(moment, zone) !== day(seen, zone) || Math.abs(moment - seen) > 6 * 86_400_000;
  return other ? `${day(moment, zone)} ${clock(moment, zone)}` : clock(moment, zone);
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
  return task.rounds > 1 ? `${name}, round ${task.round} of ${task.rounds}` : name;
}
