/**
 * The ruler: a plain scale from nothing to a round number. On it lies the source water, behind it
 * what the feed added, around both the band it is meant to be in, and above all the mark of the
 * reading with its width of doubt.
 */

import { s } from "./dom.js";
import { conductivity, known } from "./format.js";

const ENDS = [0.1, 0.2, 0.5, 1, 2, 3, 5, 10, 20, 50, 100, 200];
const BASE = 36;

/** Round end of a scale that holds the value with room to spare. */
function scaleEnd(value) {
  return ENDS.find((end) => value <= 0.9 * end) ?? ENDS.at(-1);
}

/**
 * One scale for all points in the range of feeds, so that rulers compare; stock gets its own. A scale
 * grows at once but shrinks only with room to spare, or noise at its limit would make it flicker.
 */
export function sharedScale() {
  let held = 0;
  return (value, all) => {
    if (known(value) && value >= 9) return scaleEnd(value);
    const most = Math.max(0.9, ...all.filter((each) => known(each) && each < 9));
    const end = scaleEnd(most);
    if (end > held || most < 0.8 * end) held = end;
    return held;
  };
}

export function ruler() {
  const scale = s("g");
  const water = s("rect", { class: "water", y: BASE - 7, height: 6, x: 0 });
  const feed = s("rect", { class: "feed", y: BASE - 7, height: 6 });
  const sure = s("rect", { class: "sure", y: BASE - 14, height: 4 });
  const plan = s("rect", { class: "plan", y: BASE - 11, height: 10 });
  const mark = s("path", { class: "mark", d: "M0 22 l-9 -17 h18 z" });
  const place = s("svg", { overflow: "visible" }, mark);
  const edge = s("line", { class: "edge", x1: 0, x2: "100%", y1: BASE, y2: BASE });
  const drawing = s("svg", { class: "ruler", role: "img" }, water, feed, plan, scale, edge, sure, place);
  let drawnEnd = null;

  /** source: mS/cm of source water to lay under it, or null; band: {low_total, high_total} or null. */
  const update = ({ value, uncertainty, source, band, end }) => {
    if (end !== drawnEnd) {
      drawnEnd = end;
      scale.replaceChildren(...ticks(end));
    }
    const shown = known(value);
    const start = known(source) && shown ? Math.min(source, value) : 0;
    const doubt = known(uncertainty) && shown ? uncertainty : 0;
    stretch(water, 0, known(source) ? start : 0, end);
    stretch(feed, start, known(source) && shown ? value : start, end);
    stretch(sure, shown ? value - doubt : 0, shown ? value + doubt : 0, end);
    const low = band?.low_total ?? null;
    const high = band?.high_total ?? null;
    const planned = known(low) || known(high);
    plan.setAttribute("visibility", planned ? "visible" : "hidden");
    if (planned) stretch(plan, low ?? 0, high ?? end, end);
    place.setAttribute("x", shown ? percent(value, end) : "0%");
    mark.toggleAttribute("hidden", !shown);
    mark.setAttribute("visibility", shown ? "visible" : "hidden");
    drawing.setAttribute("aria-label", `${label(value, source, end, shown)}${planWords(low, high)}`);
  };
  return { drawing, update };
}

function label(value, source, end, shown) {
  if (!shown) return `An empty scale from 0 to ${end} mS/cm`;
  const water = known(source) ? `, ${conductivity(source)} of it source water` : "";
  return `${conductivity(value)} on a scale from 0 to ${end} mS/cm${water}`;
}

function planWords(low, high) {
  if (known(low) && known(high)) return `, meant to be ${conductivity(low)} to ${conductivity(high)}`;
  if (known(low)) return `, meant to be at least ${conductivity(low)}`;
  return known(high) ? `, meant to be at most ${conductivity(high)}` : "";
}

function ticks(end) {
  const lead = end / 10 ** Math.floor(Math.log10(end) + 1e-9);
  const majors = Math.abs(lead - 3) < 0.1 ? 3 : Math.abs(lead - 5) < 0.1 ? 5 : 4;
  const marks = [];
  for (let i = 0; i <= majors * 5; i++) {
    const x = `${(100 * i) / (majors * 5)}%`;
    const major = i % 5 === 0;
    marks.push(s("line", { class: "tick", x1: x, x2: x, y1: BASE, y2: BASE + (major ? 10 : 5) }));
    if (major) {
      const number = Number(((end * i) / (majors * 5)).toPrecision(3));
      marks.push(s("text", { x, y: BASE + 25 }, String(number)));
    }
  }
  return marks;
}

function stretch(rect, from, to, end) {
  const left = clamp(from, end);
  rect.setAttribute("x", percent(left, end));
  rect.setAttribute("width", percent(Math.max(0, clamp(to, end) - left), end));
}

function percent(value, end) {
  return `${((100 * clamp(value, end)) / end).toFixed(2)}%`;
}

function clamp(value, end) {
  return Math.min(Math.max(value, 0), end);
}
