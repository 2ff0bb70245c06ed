/** Notes of the journal on a chart: a numbered mark at their time, their words below. */

import { moment } from "./format.js";

const SIZE = 18;

/** [{at (s since 1970), number, words}] of journal entries, oldest first. */
export function noteMarks(entries, titleOf) {
  return entries
    .filter((entry) => entry.time)
    .sort((a, b) => Date.parse(a.time) - Date.parse(b.time))
    .map((entry, i) => ({
      at: Date.parse(entry.time) / 1000,
      number: i + 1,
      words: wordsOf(entry, i + 1, titleOf),
    }));
}

function wordsOf(entry, number, titleOf) {
  const about = [entry.point ? titleOf(entry.point) : "", entry.block].filter(Boolean).join(", ");
  const head = `(${number}) ${moment(Date.parse(entry.time))}${about ? ` ${about}` : ""}`;
  return `${head}: ${entry.text} · ${entry.author}`;
}

/** A uPlot draw hook. */
export function drawNotes(chart, notes, inks) {
  const context = chart.ctx;
  const ratio = devicePixelRatio || 1;
  const { left, top, width, height } = chart.bbox;
  context.save();
  context.font = `600 ${13 * ratio}px ${inks.sans}`;
  context.textAlign = "center";
  context.textBaseline = "middle";
  for (const note of notes) {
    const x = chart.valToPos(note.at, "x", true);
    if (x < left || x > left + width) continue;
    context.strokeStyle = inks.hatch;
    context.lineWidth = ratio;
    context.setLineDash([2 * ratio, 4 * ratio]);
    context.beginPath();
    context.moveTo(x, top);
    context.lineTo(x, top + height);
    context.stroke();
    context.setLineDash([]);
    const half = (SIZE * ratio) / 2;
    context.fillStyle = inks.paper;
    context.fillRect(x - half, top - half, 2 * half, 2 * half);
    context.strokeStyle = inks.ink;
    context.strokeRect(x - half, top - half, 2 * half, 2 * half);
    context.fillStyle = inks.ink;
    context.fillText(String(note.number), x, top + ratio);
  }
  context.restore();
}

/** The band a point is meant to be in now: dashed lines at its ends, as total strength. */
export function drawPlan(chart, band, inks) {
  const context = chart.ctx;
  const ratio = devicePixelRatio || 1;
  const { left, top, width, height } = chart.bbox;
  context.save();
  context.strokeStyle = inks.plan;
  context.lineWidth = 1.5 * ratio;
  context.setLineDash([8 * ratio, 5 * ratio]);
  for (const end of [band?.low_total, band?.high_total]) {
    if (typeof end !== "number") continue;
    const y = chart.valToPos(end, "mS", true);
    if (y < top || y > top + height) continue;
    context.beginPath();
    context.moveTo(left, y);
    context.lineTo(left + width, y);
    context.stroke();
  }
  context.restore();
}
