/** A form that stays out of the way until somebody asks for it. */

import { h, say } from "./dom.js";

/** {box, button, show(open)}; opened() is told when it opens. */
export function disclosure(words, closing, form, opened = () => {}) {
  form.hidden = true;
  const button = h(
    "button",
    { type: "button", class: "second needs-act", "aria-expanded": "false" },
    words,
  );
  const show = (open) => {
    form.hidden = !open;
    button.setAttribute("aria-expanded", String(open));
    say(button, open ? closing : words);
    if (open) opened();
  };
  button.addEventListener("click", () => show(form.hidden));
  return { box: h("div", { class: "disclosure" }, button, form), button, show };
}
