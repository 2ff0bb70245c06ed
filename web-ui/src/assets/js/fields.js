/** Form fields with a place for what is wrong with each, and readers that forgive a comma. */

import { h } from "./dom.js";

let serial = 0;

/** A labelled input or select; options [[value, words], …] make it a select. */
export function field(name, label, { hint = "", options = null, ...attributes } = {}) {
  const id = `field-${++serial}`;
  const control = options
    ? h(
        "select",
        { id, name, ...attributes },
        options.map(([value, words]) => h("option", { value }, words)),
      )
    : h("input", { id, name, type: "text", autocomplete: "off", ...attributes });
  control.setAttribute("aria-describedby", `${id}-error`);
  return h(
    "div",
    { class: "field", "data-field": name },
    h("label", { for: id }, label),
    control,
    hint ? h("small", {}, hint) : null,
    h("p", { class: "error", id: `${id}-error`, "data-error": name }),
  );
}

/** Radio buttons as tall lines: choices [{value, words, note, checked}]. */
export function options(name, choices) {
  const id = `field-${++serial}-error`;
  return h(
    "div",
    { class: "field", "data-field": name },
    h(
      "div",
      { class: "options" },
      choices.map((choice) => option(name, choice, id)),
    ),
    h("p", { class: "error", id, "data-error": name }),
  );
}

export function option(name, { value, words, note = "", checked = false }, describedBy = null) {
  return h(
    "label",
    { class: "option" },
    h("input", { type: "radio", name, value, checked, "aria-describedby": describedBy }),
    h("span", {}, words, note ? h("small", {}, note) : null),
  );
}

/**
 * Shows problems beside their fields and brings the first into view; those of no field here are
 * returned as one text.
 */
export function showErrors(form, errors) {
  for (const place of form.querySelectorAll("[data-error]")) place.textContent = "";
  for (const control of form.querySelectorAll("[aria-invalid]")) {
    control.removeAttribute("aria-invalid");
  }
  const homeless = [];
  let first = null;
  for (const { field: name, message } of errors) {
    const place = form.querySelector(`[data-error="${CSS.escape(name)}"]`);
    if (!place || place.closest("[hidden]")) {
      homeless.push(message);
      continue;
    }
    place.textContent = message;
    const controls = form.querySelectorAll(`[name="${CSS.escape(name)}"]`);
    for (const control of controls) control.setAttribute("aria-invalid", "true");
    first ??= [...controls].find((control) => control.checked) ?? controls[0] ?? null;
  }
  first?.focus();
  return homeless.join(" ");
}
