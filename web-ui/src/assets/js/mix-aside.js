/** What is answered beside a mix: one salt more, the fallback without a meter, checks of the injector. */

import { api } from "./api.js";
import { h, say } from "./dom.js";
import { conductivity, known } from "./format.js";
import { list, rate } from "./mix-answer.js";
import { amountOf } from "./mix-bars.js";
import { whoLine } from "./who.js";

export function supplementOf(supplement) {
  return h(
    "article",
    { class: "mix-sheet", "data-supplement": true },
    h("h3", {}, "One salt more"),
    figure(supplement.grams, supplement.grams_per_litre, supplement.title),
    h(
      "ul",
      { class: "plain" },
      supplement.adds.map((each) =>
        h(
          "li",
          { "data-adds": each.symbol },
          `${each.symbol} +${amountOf(each.adds)} mg/L`,
          each.oxide ? ` (${each.oxide} +${amountOf(each.adds_oxide)})` : "",
          known(each.total) ? `: ${amountOf(each.total)} in all` : "",
          ceilingWords(each),
        ),
      ),
    ),
    h(
      "p",
      { class: "plain" },
      `It raises the strength by ${conductivity(supplement.strength_added)} mS/cm.`,
    ),
    list("Notes", supplement.notes, "notes"),
    list("Cautions", supplement.cautions, "cautions"),
    journalling(supplement.journal),
  );
}

function ceilingWords({ total, ceiling }) {
  if (!known(ceiling)) return "";
  if (known(total) && total > ceiling) return ` ▲ above the usual ceiling of ${amountOf(ceiling)}`;
  return `, usual ceiling ${amountOf(ceiling)}`;
}

function journalling(line) {
  const who = whoLine();
  const outcome = h("p", { class: "plain", role: "status" });
  const button = h("button", { type: "button" }, "Keep it in the journal");
  button.addEventListener("click", async () => {
    const author = who.name();
    if (!author) return;
    button.disabled = true;
    try {
      await api.note({ author, text: line });
      say(outcome, "● In the journal.");
    } catch (trouble) {
      button.disabled = false;
      say(outcome, `■ ${trouble.errors[0]?.message ?? trouble.message}`);
    }
  });
  return h(
    "div",
    { class: "journalling needs-act" },
    h("p", { class: "plain soft" }, line),
    who.box,
    h("div", { class: "buttons" }, button),
    outcome,
  );
}

export function fallbackOf(fallback) {
  return h(
    "article",
    { class: "mix-sheet", "data-fallback": true },
    h("h3", {}, "Without a meter to trust"),
    figure(fallback.grams, fallback.grams_per_litre, fallback.text),
    h(
      "ul",
      { class: "plain" },
      fallback.reasons.map((each) => h("li", {}, each)),
    ),
    list("Cautions", fallback.cautions, "cautions"),
  );
}

export function checksOf(checks) {
  return h(
    "article",
    { class: "mix-sheet", "data-checks": true },
    h("h3", {}, "Checked"),
    checks.map((each) => h("p", { class: "lead" }, each.text)),
  );
}

function figure(grams, perLitre, words) {
  const text = known(grams) ? `${amountOf(grams)} g` : `${rate(perLitre)} g/L`;
  return h(
    "ul",
    { class: "weigh" },
    h(
      "li",
      {},
      h("b", { class: "grams", "data-grams": true }, text),
      h("span", { class: "of plain" }, words, h("small", {}, `${rate(perLitre)} g in a litre`)),
    ),
  );
}
