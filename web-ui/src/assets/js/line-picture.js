/**
 * A feed line drawn as its parts, water from left to right on a desk and from top to bottom on a
 * phone; the stock joins at the mixer. Values stand where they are measured.
 */

import { h, s, say } from "./dom.js";
import { conductivity, known, temperature } from "./format.js";
import { state } from "./state.js";

const DRAWINGS = {
  source: ["M22 5 C31 17 35 23 35 29 A13 13 0 0 1 9 29 C9 23 13 17 22 5 Z"],
  stock: ["M9 10 H35 V38 H9 Z", "M9 19 H35", "M22 2 V32"],
  tank: ["M6 8 V38 H38 V8", "M6 17 C14 13 18 21 24 17 S34 15 38 17"],
  injector: ["M2 22 H10", "M34 22 H42", "M22 2 V10", "M22 10 A12 12 0 1 1 21.9 10 Z", "M17 16 L28 22 L17 28 Z"],
  siphon: ["M2 22 H10", "M34 22 H42", "M22 10 A12 12 0 1 1 21.9 10 Z", "M22 22 L29 15", "M22 2 V10"],
  line: ["M2 14 H42", "M12 14 V22", "M22 14 V22", "M32 14 V22", "M12 28 V34", "M22 28 V34", "M32 28 V34"],
  drain: ["M4 12 H40 L35 24 H9 Z", "M22 24 V33", "M16 38 H28"],
};

/** {box, update(line), live()}. */
export function linePicture() {
  const box = h("ol", { class: "pipe", "aria-label": "Parts of the feed line, along the water" });
  let built = "";
  let line = null;
  const slots = new Map();

  const live = () => {
    for (const part of line?.parts ?? []) write(slots.get(part.role), latest(part));
  };
  const update = (next) => {
    line = next;
    const key = JSON.stringify([next.mixer, next.parts.map(({ role, point }) => [role, point])]);
    if (key !== built) {
      built = key;
      slots.clear();
      box.dataset.mixer = next.mixer.kind;
      box.replaceChildren(...places(next).map((place) => element(place, slots)));
    }
    const made = slots.get("mixer");
    if (made) say(made.note, mixerNote(next));
    live();
  };
  return { box, update, live };
}

/** What is drawn, in the order of the water. */
function places(line) {
  const part = (role) => line.parts.find((each) => each.role === role);
  const mixed = line.mixer.kind !== "none";
  const list = [{ role: "source", name: part("source")?.title ?? "Water", measured: part("source") }];
  if (mixed) {
    list.push({
      role: part("tank") ? "tank" : "stock",
      name: part("tank")?.title ?? "Stock",
      measured: part("tank"),
      side: true,
      note: part("tank") ? "" : "not measured",
    });
    list.push({
      role: line.mixer.kind,
      slot: "mixer",
      name: line.mixer.kind === "injector" ? "Injector" : "Siphon mixer",
      value:
        line.mixer.kind === "injector" ? `1 L makes ${line.mixer.setting} L` : `dial at ${line.mixer.setting}`,
    });
  } else if (part("tank")) {
    list.push({ role: "tank", name: part("tank").title, measured: part("tank") });
  }
  list.push({ role: "line", name: part("line")?.title ?? "Line", measured: part("line") });
  if (part("drain")) list.push({ role: "drain", name: part("drain").title, measured: part("drain") });
  return list;
}

function element(place, slots) {
  const value = h("p", { class: "value" }, place.value ?? "");
  const note = h("p", { class: "plain soft" }, place.note ?? "");
  const mark = s(
    "svg",
    { viewBox: "0 0 44 44", width: "44", height: "44", "aria-hidden": "true" },
    DRAWINGS[place.role].map((d) => s("path", { d })),
  );
  const item = h(
    "li",
    { class: place.side ? "part side" : "part", "data-role": place.role },
    h("span", { class: "mark" }, mark),
    h("div", {}, h("p", { class: "name" }, place.name), value, note),
  );
  slots.set(place.slot ?? place.measured?.role ?? place.role, { item, value, note });
  return item;
}

/** The same point as the stream tells it, if it has said something. */
function latest(part) {
  const point = state.points().find((each) => each.name === part.point);
  return point ? { ...part, ...point, time: point.time ?? part.time } : part;
}

function write(slot, reading) {
  if (!slot) return;
  const stale = reading.state !== "reading";
  slot.item.classList.toggle("stale", stale);
  const value = reading.conductivity25_mS_cm;
  say(slot.value, known(value) ? `${conductivity(value)} mS/cm` : "–");
  const warm = known(reading.temperature_C) ? temperature(reading.temperature_C) : "";
  say(slot.note, stale ? (reading.state === "missing" ? "no reading now" : "nothing yet") : warm);
}

function mixerNote(line) {
  if (line.mixer.kind !== "injector" || !known(line.ratio)) return line.state_words;
  const really = `really ${line.ratio.toFixed(0)} ± ${Math.max(1, line.ratio_plus_minus ?? 0).toFixed(0)} L`;
  // Turned to another strength, the injector is set to something else than is configured.
  const turned = known(line.ratio_expected) && Math.abs(line.ratio_expected / line.mixer.setting - 1) > 0.05;
  return turned ? `now to ${line.ratio_expected.toFixed(0)} L, ${really}` : really;
}
