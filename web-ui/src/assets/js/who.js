/** Who acts here. Asked once, then remembered by this browser. */

import { h } from "./dom.js";

const KEY = "feedwitness-who";
const LONGEST = 80;

export function who() {
  try {
    return localStorage.getItem(KEY) ?? "";
  } catch {
    return "";
  }
}

function remember(name) {
  try {
    localStorage.setItem(KEY, name);
  } catch {
    // Asked again next time; nothing else depends on it.
  }
}

/** A paired phone acts under its name until somebody says otherwise. */
export function suggestWho(name) {
  if (!who()) remember(name);
}

/**
 * A line that says as whom one acts and lets one change it. name() gives the name; with none, it
 * opens the field, says what is missing, and gives an empty text.
 */
export function whoLine() {
  const id = `who-${Math.random().toString(36).slice(2)}`;
  const input = h("input", {
    type: "text",
    id,
    maxlength: String(LONGEST),
    autocomplete: "name",
    "data-who": true,
    "aria-describedby": `${id}-error`,
  });
  const error = h("p", { class: "error", id: `${id}-error` });
  const asked = h("div", { class: "field" }, h("label", { for: id }, "Your name"), input, error);
  const said = h("span");
  const change = h("button", { type: "button", class: "link", onclick: () => open(true) }, "not you?");
  const known = h("p", { class: "as" }, said, " ", change);
  const open = (ask) => {
    asked.hidden = !ask;
    known.hidden = ask;
    if (ask) input.focus();
  };
  const refresh = () => {
    said.textContent = `You are ${who()};`;
    asked.hidden = who() !== "";
    known.hidden = who() === "";
    input.value = who();
  };
  refresh();
  return {
    box: h("div", { class: "who plain" }, known, asked),
    refresh,
    name() {
      const typed = asked.hidden ? who() : input.value.trim();
      error.textContent = typed ? "" : "no name given; the record says who did what";
      if (!typed) {
        open(true);
        return "";
      }
      remember(typed);
      refresh();
      return typed;
    },
  };
}
