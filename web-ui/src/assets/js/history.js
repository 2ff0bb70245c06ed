/** The History page: which points, how far back, and the chart of it. */

import { api } from "./api.js";
import { INKS, drawChart } from "./chart.js";
import { now } from "./clock.js";
import { h, s, say } from "./dom.js";
import { explanation } from "./explanation.js";
import { full, known } from "./format.js";
import { noteMarks } from "./notes.js";
import { RANGES } from "./ranges.js";
import { markWords, summary, valueWords } from "./reading-out.js";
import { line } from "./series.js";
import { state } from "./state.js";
import { table } from "./table.js";

/** Buckets to ask for: two every three pixels, or noise covers the line. */
const BUCKETS_A_PIXEL = 2 / 3;
const LEAST_BUCKETS = 360;
const JUMP_MS = 60_000;
const NOTES = 60;

export function history(page) {
  return new History(page);
}

class History {
  #page;
  #box;
  #open = false;
  #chosen = null;
  #range = RANGES[0];
  #warmth = false;
  #corrected = false;
  #fromZero = false;
  #loaded = new Map();
  #notes = [];
  #drawn = null;
  #asked = 0;
  #loadedAt = 0;
  #loadedTo = 0;
  #stale = false;
  #pointedAt = null;

  constructor(page) {
    this.#page = page;
    this.#box = page.querySelector("[data-chart]");
    this.#offerRanges();
    this.#offerOptions();
    state.on("points", () => this.#open && this.#offerPoints());
    state.on("measurement", (point) => this.#append(point));
    setInterval(() => this.#tick(), 1000);
    new ResizeObserver(() => this.#drawn?.resize()).observe(this.#box);
    for (const query of ["(prefers-color-scheme: dark)", "print"]) {
      matchMedia(query).addEventListener("change", () => this.#open && this.#draw());
    }
    this.#box.addEventListener("keydown", (event) => this.#key(event));
    this.#find("explain").addEventListener("click", () => this.#explain());
    this.#find("table").addEventListener("toggle", () => this.#writeTables());
  }

  /** detail: a point's name, from a link on its entry. */
  show(open, detail) {
    this.#open = open;
    if (!open) return;
    if (detail) this.#chosen = new Set([detail]);
    this.#offerPoints();
  }

  #find(name) {
    return this.#page.querySelector(`[data-${name}]`);
  }

  #offerPoints() {
    const points = state.points();
    this.#chosen ??= points.length > 0 ? new Set([main(points).name]) : null;
    const group = this.#find("point-choice");
    group.replaceChildren(
      group.querySelector("legend"),
      ...points.map((point, i) =>
        h(
          "label",
          {},
          h("input", {
            type: "checkbox",
            name: "point",
            value: point.name,
            checked: this.#chosen?.has(point.name) ?? false,
            onchange: (event) => this.#choose(point.name, event.target.checked),
          }),
          point.title,
          sample(i % INKS),
        ),
      ),
    );
    this.#load();
  }

  #choose(name, on) {
    if (on) this.#chosen.add(name);
    else this.#chosen.delete(name);
    this.#load();
  }

  #offerRanges() {
    this.#find("ranges").append(
      ...RANGES.map((range) =>
        h(
          "label",
          {},
          h("input", {
            type: "radio",
            name: "range",
            value: range.value,
            checked: range === this.#range,
            onchange: () => {
              this.#range = range;
              this.#load();
            },
          }),
          range.words,
        ),
      ),
    );
  }

  #offerOptions() {
    const toggle = (name, words, change) =>
      h(
        "label",
        {},
        h("input", {
          type: "checkbox",
          name,
          onchange: (event) => {
            change(event.target.checked);
            this.#draw();
          },
        }),
        words,
      );
    this.#find("options").append(
      toggle("show-temperature", "water °C", (on) => (this.#warmth = on)),
      toggle("corrected", "without the likely error", (on) => (this.#corrected = on)),
      toggle("from-zero", "from zero", (on) => (this.#fromZero = on)),
    );
  }

  async #load() {
    const asked = ++this.#asked;
    const to = new Date(now());
    const from = new Date(to.getTime() - this.#range.seconds * 1000);
    const wanted = state.points().filter((point) => this.#chosen?.has(point.name));
    const buckets = Math.round(Math.max(LEAST_BUCKETS, this.#box.clientWidth * BUCKETS_A_PIXEL));
    this.#loadedAt = performance.now();
    this.#loadedTo = to.getTime();
    try {
      const [answers, notes] = await Promise.all([
        Promise.all(wanted.map((point) => api.measurements(point.name, from, to, buckets))),
        notesOf(from, to),
      ]);
      if (asked !== this.#asked) return;
      this.#notes = noteMarks(
        notes.filter((note) => !note.point || this.#chosen.has(note.point)),
        (name) => wanted.find((point) => point.name === name)?.title ?? name,
      );
      this.#loaded = new Map(wanted.map((point, i) => [point.name, answers[i]]));
      this.#draw();
    } catch (trouble) {
      if (asked === this.#asked) this.#message(`■ No history: ${trouble.message}`);
    }
  }

  /** Adds what has just arrived; the service's own buckets replace it at the next asking. */
  #append(point) {
    const course = this.#loaded.get(point.name);
    if (!this.#open || !this.#range.live || !course) return;
    const reading = point.state === "reading";
    if (!reading && point.state !== "missing") return;
    const time = reading ? point.time : new Date(now()).toISOString();
    const last = course.measurements.at(-1);
    if (time === null || (last && Date.parse(time) <= Date.parse(last.time))) return;
    const value = reading ? point.conductivity25_mS_cm : null;
    course.measurements.push({
      time,
      conductivity25_mS_cm: value,
      min_mS_cm: value,
      max_mS_cm: value,
      temperature_C: reading ? point.temperature_C : null,
      readings: reading ? 1 : 0,
      missing: reading ? 0 : 1,
      flags: point.flags,
    });
    this.#stale = true;
  }

  #tick() {
    if (!this.#open || !state.connected || document.hidden) return;
    const passed = performance.now() - this.#loadedAt;
    // The service's clock became known, or was set, after the range had been asked for.
    const jumped = Math.abs(now() - this.#loadedTo - passed) > JUMP_MS;
    if (jumped || passed > this.#range.every * 1000) this.#load();
    else if (this.#stale && this.#drawn) {
      this.#stale = false;
      const lines = this.#lines();
      this.#drawn.setLines(lines, this.#window());
      this.#describe(lines);
    }
  }

  #window() {
    const to = now() / 1000;
    return { from: to - this.#range.seconds, to };
  }

  #lines() {
    return state
      .points()
      .map((point, i) => ({ point, ink: i % INKS }))
      .filter(({ point }) => this.#loaded.has(point.name))
      .map(({ point, ink }) => {
        const course = this.#loaded.get(point.name);
        const made = line(course.measurements, course.bucket_s, !point.probe);
        return { ...made, title: point.title, name: point.name, ink, byHand: !point.probe };
      });
  }

  #draw() {
    const lines = this.#lines();
    this.#drawn?.chart.destroy();
    this.#drawn = null;
    this.#find("right-axis").hidden = !this.#warmth;
    if (lines.every((each) => each.plotted + each.gaps.length === 0)) {
      this.#message(
        lines.length === 0
          ? "○ Choose a point to see its history."
          : `○ Nothing was recorded in the last ${this.#range.words}.`,
      );
      return;
    }
    this.#box.replaceChildren();
    this.#drawn = drawChart(this.#box, lines, {
      range: this.#window(),
      warmth: this.#warmth,
      corrected: this.#corrected && anyCorrected(lines),
      fromZero: this.#fromZero,
      notes: this.#notes,
      plan: lines.length === 1 ? this.#bandOf(lines[0].name) : null,
      moved: (index) => this.#readOut(index),
    });
    this.#describe(lines);
  }

  #bandOf(name) {
    return state.points().find((point) => point.name === name)?.band ?? null;
  }

  #message(words) {
    this.#drawn?.chart.destroy();
    this.#drawn = null;
    this.#box.replaceChildren(h("p", { class: "plain" }, words));
    this.#box.dataset.points = "0";
    this.#box.dataset.gaps = "0";
    this.#box.setAttribute("aria-label", words);
    this.#find("marks").replaceChildren();
    say(this.#find("readout"), "");
    this.#writeTables();
  }

  /** Offered only where a check has said something of what is shown. */
  #offerCorrected(lines) {
    const box = this.#page.querySelector("input[name=corrected]");
    box.closest("label").hidden = !anyCorrected(lines);
  }

  #describe(lines) {
    this.#offerCorrected(lines);
    const sum = (of) => lines.reduce((total, each) => total + of(each), 0);
    this.#box.dataset.points = String(sum((each) => each.plotted));
    this.#box.dataset.gaps = String(sum((each) => each.gaps.length));
    this.#box.setAttribute("aria-label", lines.map(summary).join(" "));
    const marks = [...lines.flatMap(markWords), ...this.#notes.map((note) => note.words)];
    const list = this.#find("marks");
    if (list.dataset.text !== marks.join()) {
      list.dataset.text = marks.join();
      list.replaceChildren(...marks.map((words) => h("li", {}, words)));
    }
    if (known(this.#drawn?.chart.cursor.idx)) this.#readOut(this.#drawn.chart.cursor.idx);
    else say(this.#find("readout"), lines.map(summary).join(" "));
  }

  #readOut(index) {
    const chart = this.#drawn?.chart;
    if (!chart) return;
    const lines = this.#lines();
    const at = index === null ? undefined : chart.data[0][index];
    this.#pointAt(at);
    if (at === undefined) {
      say(this.#find("readout"), lines.map(summary).join(" "));
      return;
    }
    this.#find("readout").replaceChildren(
      h("span", {}, full(at * 1000)),
      ...lines.map((each) => h("span", {}, valueWords(each, at))),
    );
  }

  /** Keeps the last place pointed at when the pointer leaves for the button. */
  #pointAt(at) {
    if (at === undefined) return;
    this.#pointedAt = at;
    const button = this.#find("explain");
    button.hidden = false;
    say(button, `How the numbers of ${full(at * 1000)} are made`);
  }

  /** The last sample of the stretch that is nearest to the place pointed at. */
  #explain() {
    const at = this.#pointedAt;
    const parts = this.#lines().flatMap((each) => {
      const course = this.#loaded.get(each.name);
      const nearest = nearestTo(course.measurements, at * 1000);
      if (nearest === null) return [];
      const time = Date.parse(nearest.time) + Math.max(0, course.bucket_s * 1000 - 1);
      const made = explanation(each.name);
      made.load(time);
      return [h("h3", {}, each.title), made.box];
    });
    this.#find("explained").replaceChildren(...parts);
  }

  #key(event) {
    const chart = this.#drawn?.chart;
    const step = { ArrowLeft: -1, ArrowRight: 1, PageUp: -20, PageDown: 20 }[event.key];
    if (!chart || !step) return;
    event.preventDefault();
    const last = chart.data[0].length - 1;
    const index = Math.min(Math.max((chart.cursor.idx ?? last) + step, 0), last);
    chart.setCursor({ left: chart.valToPos(chart.data[0][index], "x"), top: 10 });
  }

  #writeTables() {
    const tables = this.#find("tables");
    if (!this.#find("table").open) return;
    tables.replaceChildren(
      ...this.#lines().map((each) => table(each.title, this.#loaded.get(each.name).measurements)),
    );
  }
}

/** The point one asks about first: the line, else a tank, else whatever there is. */
function main(points) {
  return (
    points.find((point) => point.place === "line") ??
    points.find((point) => point.place === "tank") ??
    points[0]
  );
}

/** A chart without its notes is better than none. */
async function notesOf(from, to) {
  try {
    const wanted = { kind: "note", from: from.toISOString(), to: to.toISOString(), limit: NOTES };
    return (await api.journal(wanted)).entries;
  } catch {
    return [];
  }
}

/** Whether a later check found a likely error of anything shown. */
function anyCorrected(lines) {
  return lines.some((each) => each.corrected.some(known));
}

function nearestTo(measurements, time) {
  let nearest = null;
  for (const each of measurements) {
    const away = Math.abs(Date.parse(each.time) - time);
    if (nearest === null || away < Math.abs(Date.parse(nearest.time) - time)) nearest = each;
  }
  return nearest;
}

function sample(ink) {
  return s(
    "svg",
    { width: 26, height: 8, "aria-hidden": "true", class: `ink-${ink + 1}` },
    s("path", { d: "M1 4H25", "stroke-width": 3 }),
  );
}
