/** Pages that are not needed every day. */

import { h } from "./dom.js";

/** Name of the page, its title, what one finds there, and whether only who may act needs it. */
export const MORE = [
  ["checks", "Checks", "Check a probe or meter in standard solutions; which are due, and what was found.", false],
  ["setup", "Add a point", "A probe on a cable, or a place whose readings you type in.", true],
  ["lines", "Feed lines", "Source, mixer, line and drain, and whether the mixer drifts.", false],
  ["messages", "Messages", "Mail and webhooks: what was sent, and a test.", false],
  ["devices", "Devices", "Phones that may look, or look and act, and letting another in.", false],
];

export function more(page) {
  page.append(
    h("h2", {}, "More"),
    h(
      "ul",
      { class: "more-pages" },
      MORE.map(([name, title, words, act]) =>
        h(
          "li",
          { class: act ? "needs-act" : "" },
          h("a", { href: `#${name}` }, title),
          h("p", { class: "plain soft" }, words),
        ),
      ),
    ),
  );
  return { show() {} };
}
