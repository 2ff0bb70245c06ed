/** How a number is made, step by step, with its budget of doubt line by line. */

import { api } from "./api.js";
import { h } from "./dom.js";
import { full, known } from "./format.js";
import { capital, sentence } from "./words.js";

const TITLES = {
  octets: "came",
  indication: "said",
  basis: "made with",
  correction: "corrected",
  compensation: "at 25 °C",
  uncertainty: "sure to",
  flags: "judged",
  later: "said later",
};

/** {box, load(time)}: explains the last sample of a point at or before a time (a Date or text). */
export function explanation(name) {
  const box = h("div", { class: "explanation", "data-explanation": name, "aria-live": "polite" });
  let asked = 0;
  const load = async (time) => {
    const mine = ++asked;
    if (box.childElementCount === 0) box.replaceChildren(h("p", {}, "asking the service …"));
    try {
      const explained = await api.explain(name, time);
      if (mine === asked) box.replaceChildren(...write(explained));
    } catch (trouble) {
      if (mine === asked) box.replaceChildren(h("p", {}, sentence(capital(trouble.message))));
    }
  };
  return { box, load };
}

function write(explained) {
  const when = explained.time ? full(Date.parse(explained.time)) : "a time not known yet";
  return [
    h("p", {}, `The number of ${when}, record ${explained.id}:`),
    h(
      "dl",
      { "data-steps": true },
      explained.steps.flatMap((each) => [
        h("dt", {}, TITLES[each.step] ?? each.step),
        h("dd", { "data-step": each.step }, each.words),
      ]),
    ),
    explained.budget.length > 0 ? budget(explained.budget) : null,
  ].filter(Boolean);
}

function budget(lines) {
  const heads = ["Doubt from", "Stated", "÷", "× sensitivity", "= ± mS/cm", "Share"];
  return h(
    "div",
    { class: "wide", tabindex: "0", role: "group", "aria-label": "Where the doubt comes from" },
    h(
      "table",
      { "data-budget": true },
      h("caption", {}, "Where the doubt comes from; the squares of the parts add up"),
      h("thead", {}, h("tr", {}, heads.map((head) => h("th", { scope: "col" }, head)))),
      h("tbody", {}, lines.map(line)),
    ),
  );
}

function line(each) {
  const stated = `${number(each.value)} ${each.unit}`;
  return h(
    "tr",
    { "data-source": each.source },
    h("th", { scope: "row" }, each.words),
    h("td", {}, each.assumed ? `${stated}, our assumption` : stated),
    h("td", {}, number(each.divisor)),
    h("td", {}, number(each.sensitivity)),
    h("td", {}, number(each.contribution_mS_cm)),
    h("td", {}, known(each.share) ? `${Math.round(each.share * 100)} %` : ""),
  );
}

function number(value) {
  if (!known(value)) return "unknown";
  return String(Number(value.toPrecision(3))).replace("-", "\u2212");
}
