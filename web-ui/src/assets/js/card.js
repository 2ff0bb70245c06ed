/** One point on the Now page. */

import { placesOf } from "./added.js";
import { h, say } from "./dom.js";
import { explanation } from "./explanation.js";
import { feeding } from "./feeding.js";
import { clockTime, conductivity, known, moment, span, sureTo, temperature } from "./format.js";
import { now } from "./clock.js";
import { ruler } from "./ruler.js";
import { typedForm } from "./typed.js";
import { verdict } from "./verdict.js";
import { capital, causeRemedy, sentence } from "./words.js";

/** {article, title, byHand, update(point, around) → words of a changed verdict, or null}. */
export function card(point) {
  const scale = ruler();
  const parts = {
    verdict: h("span", { class: "verdict plain", "data-verdict": true }),
    figure: h("span", { "data-figure": true }),
    unit: h("small"),
    added: h("p", { class: "added", "data-added": true, hidden: true }),
    say: h("p", { class: "say", "data-words": true, hidden: true }),
    sure: fact("sure to", "data-sure"),
    temperature: fact("water", "data-temperature"),
    age: fact("read", "data-age"),
    basis: h("dl"),
    made: explanation(point.name),
    feeding: feeding(point.name),
    scale,
  };
  const id = `point-${point.name}`;
  const article = h(
    "article",
    { class: "card", "data-point": point.name, "aria-labelledby": id },
    h("div", { class: "top" }, h("h2", { id }, point.title), parts.verdict),
    h("p", { class: "figure" }, parts.figure, parts.unit),
    parts.added,
    parts.say,
    scale.drawing,
    h("dl", { class: "facts plain" }, parts.sure.box, parts.temperature.box, parts.age.box),
    parts.feeding.box,
    more(point, parts),
  );
  let spoken = null;
  const update = (latest, around) => {
    const judged = verdict(latest, around.age, around.connected);
    write(article, parts, latest, judged, around);
    const words = `${judged.shape} ${judged.word}`;
    const changed = spoken !== null && spoken !== words;
    spoken = words;
    return changed ? judged.word : null;
  };
  return { article, title: point.title, byHand: !point.probe, update };
}

function more(point, parts) {
  const details = h(
    "details",
    {
      class: "basis",
      // The number of this moment: it stands still for reading while the entry above goes on.
      ontoggle: () => details.open && parts.made.load(parts.basis.dataset.time),
    },
    h("summary", {}, "How this number is made"),
    parts.basis,
    parts.made.box,
  );
  const history = h("a", { href: `#history/${point.name}` }, "History");
  const form = point.probe ? null : typedForm(point);
  return h(
    "div",
    { class: "more plain" },
    form ? form.button : null,
    history,
    details,
    form ? form.form : null,
  );
}

function write(article, parts, point, judged, around) {
  article.classList.toggle("stale", judged.stale);
  article.dataset.state = point.state;
  parts.verdict.className = `verdict plain ${judged.tone}`;
  say(parts.verdict, `${judged.shape} ${judged.word}`);
  writeFigure(parts, point);
  writeAdded(parts.added, point, around);
  writeWords(parts.say, point, judged, around);
  parts.feeding.update();
  say(parts.sure.value, sureTo(point.uncertainty_mS_cm));
  say(parts.temperature.value, temperature(point.temperature_C));
  writeAge(parts.age, point, judged, around.age);
  writeBasis(parts.basis, point);
  parts.scale.update({
    value: point.conductivity25_mS_cm,
    uncertainty: point.uncertainty_mS_cm,
    source: waterPart(point, around),
    band: point.band ?? null,
    end: around.end,
  });
}

function waterPart(point, { added, source }) {
  if (point.place === "source") return point.conductivity25_mS_cm;
  return added === null ? null : source.conductivity25_mS_cm;
}

function writeFigure(parts, point) {
  const referred = known(point.conductivity25_mS_cm);
  const shown = referred ? point.conductivity25_mS_cm : point.conductivity_mS_cm;
  say(parts.figure, conductivity(shown ?? null));
  say(
    parts.unit,
    referred || !known(shown) ? "mS/cm at 25 °C" : "mS/cm as it is, not referred to 25 °C",
  );
}

function writeAdded(line, point, { added, source }) {
  line.hidden = added === null;
  if (added === null) return;
  const old = source.state === "reading" ? "" : `, which was last read ${when(source)}`;
  const places = placesOf(point);
  const text =
    added < -0.005
      ? `${conductivity(-added, places)} below ${source.title.toLowerCase()}`
      : `${conductivity(added, places)} added by feed`;
  const less = `${source.title} ${conductivity(source.conductivity25_mS_cm)}${old}`;
  if (line.dataset.text === text + less) return;
  line.dataset.text = text + less;
  line.replaceChildren(`${text} `, h("small", {}, `(less ${less})`));
}

function when(point) {
  return point.time === null ? "before" : moment(Date.parse(point.time));
}

function writeWords(line, point, judged, around) {
  let words = "";
  if (point.state === "missing" && point.missing) {
    const what = sentence(capital(point.missing.words));
    words = `${what} ${causeRemedy(point.missing.cause)}`;
  } else if (point.state === "waiting" && point.probe) {
    words = "Nothing has arrived yet. The first reading shows here by itself.";
  } else if (point.flag_words.length > 0) {
    words = sentence(capital(point.flag_words.join("; ")));
  } else if (judged.silent && around.connected && point.origin !== "typed") {
    words = "The page hears nothing new of this point.";
  }
  line.hidden = words === "";
  say(line, words);
}

/** "read 2 s ago"; "typed 11:30, 3 h ago"; "nothing new since 14:02". */
function writeAge(slot, point, judged, age) {
  if (age === null) {
    say(slot.label, "read");
    say(slot.value, "not yet");
    return;
  }
  const time = point.time === null ? now() - age * 1000 : Date.parse(point.time);
  if (judged.silent && point.origin !== "typed") {
    say(slot.label, "nothing new");
    say(slot.value, `since ${moment(time)}`);
  } else {
    say(slot.label, point.origin === "typed" ? "typed" : "read");
    say(slot.value, age < 60 ? `${span(age)} ago` : `${moment(time)}, ${span(age)} ago`);
  }
}

function writeBasis(list, point) {
  list.dataset.time = point.time ?? "";
  const rows = [
    ["at its own temperature", `${conductivity(point.conductivity_mS_cm)} mS/cm`],
    ["compensation", point.basis?.compensation],
    ["calibration", point.basis?.calibration],
    ["profile", point.basis?.profile ?? point.probe?.profile],
    ["port", point.probe && port(point.probe)],
    ["record", point.id],
    ["taken", point.time && clockTime(Date.parse(point.time), true)],
  ].filter(([, value]) => value);
  const text = JSON.stringify(rows);
  const unseen = list.childElementCount > 0 && !list.parentElement.open;
  if (unseen || list.dataset.text === text) return;
  list.dataset.text = text;
  list.replaceChildren(...rows.flatMap(([name, value]) => [h("dt", {}, name), h("dd", {}, value)]));
}

function port(probe) {
  return probe.unit ? `${probe.link}, address ${probe.unit}` : probe.link;
}

function fact(label, hook) {
  const name = h("dt", {}, label);
  const value = h("dd");
  return { box: h("div", { [hook]: true }, name, " ", value), label: name, value };
}
