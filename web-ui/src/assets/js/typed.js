/** A reading typed in at a point without a probe. */

import { api } from "./api.js";
import { h } from "./dom.js";
import { field, options, showErrors } from "./fields.js";
import { conductivity, typedNumber } from "./format.js";
import { state } from "./state.js";

const UNITS = ["mS/cm", "µS/cm", "dS/m", "mS/m", "CF"].map((unit) => [unit, unit]);
const DEGREES = [
  ["°C", "°C"],
  ["°F", "°F"],
];

/** {button, form}: the button opens and closes the form. */
export function typedForm(point) {
  const outcome = h("p", { role: "status" });
  const form = h(
    "form",
    {
      class: "typed",
      hidden: true,
      novalidate: true,
      "aria-label": `Type a reading for ${point.title}`,
    },
    h(
      "div",
      { class: "pair" },
      field("conductivity", "The meter shows", { inputmode: "decimal" }),
      field("unit", "Unit", { options: UNITS }),
    ),
    h(
      "div",
      { class: "pair" },
      field("temperature", "Water temperature", {
        inputmode: "decimal",
        hint: "Leave empty if not known.",
      }),
      field("temperature_unit", "Degrees", { options: DEGREES }),
    ),
    h("p", { class: "label" }, "Does the meter already show the value at 25 °C?"),
    options("compensated", [
      {
        value: "to-25",
        words: "Yes",
        note: "Most pen meters do; the manual says ATC.",
        checked: true,
      },
      {
        value: "not-at-all",
        words: "No, as it is at the water’s temperature",
        note: "Then the temperature is needed.",
      },
    ]),
    h("div", { class: "buttons" }, h("button", {}, "Keep this reading")),
    outcome,
  );
  const button = h(
    "button",
    { type: "button", class: "second needs-act", "aria-expanded": "false" },
    "Type a reading",
  );
  const show = (open) => {
    form.hidden = !open;
    button.setAttribute("aria-expanded", String(open));
    button.textContent = open ? "Close without keeping" : "Type a reading";
  };
  button.addEventListener("click", () => {
    show(form.hidden);
    if (!form.hidden) form.elements.conductivity.focus();
  });
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    if (await keep(point.name, form, outcome)) {
      show(false);
      button.focus();
    }
  });
  return { button, form };
}

async function keep(name, form, outcome) {
  const { reading, errors } = read(form);
  outcome.textContent = showErrors(form, errors);
  if (errors.length > 0) return false;
  const submit = form.querySelector("button");
  submit.disabled = true;
  try {
    const kept = await api.typeReading(name, reading);
    state.setPoint(kept);
    form.reset();
    outcome.textContent = `Kept: ${conductivity(kept.conductivity25_mS_cm)} mS/cm at 25 °C.`;
    return true;
  } catch (trouble) {
    outcome.textContent = showErrors(form, trouble.errors ?? []) || trouble.message;
    return false;
  } finally {
    submit.disabled = false;
  }
}

function read(form) {
  const { conductivity: value, unit, temperature, temperature_unit: degrees } = form.elements;
  const errors = [];
  const number = typedNumber(value.value);
  if (number === null) {
    const said = value.value.trim() ? `‘${value.value}’ is not a number` : "no value given";
    errors.push({
      field: "conductivity",
      message: `${said}; type what the meter shows, such as 1.50`,
    });
  }
  const warmth = temperature.value.trim() ? typedNumber(temperature.value) : null;
  if (temperature.value.trim() && warmth === null) {
    errors.push({
      field: "temperature",
      message: `‘${temperature.value}’ is not a number; type degrees such as 18.5, or leave it empty`,
    });
  }
  const reading = {
    conductivity: number,
    unit: unit.value,
    temperature: warmth,
    temperature_unit: degrees.value,
    compensated: form.elements.compensated.value,
  };
  return { reading, errors };
}
