/** Feed lines: their parts with live values, expected beside measured, and how the mixer drifts. */

import { api } from "./api.js";
import { timeZone } from "./clock.js";
import { h, say } from "./dom.js";
import { driftChart } from "./drift-chart.js";
import { conductivity, known, moment } from "./format.js";
import { changeForm } from "./line-change.js";
import { linePicture } from "./line-picture.js";
import { state } from "./state.js";
import { capital, sentence } from "./words.js";

const EVERY_MS = 5000;
const LOG_SHOWN = 12;

const VERDICTS = {
  learning: ["○", "unsure"],
  normal: ["●", "good"],
  shifted: ["▲", "look"],
  "plain-water": ["▲", "look"],
  off: ["–", "unsure"],
};

const SURENESS = {
  sure: "that is sure",
  likely: "that is likely",
  "can't tell": "whether it is so can’t be told yet",
};

export function lines(page, { announce }) {
  const empty = h("p", { class: "why", hidden: true });
  const box = h("div", { class: "feed-lines", "data-lines": true });
  page.append(h("h2", {}, "Feed lines"), empty, box);
  const entries = new Map();
  let timer = 0;

  const write = (list) => {
    empty.hidden = list.feed_lines.length > 0;
    say(
      empty,
      "No feed line is set up. A [[feed-line]] table in the configuration ties source, mixer, line and drain together; docs/feed-lines.md shows how.",
    );
    for (const line of list.feed_lines) {
      if (!entries.has(line.name)) {
        const entry = lineEntry(line, list.changes, announce);
        entries.set(line.name, entry);
        box.append(entry.article);
      }
      entries.get(line.name).update(line);
    }
    for (const [name, entry] of entries) {
      if (!list.feed_lines.some((line) => line.name === name)) {
        entry.article.remove();
        entries.delete(name);
      }
    }
  };
  const ask = async () => {
    try {
      write(await api.feedLines());
    } catch (trouble) {
      empty.hidden = false;
      say(empty, `■ No feed lines: ${trouble.message}`);
    }
  };
  state.on("measurement", () => {
    if (!page.hidden) for (const entry of entries.values()) entry.live();
  });
  let zone = timeZone();
  state.on("health", () => {
    if (page.hidden || zone === timeZone()) return;
    zone = timeZone();
    ask();
  });
  return {
    show(open) {
      clearInterval(timer);
      if (!open) return;
      ask();
      timer = setInterval(ask, EVERY_MS);
    },
  };
}

function lineEntry(line, choices, announce) {
  const id = `line-${line.name}`;
  const verdict = h("span", { class: "verdict plain", "data-line-state": true });
  const told = h("div", { class: "told", "data-told": true });
  const facts = h("dl", { class: "facts plain beside", "data-beside": true });
  const log = h("ul", { class: "line-log plain" });
  const picture = linePicture();
  const chart = driftChart();
  const update = (latest) => {
    picture.update(latest);
    const [shape, tone] = look(latest);
    verdict.className = `verdict plain ${tone}`;
    say(verdict, `${shape} ${latest.state_words}`);
    replace(told, toldOf(latest));
    told.dataset.tone = tone;
    replace(facts, factsOf(latest));
    chart.update(latest);
    replace(log, latest.log.slice(0, LOG_SHOWN).map(logged));
  };
  const form = changeForm(line, choices, (now) => {
    update(now);
    announce(`${now.title}: the change is logged`);
  });
  const article = h(
    "article",
    { class: "feed-line", "data-line": line.name, "aria-labelledby": id },
    h("div", { class: "top" }, h("h3", { id }, line.title), verdict),
    told,
    picture.box,
    facts,
    chart.box,
    form.box,
    h("details", { class: "after plain" }, h("summary", {}, "What was found and done"), log),
  );
  return { article, update, live: picture.live };
}

function look(line) {
  return line.open?.stage === "alarm" ? ["■", "act"] : (VERDICTS[line.state] ?? ["○", "unsure"]);
}

/** Children are only replaced when they differ, so that reading and selecting are left in peace. */
function replace(box, children) {
  const fresh = h("div", {}, ...children);
  if (fresh.innerHTML !== box.innerHTML) box.replaceChildren(...fresh.childNodes);
}

function toldOf(line) {
  const { open } = line;
  if (!open || open.stage === "seen" || open.stage === "note") {
    return line.told ? [h("p", {}, sentence(capital(line.told)))] : [];
  }
  return [
    h("p", { class: "say" }, headline(line, open)),
    open.causes.length > 0 &&
      h("p", {}, open.ambiguous ? "Which of these, can’t be told yet:" : "Likely, the likeliest first:"),
    open.causes.length > 0 &&
      h(
        "ol",
        {},
        open.causes.map(({ words, why }) => h("li", {}, capital(words), why ? ` (${why})` : "")),
      ),
    open.tests.length > 0 && h("p", {}, "What would decide, in this order:"),
    open.tests.length > 0 &&
      h("ol", { class: "todo" }, open.tests.map((test) => h("li", {}, capital(test)))),
  ].filter(Boolean);
}

function headline(line, open) {
  const since = `It began ${moment(Date.parse(open.start))} and was clear ${moment(Date.parse(open.detected))}.`;
  if (!["step", "ramp"].includes(open.kind) || !known(open.size_percent)) {
    return `${sentence(capital(open.words.split("; ")[0]))} ${since}`;
  }
  const size = `${Math.abs(open.size_percent).toFixed(1)} %`;
  const within = known(open.plus_minus_percent) ? ` (± ${open.plus_minus_percent.toFixed(1)} %)` : "";
  const thing = open.size_percent < 0 ? "less feed" : "more feed";
  const how = open.kind === "ramp" ? ", little by little" : "";
  return `${size} ${thing} than normal${within}${how}; ${SURENESS[open.confidence] ?? open.confidence}. ${since}`;
}

function factsOf(line) {
  const ratio = known(line.ratio)
    ? `${line.ratio.toFixed(0)} ± ${Math.max(1, line.ratio_plus_minus ?? 0).toFixed(0)} L`
    : "can’t tell yet";
  return [
    fact("expected", expectedOf(line)),
    fact("measured, last watering", strength(line.measured_mS_cm)),
    line.mixer.kind === "injector" && fact("1 L of stock really makes", ratio),
    line.mixer.kind === "injector" && known(line.ratio_expected) && fact("it should make", `${line.ratio_expected.toFixed(0)} L`),
    known(line.share_percent) &&
      fact(
        "feed delivered, of expected",
        `${line.share_percent.toFixed(0)} ± ${(line.share_plus_minus_percent ?? 0).toFixed(0)} %`,
      ),
    h(
      "div",
      { class: "origin" },
      h("dt", {}, "what is expected:"),
      h("dd", {}, line.expected_from_words),
    ),
  ].filter(Boolean);
}

function strength(value) {
  return known(value) ? `${conductivity(value)} mS/cm` : "–";
}

function expectedOf(line) {
  if (!known(line.expected_mS_cm)) return "can’t tell yet";
  const within = known(line.expected_plus_minus_mS_cm) ? ` ± ${line.expected_plus_minus_mS_cm.toFixed(2)}` : "";
  return `${conductivity(line.expected_mS_cm)}${within} mS/cm`;
}

function fact(name, value) {
  return h("div", {}, h("dt", {}, name), h("dd", {}, value));
}

function logged(entry) {
  const when = entry.time ? `${moment(Date.parse(entry.time))} ` : "";
  // The tests stand above for as long as they are of use.
  const words = entry.words.split(". To decide:")[0];
  const who = entry.who ? ` (${entry.who})` : "";
  return h("li", {}, h("span", { class: "soft" }, when), sentence(capital(words)), who);
}
