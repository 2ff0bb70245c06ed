/** A probe beside a sample that a checked meter measured, or beside a reference thermometer. */

import { api } from "./api.js";
import { disclosure } from "./disclosure.js";
import { h, say } from "./dom.js";
import { field, options, showErrors } from "./fields.js";
import { conductivity, known, temperature, typedNumber } from "./format.js";
import { state } from "./state.js";
import { capital, sentence } from "./words.js";
import { whoLine } from "./who.js";

const SAMPLE = "grab-sample";
const SAMPLE_WARMTH = "Temperature of the sample, °C";
const METER = { pass: "passed its last check", fail: "failed its last check: check it first" };

/** {box, write(meters)}; kept(done) is told what came of it. */
export function compareForm(stand, kept) {
  const who = whoLine();
  const outcome = h("p", { class: "plain", role: "status", "data-compared": true });
  const trouble = h("p", { class: "error", role: "alert" });
  const live = h("p", { class: "plain", "data-reads-now": true });
  const meters = h("div", { "data-meters": true });
  const sample = h(
    "div",
    { class: "compare-part", "data-part": SAMPLE },
    h(
      "p",
      { class: "soft" },
      "Take the sample beside the probe: let the tap run, rinse the cup with it, measure at once. A closed pipe is under pressure: open its tap slowly.",
    ),
    meters,
    field("conductivity25_mS_cm", "The meter shows, mS/cm at 25 °C", { inputmode: "decimal" }),
  );
  const thermometer = h(
    "div",
    { class: "compare-part", "data-part": "thermometer", hidden: true },
    h("p", { class: "soft" }, "In the same water, close to the probe; wait until neither moves."),
    field("thermometer", "Which thermometer", { maxlength: "80", hint: "What is written on it, so that the record says which." }),
    field("accuracy_k", "Its own ±, K", { inputmode: "decimal", hint: "From its certificate; leave empty if not known, then ± 0.5 is taken." }),
  );
  const warmth = field("temperature_c", SAMPLE_WARMTH, { inputmode: "decimal" });
  const form = h(
    "form",
    { class: "typed compare", novalidate: true, "aria-label": `Compare ${stand.title}`, "data-compare": true },
    live,
    options("against", [
      { value: SAMPLE, words: "With a sample", note: "Measured with a meter that passed its own check.", checked: true },
      { value: "thermometer", words: "With a reference thermometer", note: "Temperature only." },
    ]),
    sample,
    thermometer,
    warmth,
    who.box,
    h("div", { class: "steps" }, h("button", {}, "Compare")),
    trouble,
  );
  const fold = disclosure("Compare without taking it out", "Close without comparing", form, () => {
    say(outcome, "");
    who.refresh();
  });
  form.addEventListener("change", () => {
    const isSample = form.elements.against.value === SAMPLE;
    sample.hidden = !isSample;
    thermometer.hidden = isSample;
    say(warmth.querySelector("label"), isSample ? SAMPLE_WARMTH : "The thermometer says, °C");
  });
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const { body, errors } = read(form);
    say(trouble, showErrors(form, errors));
    if (errors.length > 0) return;
    const name = who.name();
    if (!name) return;
    const send = form.querySelector("button:not([type])");
    send.disabled = true;
    try {
      const done = await api.compareProbe(stand.name, { who: name, ...body });
      form.reset();
      form.dispatchEvent(new Event("change"));
      fold.show(false);
      fold.button.focus();
      say(outcome, sentence(capital(done.words)));
      kept(done);
    } catch (failure) {
      say(trouble, sentence(capital(failureWords(form, failure))));
    } finally {
      send.disabled = false;
    }
  });
  let shown = "";
  return {
    box: h("div", { class: "compare-box" }, fold.box, outcome),
    write(all) {
      const point = state.points().find((each) => each.name === stand.name);
      say(live, reads(point));
      const text = JSON.stringify(all);
      if (text === shown) return;
      shown = text;
      meters.replaceChildren(meterChoice(all));
    },
  };
}

function reads(point) {
  return point && known(point.conductivity25_mS_cm)
    ? `The probe reads ${conductivity(point.conductivity25_mS_cm, 3)} mS/cm at 25 °C, ${temperature(point.temperature_C)} now.`
    : "The probe gives no reading now; it can be compared once it does.";
}

function meterChoice(all) {
  if (all.length === 0) {
    return h(
      "p",
      { class: "look" },
      "▲ No handheld meter is on record. ",
      h("a", { href: "#checks" }, "Check one in standards first"),
      ": a comparison is worth what the meter is worth.",
    );
  }
  return options(
    "name",
    all.map((meter, index) => ({
      value: meter.name,
      words: meter.title,
      note: METER[meter.verdict] ?? "its last check can’t tell: check it first",
      checked: index === 0,
    })),
  );
}

function read(form) {
  const errors = [];
  const number = (name, what, optional = false) => {
    const text = form.elements[name].value.trim();
    const value = typedNumber(text);
    if (value === null && !(optional && text === "")) {
      const said = text ? `‘${text}’ is not a number` : "nothing is typed";
      errors.push({ field: name, message: `${said}; type ${what}` });
    }
    return value;
  };
  const against = form.elements.against.value;
  const body = { against };
  if (against === SAMPLE) {
    body.name = form.elements.name?.value ?? "";
    if (!body.name) errors.push({ field: "name", message: "no meter is chosen" });
    body.conductivity25_mS_cm = number("conductivity25_mS_cm", "what the meter shows, such as 1.52");
  } else {
    body.name = form.elements.thermometer.value.trim();
    if (!body.name) errors.push({ field: "thermometer", message: "nothing is typed; say which thermometer it is" });
    body.accuracy_k = number("accuracy_k", "kelvin, such as 0.1, or leave it empty", true);
  }
  body.temperature_c = number("temperature_c", "degrees Celsius, such as 19.5");
  return { body, errors };
}

function failureWords(form, failure) {
  const errors = (failure.errors ?? []).map((each) =>
    each.field === "name" && form.elements.against.value !== SAMPLE ? { ...each, field: "thermometer" } : each,
  );
  return showErrors(form, errors) || (errors.length > 0 ? "" : failure.message);
}
