/** One check on one page, to be printed and filed. */

import { h } from "./dom.js";
import { capital } from "./words.js";

export function checkRecord(record) {
  return h(
    "article",
    { class: "check-record", "data-record": record.id },
    h("h3", {}, record.title),
    h(
      "p",
      { class: "buttons plain" },
      h("button", { type: "button", onclick: () => print() }, "Print"),
      " ",
      h("a", { class: "button second no-print", href: "#checks" }, "Back"),
    ),
    record.sections.map((section) =>
      h(
        "section",
        {},
        h("h4", {}, capital(section.title)),
        h(
          "dl",
          { class: "plain" },
          section.lines.map((line) => h("div", {}, h("dt", {}, capital(line.label)), h("dd", {}, line.value))),
        ),
      ),
    ),
    h(
      "p",
      { class: "plain signature" },
      "Checked by ______________________  Seen by ______________________",
    ),
  );
}
