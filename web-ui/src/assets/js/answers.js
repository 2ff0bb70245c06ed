/** What needs a look, as sentences at the top: what, since when, why, and the first thing to do. */

import { setAside, when } from "./alarm-words.js";
import { h } from "./dom.js";
import { moment } from "./format.js";
import { state } from "./state.js";
import { verdict } from "./verdict.js";
import { capital, causeRemedy, flagRemedy, sentence } from "./words.js";

const RANK = { act: 0, look: 1, unsure: 2 };

/** box: where sentences go; the counts show beside the names of the pages. */
export function answers(box, count, alarmCount) {
  let shown = "";
  return () => {
    const points = state.points();
    const list = [
      ...service(),
      ...points.filter((p) => p.state === "missing").map(missing),
      ...flagged(points),
    ];
    list.push(...alarms(list));
    list.sort((a, b) => RANK[a.tone] - RANK[b.tone]);
    const urgent = list.filter((each) => each.tone !== "unsure").length;
    count.hidden = urgent === 0;
    count.textContent = `▲ ${urgent}`;
    const open = state.alarms.alarms.filter((each) => each.needs_answer && !setAside(each)).length;
    alarmCount.hidden = open === 0;
    alarmCount.textContent = `■ ${open}`;
    const quiet = quietWords(points, list);
    const text = JSON.stringify([list, quiet]);
    if (text === shown) return;
    shown = text;
    box.replaceChildren(...list.map(block), ...(quiet ? [h("p", {}, quiet)] : []));
  };
}

function quietWords(points, list) {
  if (list.length > 0 || points.length === 0 || !state.connected) return "";
  const probes = points.filter((point) => point.probe);
  if (probes.length === 0) return "● Nothing needs a look. Readings are typed in by hand here.";
  const waiting = probes.filter((point) => point.state === "waiting");
  if (waiting.length > 0) {
    return `○ Waiting for the first reading of ${waiting.map((point) => point.title).join(", ")}.`;
  }
  const all = probes.length === 1 ? "The probe is" : `All ${probes.length} probes are`;
  return `● Nothing needs a look. ${all} reading.`;
}

/** Alarms that wait for an answer, where no sentence above says the same of the same point. */
function alarms(said) {
  const told = (alarm) =>
    ["no-data", "in-air", "instrument-fault", "undated"].includes(alarm.kind) &&
    said.some((each) => each.names?.includes(alarm.subject));
  return state.alarms.alarms
    .filter((alarm) => alarm.needs_answer && !setAside(alarm) && !told(alarm))
    .map((alarm) => ({
      tone: "act",
      title: `■ ${alarm.subject_title}: ${alarm.title.toLowerCase()}, ${when(alarm)}`,
      text: `${sentence(capital(alarm.words))} ${sentence(capital(alarm.what_to_do))}`,
      link: "Answer it",
      names: [alarm.subject],
    }));
}

function service() {
  const health = state.health;
  const list = [];
  if (state.connected && state.healthTrouble) {
    list.push({
      tone: "look",
      title: "▲ The service does not say how recording goes",
      text: sentence(capital(state.healthTrouble)),
    });
  }
  for (const text of health?.trouble ?? []) {
    const colon = text.indexOf(": ");
    const item = colon > 0 && colon < 40 ? text.slice(0, colon) : "";
    list.push({
      tone: "act",
      title: item ? `■ ${capital(item)} needs a look` : "■ The service needs a look",
      text: sentence(capital(item ? text.slice(colon + 2) : text)),
    });
  }
  if (health?.samples_dropped > 0) {
    list.push({
      tone: "look",
      title: `▲ ${health.samples_dropped} samples could not be kept`,
      text: "The box was too busy or its disk too slow since it was started. Later readings are kept.",
    });
  }
  return list;
}

function missing(point) {
  const since = point.missing?.since ?? point.time;
  const detail = point.missing?.detail || point.missing?.words || "";
  const own = `${point.name}: `;
  const what = detail.startsWith(own) ? detail.slice(own.length) : detail;
  // The service's own messages end in a remedy after a semicolon; it is not said twice.
  const remedy = what.includes(";") ? "" : causeRemedy(point.missing?.cause);
  return {
    tone: "act",
    title: `■ ${point.title} gives no reading${since ? ` since ${moment(Date.parse(since))}` : ""}`,
    text: `${sentence(capital(what))} ${remedy}`.trim(),
    names: [point.name],
  };
}

/** Points with the same flags share one sentence: a clock not set yet is one matter, not four. */
function flagged(points) {
  const groups = new Map();
  for (const point of points) {
    if (point.state !== "reading" || point.flag_words.length === 0) continue;
    const words = point.flag_words.join("; ");
    const judged = verdict(point, 0, true);
    const group = groups.get(words) ?? { judged, words, flags: point.flags, points: [] };
    group.points.push(point);
    groups.set(words, group);
  }
  return [...groups.values()].map((group) => ({
    tone: group.judged.tone,
    title: `${group.judged.shape} ${group.points.map((point) => point.title).join(", ")}: ${group.words}`,
    text: flagRemedy(group.flags),
    names: group.points.map((point) => point.name),
  }));
}

function block({ tone, title, text, link, names = [] }) {
  return h(
    "section",
    { class: "answer", "data-tone": tone, "data-about": names.join(" ") },
    h("h2", {}, title),
    text ? h("p", {}, text) : null,
    link ? h("a", { class: "plain", href: "#alarms" }, link) : null,
  );
}
