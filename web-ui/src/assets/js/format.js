/** Numbers and times as a grower reads them. Unknown is a dash, never a zero. */

import { now, timeZone } from "./clock.js";

const MINUS = "\u2212";
export const UNKNOWN = "–";

/** Decimals for a conductivity in mS/cm: three for rain, two for feed, one and none for stock. */
export function decimals(value) {
  const size = Math.abs(value);
  if (size < 0.1) return 3;
  if (size < 10) return 2;
  return size < 100 ? 1 : 0;
}

export function conductivity(value, places = value === null ? 0 : decimals(value)) {
  return known(value) ? fixed(value, places) : UNKNOWN;
}

/** Half-width of what a value is sure to, never shown as 0.00. */
export function sureTo(value) {
  if (!known(value)) return "can’t tell";
  const places = value < 0.0095 ? 3 : value < 0.995 ? 2 : 1;
  return `± ${fixed(Math.max(value, 0.001), places)}`;
}

export function temperature(celsius) {
  return known(celsius) ? `${fixed(celsius, 1)} °C` : UNKNOWN;
}

export function known(value) {
  return typeof value === "number" && Number.isFinite(value);
}

/** "2 s", "14 min", "3 h", "5 days". */
export function span(seconds) {
  if (seconds < 60) return `${Math.max(0, Math.round(seconds))} s`;
  if (seconds < 3600) return `${Math.round(seconds / 60)} min`;
  if (seconds < 36 * 3600) return `${Math.round(seconds / 3600)} h`;
  return `${Math.round(seconds / 86400)} days`;
}

/** "14:02" today, "Tue 14:02" within a week, else "24 Nov 14:02". */
export function moment(time) {
  const hour = clockTime(time);
  if (day(time) === day(now())) return hour;
  const near = Math.abs(now() - time) < 6 * 86400e3;
  return `${part(time, near ? { weekday: "short" } : { day: "numeric", month: "short" })} ${hour}`;
}

export function clockTime(time, seconds = false) {
  const wanted = { hour: "2-digit", minute: "2-digit" };
  return part(time, seconds ? { ...wanted, second: "2-digit" } : wanted);
}

export function date(time) {
  return part(time, { day: "numeric", month: "short" });
}

export function weekdayAndTime(time) {
  return `${part(time, { weekday: "long" })} ${clockTime(time)}`;
}

/** "Tuesday 24 November". */
export function weekday(time) {
  return part(time, { weekday: "long", day: "numeric", month: "long" });
}

export function full(time) {
  return `${part(time, { weekday: "short", day: "numeric", month: "short" })} ${clockTime(time, true)}`;
}

/** Reads a number as people type it, with a point or a comma; null if it is none. */
export function typedNumber(text) {
  const plain = text.trim().replace(",", ".").replace(MINUS, "-");
  return /^-?\d+(\.\d*)?$|^-?\.\d+$/.test(plain) ? Number(plain) : null;
}

function day(time) {
  return part(time, { year: "numeric", month: "numeric", day: "numeric" });
}

const made = new Map();

function part(time, wanted) {
  const key = timeZone() + JSON.stringify(wanted);
  let formatter = made.get(key);
  if (!formatter) {
    formatter = new Intl.DateTimeFormat("en-GB", {
      ...wanted,
      hourCycle: "h23",
      timeZone: timeZone(),
    });
    made.set(key, formatter);
  }
  return formatter.format(new Date(time));
}

function fixed(value, places) {
  const text = value.toFixed(places);
  return Number(text) === 0 ? text.replace("-", "") : text.replace("-", MINUS);
}
