/** The lists of the mix: products to weigh, nutrients wanted, settings of a dial. */

import { h } from "./dom.js";
import { field } from "./fields.js";
import { amount, NUTRIENTS, only, pair, whole } from "./mix-fields.js";

const MOST_USES = 8;
const MOST_NUTRIENTS = 14;
const MOST_POINTS = 8;
const WISHES = [
  ["2", "wanted"],
  ["1", "wanted first"],
  ["3", "if it can be"],
  ["most", "at most"],
];
const USUAL_NUTRIENTS = ["N", "P2O5", "K2O", "Ca", "Mg", "S"];

/** A list that grows and shrinks: {box, draw()}; changed() is called after it did. */
function list(state, key, { row, most, words, changed }) {
  const rows = h("div", { class: "rows" });
  const more = h(
    "button",
    { type: "button", class: "second", onclick: () => resize(1) },
    words.more,
  );
  const fewer = h(
    "button",
    { type: "button", class: "second", onclick: () => resize(-1) },
    words.fewer,
  );
  const draw = () => {
    rows.replaceChildren(...Array.from({ length: state[key] }, (_, index) => row(index + 1)));
    more.hidden = state[key] >= most;
    fewer.hidden = state[key] <= 1;
  };
  function resize(by) {
    state[key] = Math.min(most, Math.max(1, state[key] + by));
    draw();
    changed();
    if (by > 0) rows.lastChild.querySelector("select, input")?.focus();
    else if (fewer.hidden) more.focus();
  }
  draw();
  return {
    box: h("div", { class: "list" }, rows, h("div", { class: "buttons" }, more, fewer)),
    draw,
  };
}

/** A select of products, own ones first, or a formula; its options are filled in by offer(). */
export function productField(name, label) {
  const box = field(name, label, { options: [["", "choose …"]], "data-products": true });
  box.lastChild.before(
    only(
      `formula:${name}`,
      amount(`~${name}.formula`, "Its formula, with its water", "As the bag says: MgSO4·7H2O."),
    ),
  );
  return box;
}

export function uses(state, changed) {
  const row = (n) =>
    h(
      "div",
      { class: "use", "data-use": String(n) },
      productField(`use[${n}].product`, state.uses > 1 ? `Product ${n}` : "Product"),
      whole(`use[${n}]`),
      only("use:rate", amount(`use[${n}].rate`, "Grams in a litre of feed", "In g/L.")),
      only("use:part", amount(`use[${n}].part`, "Its share by weight", "1 if empty.")),
      h(
        "details",
        { class: "plain" },
        h("summary", {}, "A spoon for a scale, purity, limit"),
        amount(
          `use[${n}].spoon`,
          "A level spoon of it weighs",
          "In g, weighed once; then spoons are counted.",
        ),
        pair(
          amount(`use[${n}].purity`, "Purity", "In %; may be empty."),
          amount(`use[${n}].most`, "No more than", "In g/L; may be empty."),
        ),
      ),
    );
  const words = { more: "Another product", fewer: "One product less" };
  return list(state, "uses", { row, most: MOST_USES, words, changed });
}

export function nutrients(state, changed) {
  const row = (n) => {
    const options = NUTRIENTS.map((each) => [each, each]);
    const symbol = field(`~nutrient[${n}].symbol`, "Nutrient", { options });
    symbol.querySelector("select").value = USUAL_NUTRIENTS[n - 1] ?? NUTRIENTS[0];
    return h(
      "div",
      { class: "wish" },
      symbol,
      amount(`~nutrient[${n}].amount`, "mg/L"),
      field(`~nutrient[${n}].how`, "It is", { options: WISHES }),
    );
  };
  const words = { more: "Another nutrient", fewer: "One nutrient less" };
  return list(state, "nutrients", { row, most: MOST_NUTRIENTS, words, changed });
}

export function dialPoints(state, changed) {
  const row = (n) =>
    h(
      "div",
      { class: "pair even" },
      amount(`stock.dial_points[${n}].dial`, "Dial at"),
      amount(`stock.dial_points[${n}].makes`, "One litre made", "In L."),
    );
  const words = { more: "Another setting", fewer: "One setting less" };
  return list(state, "points", { row, most: MOST_POINTS, words, changed });
}

/** Fills every select of products, keeping what is chosen. */
export function offer(form, fertilizers, state) {
  const title = (index) => state.values[`product[${index + 1}].title`] || "A product of your own";
  const own = state.products.map(({ id }, index) => [id, title(index)]);
  const kind = (wanted) =>
    fertilizers.filter((each) => each.kind === wanted).map((each) => [each.id, each.title]);
  const groups = [
    ["Your own", own],
    ["Complete feeds", kind("compound")],
    ["Straight salts", [...kind("salt"), ["~formula", "another salt, by its formula …"]]],
  ];
  for (const select of form.querySelectorAll("select[data-products]")) {
    const chosen = select.value || state.values[select.name] || "";
    select.replaceChildren(
      h("option", { value: "" }, "choose …"),
      ...groups
        .filter(([, all]) => all.length > 0)
        .map(([label, all]) =>
          h(
            "optgroup",
            { label },
            all.map(([value, words]) => h("option", { value }, words)),
          ),
        ),
    );
    select.value = chosen;
    if (select.selectedIndex < 0) select.value = "";
  }
}
