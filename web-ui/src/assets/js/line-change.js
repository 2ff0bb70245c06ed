/** What was done to a feed line on purpose: only this lets the watch learn anew what is normal. */

import { api } from "./api.js";
import { h, say } from "./dom.js";
import { field, options, showErrors } from "./fields.js";
import { capital } from "./words.js";
import { whoLine } from "./who.js";

/** {box}; kept(line) is told how the line stands then. */
export function changeForm(line, choices, kept) {
  const who = whoLine();
  const outcome = h("p", { class: "error", role: "alert" });
  const form = h(
    "form",
    { class: "typed", hidden: true, novalidate: true, "aria-label": `A change to ${line.title}` },
    options(
      "change",
      choices.map(({ change, words, learns_anew: anew }) => ({
        value: change,
        words: capital(words),
        note: note(change, anew),
      })),
    ),
    field("note", "In your words (may be empty)", { maxlength: "1000" }),
    who.box,
    h("div", { class: "buttons" }, h("button", {}, "Log this change")),
    outcome,
  );
  const button = h(
    "button",
    { type: "button", class: "second needs-act", "aria-expanded": "false", "data-log-change": true },
    "Log a change",
  );
  const show = (open) => {
    form.hidden = !open;
    button.setAttribute("aria-expanded", String(open));
    say(button, open ? "Close without logging" : "Log a change");
    if (open) who.refresh();
  };
  button.addEventListener("click", () => show(form.hidden));
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    showErrors(form, []);
    say(outcome, "");
    if (!form.elements.change.value) {
      showErrors(form, [{ field: "change", message: "nothing is chosen; say what was done" }]);
      return;
    }
    const name = who.name();
    if (!name) return;
    const body = { who: name, change: form.elements.change.value, note: form.elements.note.value };
    const send = form.querySelector("button:not([type])");
    send.disabled = true;
    try {
      const now = await api.logLineChange(line.name, body);
      form.reset();
      show(false);
      kept(now);
    } catch (trouble) {
      say(outcome, showErrors(form, trouble.errors ?? []) || (trouble.errors?.length ? "" : trouble.message));
    } finally {
      send.disabled = false;
    }
  });
  return { box: h("div", { class: "log-change" }, h("p", {}, button), form) };
}

function note(change, anew) {
  if (change === "turned-off") return "Nothing is judged until the next change.";
  return anew ? "What is normal is learnt anew." : "What is normal stays as it is.";
}
