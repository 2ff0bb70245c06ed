/** What is in the feed, nutrient by nutrient, against what was wanted; element and oxide. */

import { h, s } from "./dom.js";
import { known } from "./format.js";

const TRACE = new Set(["Fe", "Mn", "Zn", "Cu", "B", "Mo"]);
const FORMS = new Set(["nitrate-N", "ammonium-N", "urea-N"]);
const MET = 0.02;

/** Two groups, each on a scale of its own: trace elements would not be seen beside nitrogen. */
export function nutrientBars(nutrients) {
  const trace = nutrients.filter((each) => TRACE.has(each.symbol));
  const others = nutrients.filter((each) => !TRACE.has(each.symbol));
  return [bars(others, ""), bars(trace, "Trace elements, on a scale of their own")].filter(Boolean);
}

function bars(nutrients, title) {
  if (nutrients.length === 0) return null;
  const end = Math.max(1e-6, ...nutrients.map((each) => Math.max(each.total, each.wanted ?? 0)));
  return h(
    "div",
    {},
    title ? h("p", { class: "plain soft" }, title) : null,
    h(
      "ul",
      { class: "bars plain" },
      nutrients.map((each) => bar(each, end)),
    ),
  );
}

function bar(each, end) {
  const verdict = verdictOf(each);
  return h(
    "li",
    { "data-nutrient": each.symbol, class: FORMS.has(each.symbol) ? "form-of" : "" },
    h("b", {}, each.symbol),
    h("span", { class: "total" }, `${amountOf(each.total)} mg/L`),
    h("span", { class: "oxide" }, each.oxide ? `${each.oxide} ${amountOf(each.total_oxide)}` : ""),
    drawing(each, end),
    verdict ? h("span", { class: `verdict-of ${verdict.tone}` }, verdict.words) : null,
  );
}

function verdictOf({ total, wanted, ceiling, conducts, from_water: water }) {
  const notes = [];
  let tone = "soft";
  if (known(wanted)) {
    const off = total - wanted;
    const met = Math.abs(off) <= MET * wanted;
    if (ceiling && off <= MET * wanted) notes.push(`● below its ceiling ${amountOf(wanted)}`);
    else if (met) notes.push(`● as wanted, ${amountOf(wanted)}`);
    else {
      tone = "look";
      const words = ceiling ? "over its ceiling" : off < 0 ? "short of" : "over";
      notes.push(`▲ ${amountOf(Math.abs(off))} ${words} ${amountOf(wanted)}`);
    }
  }
  if (water > 0.005 * Math.max(total, 1)) notes.push(`${amountOf(water)} from the water`);
  if (!conducts && total > 0) notes.push("no meter sees it");
  return notes.length > 0 ? { tone, words: notes.join("; ") } : null;
}

function drawing({ from_water: water, total, wanted, ceiling }, end) {
  const width = (value) => `${((100 * Math.max(0, value)) / end).toFixed(2)}%`;
  const start = Math.min(Math.max(0, water), total);
  return s(
    "svg",
    { class: "bar", "aria-hidden": "true" },
    s("rect", { class: "water", x: 0, y: 5, height: 8, width: width(start) }),
    s("rect", { class: "feed", x: width(start), y: 5, height: 8, width: width(total - start) }),
    known(wanted)
      ? s("line", {
          class: ceiling ? "target ceiling" : "target",
          x1: width(wanted),
          x2: width(wanted),
          y1: 0,
          y2: 18,
        })
      : null,
  );
}

/** Three figures are more than any label gives. */
export function amountOf(value) {
  if (!known(value)) return "–";
  if (value === 0) return "0";
  if (value >= 100 || Number.isInteger(value)) return value.toFixed(0);
  return value >= 10 ? value.toFixed(1) : String(Number(value.toPrecision(2)));
}
