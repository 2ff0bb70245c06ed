/** The control chart of a probe: errors, tolerance, warning limits, cleanings and adjustments. */

import { h, s } from "./dom.js";
import { moment } from "./format.js";

const WIDTH = 360;
const HEIGHT = 190;
const LEFT = 38;
const RIGHT = 10;
const TOP = 10;
const BOTTOM = 22;

export function checkChart(chart) {
  const times = [...chart.points, ...chart.marks].map((each) => Date.parse(each.time));
  const first = Math.min(...times);
  const last = Math.max(...times);
  const wide = Math.max(last - first, 3600000);
  const tolerance = chart.tolerance_percent ?? 3;
  const most = Math.max(
    tolerance * 1.3,
    ...chart.points.map((point) => Math.abs(point.error ?? 0) + (point.uncertainty ?? 0)),
  );
  const x = (time) => LEFT + ((Date.parse(time) - first) / wide) * (WIDTH - LEFT - RIGHT);
  const y = (percent) => TOP + ((most - percent) / (2 * most)) * (HEIGHT - TOP - BOTTOM);
  const across = (percent, kind) =>
    s("line", { x1: LEFT, x2: WIDTH - RIGHT, y1: y(percent), y2: y(percent), class: kind });
  const label = (percent, text) =>
    s("text", { x: LEFT - 4, y: y(percent) + 4, "text-anchor": "end" }, text);
  const warning = chart.warning_percent ?? null;
  const middle = chart.middle_percent ?? 0;
  return h(
    "figure",
    { class: "check-chart plain", "data-check-chart": true },
    s(
      "svg",
      { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, role: "img", "aria-label": `Errors of ${chart.points.length} looks, tolerance ± ${tolerance} %` },
      across(tolerance, "tolerance"),
      across(-tolerance, "tolerance"),
      across(0, "zero"),
      warning === null ? null : across(middle + warning, "warning"),
      warning === null ? null : across(middle - warning, "warning"),
      label(tolerance, `+${tolerance}`),
      label(0, "0 %"),
      label(-tolerance, `−${tolerance}`),
      chart.marks.map((mark) =>
        s("line", {
          x1: x(mark.time),
          x2: x(mark.time),
          y1: TOP,
          y2: HEIGHT - BOTTOM,
          class: mark.adjustment ? "adjusted" : "cleaned",
        }),
      ),
      chart.points.map((point) => dot(point, x, y)),
    ),
    h(
      "figcaption",
      {},
      "Error in %, with its ±. Solid across: tolerance; dotted: where 95 % of checks of an unchanged probe lie. Upright: dashed cleaned, solid adjusted or replaced.",
    ),
    table(chart),
  );
}

function dot(point, x, y) {
  if (point.error === null) return null;
  const at = x(point.time);
  const wide = point.uncertainty ?? 0;
  return s(
    "g",
    { class: `dot ${point.verdict}` },
    s("line", { x1: at, x2: at, y1: y(point.error - wide), y2: y(point.error + wide) }),
    point.source === "as-found"
      ? s("circle", { cx: at, cy: y(point.error), r: 4 })
      : s("rect", { x: at - 3.5, y: y(point.error) - 3.5, width: 7, height: 7 }),
  );
}

function table(chart) {
  return h(
    "details",
    {},
    h("summary", {}, "The numbers as a table"),
    h(
      "table",
      {},
      h("thead", {}, h("tr", {}, ["when", "what", "error", "±", "verdict"].map((each) => h("th", {}, each)))),
      h(
        "tbody",
        {},
        chart.points.map((point) =>
          h(
            "tr",
            {},
            h("td", {}, moment(Date.parse(point.time))),
            h("td", {}, point.source.replaceAll("-", " ")),
            h("td", {}, `${(point.error ?? 0).toFixed(1)} %`),
            h("td", {}, `${(point.uncertainty ?? 0).toFixed(1)} %`),
            h("td", {}, point.verdict === "cant-tell" ? "can’t tell" : point.verdict),
          ),
        ),
      ),
    ),
  );
}
