/** The chart: each point's mean with its band, temperature as a thin line, all on paper. */

import uPlot from "/vendor/uPlot.esm.js";
import { timeZone } from "./clock.js";
import { known } from "./format.js";
import { drawMarks, drawNames } from "./marks.js";
import { drawNotes, drawPlan } from "./notes.js";
import { timeTicks } from "./ticks.js";

/** Colours there are for lines, as tokens. Names beside the lines tell them apart without colour. */
export const INKS = 5;
const NULL_EXPAND = 2;
const ALPHA = "30";
const THIN = "b0";
/** Never zoom in so far that noise looks like news, mS/cm. */
const LEAST_SPAN = 0.1;
const STEPS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50];

/**
 * Draws lines [{title, ink (index), byHand, times, mean, …}] over {from, to} (s since 1970) into a
 * box, with notes [{at, number}] and the band it is planned in; returns {chart, setLines(lines, range)}. moved(index or null) tells where the cursor is.
 */
export function drawChart(box, lines, { range, warmth, corrected, fromZero, notes, plan, moved }) {
  const inks = readInks();
  const columns = 3 + (warmth ? 1 : 0) + (corrected ? 1 : 0);
  let current = lines;
  let window_ = range;
  const options = {
    ...size(box),
    tzDate: (at) => uPlot.tzDate(new Date(at * 1000), timeZone()),
    legend: { show: false },
    padding: [22, null, null, null],
    cursor: { y: false, drag: { x: false, y: false }, points: { size: 9 } },
    scales: {
      x: { range: () => [window_.from, window_.to] },
      mS: { range: (_, low, high) => strengths(low, high, fromZero) },
      C: {
        range: (_, low, high) =>
          known(low) ? [Math.floor(low - 1), Math.ceil(high + 1)] : [0, 30],
      },
    },
    axes: axes(inks, warmth),
    series: [{}, ...lines.flatMap((line) => seriesOf(line, inks, warmth, corrected))],
    bands: lines.flatMap((line, i) => band(line, i * columns, inks)),
    hooks: {
      drawAxes: [
        (chart) => drawPlan(chart, plan, inks),
        (chart) => drawMarks(chart, current, inks),
      ],
      draw: [
        (chart) => drawNames(chart, current, inks, warmth),
        (chart) => drawNotes(chart, notes, inks),
      ],
      setCursor: [(chart) => moved(chart.cursor.idx ?? null)],
    },
  };
  const chart = new uPlot(options, join(lines, warmth, corrected), box);
  const setLines = (next, nextRange) => {
    current = next;
    window_ = nextRange;
    chart.setData(join(next, warmth, corrected));
  };
  return { chart, setLines, resize: () => chart.setSize(size(box)) };
}

function join(lines, warmth, corrected) {
  const tables = lines.map((line) => [
    line.times,
    line.max,
    line.min,
    line.mean,
    ...(warmth ? [line.warmth] : []),
    ...(corrected ? [line.corrected] : []),
  ]);
  // A gap of one line stays a gap where another line has values: nulls reach to the next value.
  const modes = tables.map((table) => table.map(() => NULL_EXPAND));
  return tables.length > 0 ? uPlot.join(tables, modes) : [[]];
}

function seriesOf(line, inks, warmth, corrected) {
  const stroke = inks.series[line.ink];
  const hidden = { scale: "mS", stroke: "transparent", width: 0, points: { show: false } };
  const mean = line.byHand
    ? {
        scale: "mS",
        stroke,
        width: 0,
        paths: () => null,
        points: { show: true, size: 7, fill: stroke },
      }
    : { scale: "mS", stroke, width: 1.75 };
  const thin = { scale: "C", stroke: stroke + THIN, width: 1, points: { show: false } };
  const without = { scale: "mS", stroke: inks.ink, width: 1.5, dash: [6, 4], points: { show: false } };
  return [hidden, hidden, mean, ...(warmth ? [thin] : []), ...(corrected ? [without] : [])];
}

function band(line, before, inks) {
  if (line.byHand) return [];
  return [{ series: [before + 1, before + 2], fill: inks.series[line.ink] + ALPHA }];
}

function axes(inks, warmth) {
  const common = {
    stroke: inks.soft,
    font: `13px ${inks.sans}`,
    ticks: { stroke: inks.ink, width: 1, size: 7 },
    border: { show: true, stroke: inks.ink, width: 2 },
  };
  const grid = { stroke: inks.rule, width: 1 };
  return [
    {
      ...common,
      grid: { show: false },
      size: 48,
      space: 70,
      values: (_, splits, __, ___, incr) => timeTicks(splits, incr),
    },
    {
      ...common,
      scale: "mS",
      grid,
      size: 52,
      space: 40,
      incrs: STEPS,
      values: (_, splits, __, ___, incr) =>
        splits.map((v) => v.toFixed(incr < 0.1 ? 2 : incr < 1 ? 1 : 0)),
    },
    ...(warmth ? [{ ...common, scale: "C", side: 1, grid: { show: false }, size: 42 }] : []),
  ];
}

function strengths(low, high, fromZero) {
  if (!known(low) || !known(high)) return [0, 2];
  const middle = (low + high) / 2;
  const half = Math.max((high - low) / 2, LEAST_SPAN / 2) * 1.15;
  return [fromZero ? 0 : Math.max(0, middle - half * 1.2), middle + half];
}

function size(box) {
  const wide = box.clientWidth || 600;
  return { width: wide, height: wide < 600 ? 340 : 440 };
}

function readInks() {
  const style = getComputedStyle(document.documentElement);
  const token = (name) => style.getPropertyValue(`--${name}`).trim();
  return {
    ink: token("ink"),
    paper: token("paper"),
    soft: token("soft"),
    rule: token("rule"),
    look: token("ochre"),
    plan: token("moss"),
    act: token("madder"),
    hatch: token("edge"),
    sans: token("sans"),
    series: Array.from({ length: INKS }, (_, i) => token(`series-${i + 1}`)),
  };
}
