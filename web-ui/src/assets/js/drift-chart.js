/**
 * How far each irrigation event lay from what is normal, %, with the limits, the start of a drift
 * and logged changes. Positions across are percent, down are pixels: text keeps its size.
 */

import { timeZone } from "./clock.js";
import { h, s } from "./dom.js";
import { known, moment } from "./format.js";

const HEIGHT = 220;
const TOP = 34;
const BOTTOM = 40;
const RIGHT = 99;
const AXIS_WIDTH = 60;
const LEAST_RANGE = 12;
const MOST_RANGE = 60;

export function driftChart() {
  const box = h("figure", { class: "drift" });
  let drawn = "";
  const update = (line) => {
    const key = JSON.stringify([timeZone(), line.events, line.open, line.limits, changes(line)]);
    if (key === drawn) return;
    drawn = key;
    const events = line.events.filter((event) => known(event.percent));
    if (events.length < 2) {
      box.replaceChildren(
        h("figcaption", { class: "plain soft" }, "The drift chart begins after the first waterings."),
      );
      return;
    }
    box.replaceChildren(
      h("figcaption", { class: "plain soft" }, "Feed delivered in each watering, % off normal"),
      ...drawing(line, events),
    );
  };
  return { box, update };
}

function changes(line) {
  return line.log.filter((entry) => entry.kind === "change" && entry.time);
}

function drawing(line, events) {
  const from = Date.parse(events[0].start);
  const to = Math.max(Date.parse(events.at(-1).start), from + 1);
  const largest = Math.max(...events.map((event) => Math.abs(event.percent)));
  const range = Math.min(MOST_RANGE, Math.max(LEAST_RANGE, line.limits.alarm_percent * 1.3, largest * 1.1));
  const x = (time) => `${(1 + (RIGHT - 1) * clamp((time - from) / (to - from), 0, 1)).toFixed(2)}%`;
  const y = (percent) =>
    TOP + ((HEIGHT - TOP - BOTTOM) * (range - clamp(percent, -range, range))) / (2 * range);
  const level = (percent, kind) =>
    s("line", { class: kind, x1: 0, x2: "100%", y1: y(percent), y2: y(percent) });
  const { notice_percent: notice, alarm_percent: alarm } = line.limits;
  const axis = s(
    "svg",
    { width: AXIS_WIDTH, height: HEIGHT, "aria-hidden": "true" },
    [
      [0, "0"],
      [alarm, `+${alarm} %`],
      [-alarm, `−${alarm} %`],
    ].map(([percent, words]) =>
      s("text", { x: AXIS_WIDTH - 8, y: y(percent) + 6, "text-anchor": "end" }, words),
    ),
  );
  const plot = s(
    "svg",
    { width: "100%", height: HEIGHT, role: "img", "aria-label": label(line, events), "data-drift-chart": true },
    level(0, "zero"),
    level(notice, "notice-limit"),
    level(-notice, "notice-limit"),
    level(alarm, "alarm-limit"),
    level(-alarm, "alarm-limit"),
    changes(line)
      .filter((entry) => Date.parse(entry.time) >= from && Date.parse(entry.time) <= to)
      .map((entry) => upright("change", x(Date.parse(entry.time)))),
    line.open && start(line.open, x, from),
    events.map((event) =>
      s("circle", {
        class: Math.abs(event.percent) >= alarm ? "event act" : Math.abs(event.percent) >= notice ? "event look" : "event",
        cx: x(Date.parse(event.start)),
        cy: y(event.percent),
        r: 4,
      }),
    ),
    s("text", { x: 0, y: HEIGHT - 10 }, moment(from)),
    s("text", { x: "100%", y: HEIGHT - 10, "text-anchor": "end" }, moment(to)),
  );
  return [axis, plot];
}

/** The start is marked with a line and in words; one before the chart stands at its edge. */
function start(open, x, from) {
  const time = Date.parse(open.start);
  const at = x(time);
  const right = Number.parseFloat(at) > 60;
  const words = time < from ? `began before, ${moment(time)}` : `began ${moment(time)}`;
  return [
    upright("start", at),
    s("text", { class: "start", x: at, dx: right ? -6 : 6, y: 18, "text-anchor": right ? "end" : "start" }, words),
  ];
}

function upright(kind, at) {
  return s("line", { class: kind, x1: at, x2: at, y1: 4, y2: HEIGHT - BOTTOM });
}

function label(line, events) {
  const last = events.at(-1).percent.toFixed(1);
  const began = line.open ? ` A change began ${moment(Date.parse(line.open.start))}.` : "";
  return `${events.length} waterings; the last lay ${last} % off normal.${began}`;
}

function clamp(value, low, high) {
  return Math.min(Math.max(value, low), high);
}
