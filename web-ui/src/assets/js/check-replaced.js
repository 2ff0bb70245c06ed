/** Another probe or cell hangs there: chart and interval begin anew. */

import { disclosure } from "./disclosure.js";
import { h } from "./dom.js";
import { field } from "./fields.js";
import { whoLine } from "./who.js";

/** The box; act(deed, body) does it and answers with the trouble or null. */
export function replacedForm(stand, act) {
  const who = whoLine();
  const form = h(
    "form",
    { class: "typed", novalidate: true, "aria-label": `${stand.title} was replaced`, "data-replaced": true },
    h(
      "p",
      { class: "soft" },
      "What checks said of the old one says nothing of the new one: its adjustment is no longer used, the chart and the interval begin anew. Nothing recorded is changed.",
    ),
    field("what", "What hangs there now (may be empty)", { maxlength: "1000", hint: "Such as: new cell, serial number 4711." }),
    who.box,
    h("div", { class: "steps" }, h("button", {}, "Log that it was replaced")),
  );
  const words = stand.kind === "meter" ? "This meter was replaced" : "The probe was replaced";
  const fold = disclosure(words, "Close without logging", form, who.refresh);
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const name = who.name();
    if (!name) return;
    const trouble = await act("replaced", { who: name, note: form.elements.what.value.trim() });
    if (!trouble) {
      form.reset();
      fold.show(false);
    }
  });
  return fold.box;
}
