/** Pages that are not needed every day. */

import { h } from "./dom.js";

/** Name of the page, its title, and what one finds there. */
export const MORE = [
  ["setup", "Add a point", "A probe on a cable, or a place whose readings you type in."],
];

export function more(page) {
  page.append(
    h("h2", {}, "More"),
    h(
      "ul",
      { class: "more-pages" },
      MORE.map(([name, title, words]) =>
        h("li", {}, h("a", { href: `#${name}` }, title), h("p", { class: "plain soft" }, words)),
      ),
    ),
  );
  return { show() {} };
}
