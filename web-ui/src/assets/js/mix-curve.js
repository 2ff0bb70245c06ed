/** Strength against grams in a litre, with the dose marked on it. */

import { s } from "./dom.js";
import { conductivity } from "./format.js";

const WIDTH = 360;
const HEIGHT = 200;
const LEFT = 40;
const RIGHT = 14;
const TOP = 14;
const BOTTOM = 44;
const STEPS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100];

/** curve: [{grams_per_litre, strength}]; grams and total are those of the mix. */
export function curveDrawing(curve, grams, total) {
  const far = Math.max(...curve.map((each) => each.grams_per_litre), grams, 1e-6);
  const high = Math.max(...curve.map((each) => each.strength), total, 1e-3);
  const x = (value) => LEFT + ((WIDTH - LEFT - RIGHT) * value) / far;
  const y = (value) => HEIGHT - BOTTOM - ((HEIGHT - TOP - BOTTOM) * value) / high;
  const line = curve
    .map(
      (each, index) =>
        `${index ? "L" : "M"}${x(each.grams_per_litre).toFixed(1)} ${y(each.strength).toFixed(1)}`,
    )
    .join("");
  const words = `${conductivity(total)} mS/cm at ${plain(grams)} g/L`;
  const mark = `M${x(0).toFixed(1)} ${y(total).toFixed(1)}H${x(grams).toFixed(1)}V${y(0).toFixed(1)}`;
  return s(
    "svg",
    {
      class: "curve",
      viewBox: `0 0 ${WIDTH} ${HEIGHT}`,
      role: "img",
      "aria-label": `Strength against grams in a litre: water alone ${conductivity(curve[0].strength)}, ${words}, ${conductivity(curve.at(-1).strength)} at ${plain(curve.at(-1).grams_per_litre)} g/L`,
    },
    ticks(high, 3)
      .map((value) => [
        s("line", { class: "grid", x1: LEFT, x2: WIDTH - RIGHT, y1: y(value), y2: y(value) }),
        s("text", { x: LEFT - 6, y: y(value) + 5, "text-anchor": "end" }, plain(value)),
      ])
      .flat(),
    ticks(far, 4).map((value) =>
      s("text", { x: x(value), y: HEIGHT - BOTTOM + 18, "text-anchor": "middle" }, plain(value)),
    ),
    s("line", { class: "edge", x1: LEFT, x2: WIDTH - RIGHT, y1: y(0), y2: y(0) }),
    s("path", { class: "dose", d: mark }),
    s("path", { class: "strength", d: line }),
    s("circle", { class: "here", cx: x(grams), cy: y(total), r: 6 }),
    s(
      "text",
      { x: WIDTH - RIGHT, y: HEIGHT - 6, "text-anchor": "end" },
      "grams in a litre, all products",
    ),
    s("text", { x: LEFT + 6, y: TOP + 2 }, "mS/cm at 25 °C"),
  );
}

function ticks(end, wanted) {
  const step = STEPS.find((each) => end / each <= wanted) ?? STEPS.at(-1);
  return Array.from({ length: Math.floor(end / step + 1e-9) + 1 }, (_, index) => index * step);
}

function plain(value) {
  return String(Number(value.toPrecision(3)));
}
