/** Begins a check: which bottles, and who. */

import { h, say } from "./dom.js";
import { who as known, whoLine } from "./who.js";
import { capital, sentence } from "./words.js";

/** {box, write(detail)} */
export function checkForm(stand, bottles, act) {
  const who = whoLine();
  const standing = h("p", { class: "plain", "data-standing": true });
  const objections = h("p", { class: "error", role: "alert", "data-objections": true });
  const anyway = h("button", { type: "button", class: "second", hidden: true, "data-anyway": true }, "I have read that; begin");
  const back = h("button", { type: "button", hidden: true, "data-step": "returned" }, "It is back in its place");
  const choices = bottles.map((bottle) => {
    const id = `bottle-${bottle.name}`;
    return h(
      "label",
      { class: "option", for: id },
      h("input", { type: "checkbox", id, name: "standards", value: bottle.name }),
      h("span", {}, bottle.title, bottle.warnings.map((words) => h("small", {}, sentence(words)))),
    );
  });
  const form = h(
    "form",
    { class: "begin plain needs-act", novalidate: true, "data-begin": true },
    h("h3", {}, "Begin a check"),
    bottles.length > 0
      ? h("p", { class: "soft" }, "Bottles in your hand, two if you have them:")
      : h("p", { class: "soft" }, "There is no standard on the shelf; write a [[standard]] table into the configuration first."),
    h("div", { class: "options" }, choices),
    who.box,
    h("div", { class: "steps" }, h("button", { disabled: bottles.length === 0 }, "Begin")),
    objections,
    anyway,
  );
  async function begin(confirmed) {
    const name = who.name();
    if (!name) return;
    const standards = [...form.querySelectorAll("[name=standards]:checked")].map((box) => box.value);
    if (standards.length === 0 || standards.length > 2) {
      say(objections, "Choose the two bottles you take, or one if there is only one.");
      return;
    }
    const trouble = await act("begin", { who: name, standards, confirmed });
    say(objections, trouble ? sentence(capital(trouble.message)) : "");
    anyway.hidden = !trouble?.errors.some((error) => error.field === "confirmed");
  }
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    begin(false);
  });
  anyway.addEventListener("click", () => begin(true));
  back.addEventListener("click", () => {
    const name = who.name();
    if (name) act("returned", { who: name });
  });
  return {
    box: h("section", { class: "guide" }, standing, h("div", { class: "steps needs-act" }, back), form),
    write({ stand: now }) {
      if (known() && !form.contains(document.activeElement)) who.refresh();
      say(
        standing,
        now.aside
          ? "Put the probe back. Its readings count again as soon as they look like its place, or when you say so."
          : sentence(capital(now.status === "never-checked" ? now.words : `${now.status.replace("-", " ")}; ${now.due_at ? "" : now.words}`.replace(/; $/, ""))),
      );
      back.hidden = !now.aside;
      form.hidden = Boolean(now.aside);
    },
  };
}
