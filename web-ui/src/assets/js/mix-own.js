/** The grower's own products, as their labels say; kept by this browser and sent along. */

import { h } from "./dom.js";
import { field } from "./fields.js";
import { amount, only, pair, whole } from "./mix-fields.js";

const MOST = 20;
const LABEL = [
  "N",
  "nitrate-N",
  "ammonium-N",
  "urea-N",
  "P2O5",
  "K2O",
  "MgO",
  "CaO",
  "SO3",
  "P",
  "K",
  "Mg",
  "Ca",
  "S",
  "Fe",
  "Mn",
  "Zn",
  "Cu",
  "B",
  "Mo",
];
const ELEMENTS_FROM = LABEL.indexOf("P");
const KINDS = [
  ["label", "a feed, by its label"],
  ["formula", "a straight salt, by its formula"],
];

/** {box, draw()}; changed() is called when a product came or went. */
export function ownProducts(state, changed) {
  const rows = h("div", { class: "rows" });
  const undo = h("p", { class: "plain", role: "status" });
  const add = h("button", { type: "button", class: "second" }, "A product of your own");
  const draw = () => {
    rows.replaceChildren(
      ...state.products.map((_, index) => product(index + 1, () => remove(index))),
    );
    add.hidden = state.products.length >= MOST;
  };
  const remove = (index) => {
    const before = { products: [...state.products], values: { ...state.values } };
    take(state, index);
    draw();
    changed();
    undo.replaceChildren(
      "Forgotten. ",
      h(
        "button",
        {
          type: "button",
          class: "link",
          onclick: () => {
            Object.assign(state, before);
            undo.replaceChildren();
            draw();
            changed();
          },
        },
        "Bring it back",
      ),
    );
    undo.querySelector("button").focus();
  };
  add.addEventListener("click", () => {
    const taken = state.products.map(({ id }) => Number(id.slice(4)));
    state.products.push({ id: `own-${Math.max(0, ...taken) + 1}` });
    undo.replaceChildren();
    draw();
    changed();
    const made = rows.lastChild;
    made.open = true;
    made.querySelector("input[type=text]").focus();
  });
  draw();
  return {
    box: h("div", { class: "list" }, rows, undo, h("div", { class: "buttons" }, add)),
    draw,
  };
}

/** Takes one out; those behind it move up. */
function take(state, index) {
  state.products.splice(index, 1);
  const values = {};
  for (const [name, value] of Object.entries(state.values)) {
    const at = /^(~?product\[)(\d+)(\].*)$/.exec(name);
    const place = at ? Number(at[2]) : 0;
    if (!at || place <= index) values[name] = value;
    else if (place > index + 1) values[`${at[1]}${place - 1}${at[3]}`] = value;
  }
  state.values = values;
}

function product(n, forget) {
  const path = `product[${n}]`;
  const title = h("span", { "data-title-of": path }, "A product of your own");
  const percent = (symbol) => amount(`${path}.label.${symbol}`, symbol);
  return h(
    "details",
    { class: "plain own", "data-own": String(n) },
    h("summary", {}, title),
    whole(path),
    amount(`${path}.title`, "Its name", "As you call it."),
    field(`~${path}.kind`, "It is", { options: KINDS }),
    only(
      `own:${n}:label`,
      h(
        "p",
        { class: "why" },
        "Copy the percentages as printed. P2O5 is oxide, P is element: the label says which.",
      ),
      whole(`${path}.label`),
      h("div", { class: "pair ions" }, LABEL.slice(0, ELEMENTS_FROM).map(percent)),
      h(
        "details",
        {},
        h("summary", {}, "As elements, and trace elements"),
        h("div", { class: "pair ions" }, LABEL.slice(ELEMENTS_FROM).map(percent)),
        amount(`${path}.chelated`, "Chelated are", "Fe, Mn, Zn, Cu"),
      ),
      pair(
        field(`${path}.by`, "Percent are", {
          options: [
            ["weight", "by weight"],
            ["volume", "by volume (a liquid)"],
          ],
        }),
        amount(`${path}.density`, "Density", "In kg/L; makes it a liquid."),
        amount(`${path}.label_rate`, "Rate on the label", "0.5 to 1.2 g/L"),
        amount(`${path}.most_in_stock`, "Most in stock", "In g/L."),
      ),
      h(
        "details",
        {},
        h("summary", {}, "Fit it to the bag: weighed and measured"),
        [1, 2].map((m) =>
          h(
            "div",
            { class: "pair ions" },
            amount(`${path}.measured[${m}].rate`, `Sample ${m}`, "In g/L."),
            amount(`${path}.measured[${m}].strength`, "Reads", "In mS/cm."),
            amount(`${path}.measured[${m}].water`, "Water alone", "In mS/cm."),
          ),
        ),
      ),
    ),
    only(
      `own:${n}:formula`,
      amount(`${path}.formula`, "Formula", "With its water: Ca(NO3)2·4H2O."),
      amount(`${path}.purity`, "Purity", "In %."),
    ),
    h(
      "div",
      { class: "buttons" },
      h("button", { type: "button", class: "second", onclick: forget }, "Forget this product"),
    ),
  );
}
