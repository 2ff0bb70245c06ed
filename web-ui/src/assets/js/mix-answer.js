/** The answer: grams first, then what the meter will show, then all that stands behind it. */

import { h } from "./dom.js";
import { conductivity, known, sureTo } from "./format.js";
import { amountOf, nutrientBars } from "./mix-bars.js";
import { curveDrawing } from "./mix-curve.js";

/** The sheet of a mix as it is on the screen and on paper. */
export function sheetOf(sheet, heading) {
  const grams = sheet.weigh.reduce((sum, each) => sum + each.grams_per_litre, 0);
  return h(
    "article",
    { class: "mix-sheet", "data-sheet": true },
    h(
      "header",
      {},
      h("h3", { "data-mix-title": true }, sheet.title),
      h("p", { class: "plain" }, `${sheet.volume.text}, given ${sheet.frequency}`),
      h("p", { class: "plain paper-only" }, heading),
    ),
    weigh(sheet),
    shows(sheet),
    list("▲ Not as wanted", sheet.binding, "binding"),
    steps(sheet),
    stocks(sheet.stocks),
    h(
      "section",
      { "data-nutrients": true },
      h("h4", {}, "In the feed"),
      ...nutrientBars(sheet.nutrients),
      onPaper(sheet.nutrients),
    ),
    sheet.curve.length > 1
      ? h(
          "section",
          { class: "screen-only" },
          h("h4", {}, "Strength against grams"),
          curveDrawing(sheet.curve, grams, sheet.strength.total),
        )
      : null,
    list("Notes", sheet.notes, "notes"),
    list("Cautions", sheet.cautions, "cautions"),
  );
}

/** One line for the foot of a phone and for the ear. */
export function inShort(sheet) {
  const first = sheet.weigh[0] ? figureOf(sheet.weigh[0].text).figure : "nothing to weigh";
  const rest = sheet.weigh.length > 1 ? ` and ${sheet.weigh.length - 1} more` : "";
  return `${first}${rest} · meter ${sheet.meter.text.split(" at ")[0]}`;
}

/** "141 level spoons (677 g; a spoon …)": the figure, and what is said of it. */
function figureOf(text) {
  const at = text.indexOf(" (");
  if (at < 0) return { figure: text, note: "" };
  return { figure: text.slice(0, at), note: text.slice(at + 2).replace(/\)$/, "") };
}

function weigh({ weigh: all, acid }) {
  return h(
    "section",
    {},
    h("h4", { class: "visually-hidden" }, "Weigh"),
    h(
      "ul",
      { class: "weigh" },
      all.map((each) => {
        const { figure, note } = figureOf(each.text);
        return h(
          "li",
          { "data-weigh": each.product },
          h("span", { class: "box paper-only", "aria-hidden": "true" }, "☐"),
          h("b", { class: "grams", "data-grams": true }, figure),
          h(
            "span",
            { class: "of plain" },
            h("span", {}, each.stock ? `${each.title}, into the ${each.stock}` : each.title),
            h(
              "small",
              {},
              [note, `${rate(each.grams_per_litre)} g in a litre of feed`]
                .filter(Boolean)
                .join("; "),
            ),
          ),
        );
      }),
      acid
        ? h(
            "li",
            { "data-acid": true },
            h("span", { class: "box paper-only", "aria-hidden": "true" }, "☐"),
            h("b", { class: "grams" }, acid.text.split(" of ")[0]),
            h("span", { class: "of plain" }, h("span", {}, acid.text)),
          )
        : null,
    ),
  );
}

function shows({ meter, strength, water }) {
  const parts = [
    `${conductivity(strength.total)} mS/cm at 25 °C`,
    known(strength.uncertainty) ? sureTo(2 * strength.uncertainty) : "",
  ];
  return h(
    "section",
    { class: "shows" },
    h("p", { class: "lead" }, "Your meter will show ", h("b", { "data-meter": true }, meter.text)),
    h(
      "p",
      { class: "plain" },
      `Strength ${parts.filter(Boolean).join(" ")}: water ${conductivity(strength.water)}, added by feed ${conductivity(strength.added)}`,
    ),
    sourceWater(water),
  );
}

/** Two ways to know the water, side by side; nothing where there is only one. */
function sourceWater({ measured, predicted, imbalance_percent: apart }) {
  if (!known(measured) || !known(predicted) || Math.abs(measured - predicted) < 0.001) return null;
  const charges = known(apart) ? ` (charges ${amountOf(Math.abs(apart))} % apart)` : "";
  return h(
    "p",
    { class: "plain" },
    `Source water: measured ${conductivity(measured)}, its report makes ${conductivity(predicted)} mS/cm${charges}`,
  );
}

function steps({ steps: all }) {
  return h(
    "section",
    {},
    h("h4", {}, "Mixing sheet"),
    h(
      "ol",
      { class: "steps", "data-steps": true },
      all.map((each) => h("li", {}, each.text, reads(each))),
    ),
  );
}

function reads({ shown, at25, at_tank: atTank }) {
  if (!shown) return null;
  return h(
    "small",
    { class: "plain" },
    `then your meter: ${shown}; ${conductivity(at25)} mS/cm at 25 °C; ${conductivity(atTank)} uncompensated at tank temperature`,
  );
}

function stocks(all) {
  if (all.length === 0) return null;
  return h(
    "section",
    { "data-stocks": true },
    h("h4", {}, "Stock"),
    all.map((each) =>
      h(
        "div",
        { class: "stock plain" },
        h(
          "p",
          {},
          h("b", {}, `${each.name}: one litre makes ${amountOf(each.makes)} L`),
          ` (${rate(each.percent)} %, 1 part to ${amountOf(each.parts_water)} of water${known(each.dial) ? `, dial at ${amountOf(each.dial)}` : ""})`,
        ),
        h(
          "p",
          {},
          `A fill of ${amountOf(each.litres)} L serves ${amountOf(each.serves_litres)} L of feed${each.serves_pots > 0 ? `, ${amountOf(each.serves_pots)} pots` : ""}; ${amountOf(100 * each.saturation)} % of what dissolves on the coldest night${each.limiting ? ` (${each.limiting})` : ""}; dissolving cools it by ${amountOf(each.cools_by)} °C.`,
        ),
        h("p", {}, each.check),
      ),
    ),
  );
}

/** The bars in figures, for paper. */
function onPaper(nutrients) {
  const words = nutrients
    .filter((each) => each.total > 0)
    .map(
      (each) =>
        `${each.symbol} ${amountOf(each.total)}${each.oxide ? ` (${each.oxide} ${amountOf(each.total_oxide)})` : ""}`,
    );
  return h("p", { class: "plain paper-only" }, `In mg/L, water included: ${words.join(" · ")}`);
}

/** Sentences under a heading; nothing if there are none. */
export function list(title, sentences, name) {
  if (!sentences || sentences.length === 0) return null;
  return h(
    "section",
    { class: name, "data-list": name },
    h("h4", {}, title),
    h(
      "ul",
      { class: "plain" },
      sentences.map((each) => h("li", {}, each)),
    ),
  );
}

export function rate(value) {
  return known(value) ? String(Number(value.toPrecision(3))) : "–";
}
