/** The questions of the mix, in words of the trade. Names of fields are the paths of the request. */

import { h } from "./dom.js";
import { field } from "./fields.js";

export const FREQUENCIES = ["every watering", "twice a week", "weekly", "now and then"].map(
  (each) => [each, each],
);
const YES_NO = [
  ["yes", "yes, it shows the value at 25 °C"],
  ["no", "no, it shows what is there"],
];
const METER_UNITS = ["mS/cm", "µS/cm", "dS/m", "mS/m", "CF", "ppm 500", "ppm 640", "ppm 700"].map(
  (each) => [each, each],
);
export const NUTRIENTS = [
  "N",
  "nitrate-N",
  "ammonium-N",
  "P",
  "P2O5",
  "K",
  "K2O",
  "Ca",
  "CaO",
  "Mg",
  "MgO",
  "S",
  "SO3",
  "Na",
  "Cl",
  "Fe",
  "Mn",
  "Zn",
  "Cu",
  "B",
  "Mo",
];

/** A part of the form with a heading; data-part names it for what is shown when. */
export function part(name, title, ...children) {
  return h(
    "fieldset",
    { class: "question", "data-part": name },
    h("legend", {}, title),
    ...children,
  );
}

/** A part of a part, shown only when chosen. */
export function only(name, ...children) {
  return h("fieldset", { class: "only", "data-part": name }, ...children);
}

/** A place for what is wrong with a part as a whole. */
export function whole(path) {
  return h("p", { class: "error", "data-error": path });
}

export function pair(...children) {
  return h("div", { class: "pair even" }, ...children);
}

/** A choice of few, side by side: choices [[value, words], …], the first one chosen. */
export function choice(name, legend, choices) {
  return h(
    "fieldset",
    { class: "row words plain mix-choice" },
    h("legend", {}, legend),
    choices.map(([value, words], index) =>
      h("label", {}, h("input", { type: "radio", name, value, checked: index === 0 }), words),
    ),
  );
}

/** A line to tick, for what is not needed every day. */
export function tick(name, words, note) {
  return h(
    "label",
    { class: "option" },
    h("input", { type: "checkbox", name, value: "yes" }),
    h("span", {}, words, h("small", {}, note)),
  );
}

export function amount(name, label, hint = "", attributes = {}) {
  return field(name, label, { hint, maxlength: "60", ...attributes });
}

export function waterPart() {
  const ions = [
    "calcium",
    "magnesium",
    "sodium",
    "potassium",
    "ammonium",
    "chloride",
    "sulfate",
    "nitrate",
    "phosphate",
  ];
  return part(
    "water",
    "Water",
    whole("water"),
    choice("~water", "What is known of the water", [
      ["measured", "measured"],
      ["report", "a report"],
      ["rain", "rain"],
    ]),
    only(
      "water:measured",
      amount(
        "water.measured",
        "Its strength, measured",
        "In mS/cm; tap, borehole or mains water before any feed.",
      ),
    ),
    only(
      "water:rain",
      h("input", { type: "hidden", name: "water.kind", value: "rain" }),
      h("p", { class: "why plain" }, "Rain or deionised water: nothing in it."),
    ),
    only(
      "water:report",
      h(
        "p",
        { class: "why plain" },
        "As the report says, in mg/L, or with its unit: meq/L, mmol/L, °dH.",
      ),
      h(
        "div",
        { class: "pair ions" },
        ions.map((ion) => amount(`water.${ion}`, ion[0].toUpperCase() + ion.slice(1))),
      ),
      pair(
        amount("water.hardness", "Hardness", "With its unit: 12 °dH, 215 mg/L CaCO3."),
        amount("water.alkalinity", "Alkalinity", "With its unit: 3.9 mmol/L, 195 mg/L CaCO3."),
        amount("water.ph", "pH"),
        amount("water.measured", "Strength, measured", "In mS/cm; may be empty."),
      ),
    ),
  );
}

export function goalPart(nutrients) {
  return part(
    "goal",
    "What it should be",
    whole("goal"),
    field("goal.frequency", "Given", {
      options: FREQUENCIES,
      hint: "A strength means nothing without it.",
    }),
    choice("~goal", "Set by", [
      ["strength", "strength"],
      ["added", "added"],
      ["nutrients", "nutrients"],
      ["rates", "my grams"],
    ]),
    only(
      "goal:strength",
      amount(
        "goal.strength",
        "Strength, water included",
        "In mS/cm at 25 °C, or with its unit: 1500 µS/cm, 750 ppm 500.",
      ),
    ),
    only(
      "goal:added",
      amount(
        "goal.added",
        "Strength added by feed",
        "In mS/cm at 25 °C; the water’s own comes on top.",
      ),
    ),
    only("goal:nutrients", whole("goal.nutrients"), nutrients),
    only(
      "goal:rates",
      h(
        "p",
        { class: "why plain" },
        "Write the grams for a litre of feed beside each product above.",
      ),
    ),
  );
}

export function makePart() {
  return part(
    "make",
    "How much",
    whole("make"),
    choice("~make", "Counted in", [
      ["litres", "litres"],
      ["pots", "pots × size"],
      ["given", "pots × feed"],
    ]),
    only(
      "make:litres",
      amount(
        "make.volume",
        "Volume of feed",
        "In L, or with its unit: 20 US gal, 5 imp gal, 500 mL.",
      ),
    ),
    only("make:count", amount("make.pots", "Pots")),
    only("make:pots", amount("make.pot", "Size of a pot", "In L.")),
    only("make:given", amount("make.per_pot", "Each pot gets", "In L, or with its unit: 400 mL.")),
    amount("make.temperature", "Temperature of the water", "In °C; 20 if empty."),
    h(
      "details",
      { class: "plain" },
      h("summary", {}, "Scale, measures, name"),
      amount("make.scale", "Smallest step of the scale", "In g; 1 if empty."),
      field("units", "Written in", {
        options: [
          ["metric", "metric"],
          ["us", "US measures"],
          ["imperial", "imperial measures"],
        ],
      }),
      amount("title", "Name of this mix", "Heads the printed sheet."),
    ),
  );
}

export function meterPart() {
  return part(
    "meter",
    "Your meter",
    whole("meter"),
    field("meter.unit", "Shows", { options: METER_UNITS }),
    field("meter.compensates", "Corrects for temperature", { options: YES_NO }),
    only(
      "meter:compensates",
      amount(
        "meter.percent_per_kelvin",
        "By how much for a degree",
        "In %; 2 if empty, as most pen meters do.",
      ),
    ),
  );
}

export function acidPart() {
  return only(
    "acid",
    whole("acid"),
    h(
      "p",
      { class: "caution plain" },
      "▲ Acid burns. Goggles and gloves on; acid into water, never water into acid; never mixed with bleach.",
    ),
    field("acid.kind", "Acid", {
      options: ["nitric", "phosphoric", "sulfuric"].map((each) => [each, each]),
    }),
    pair(
      amount("acid.strength", "Strength", "In % by weight, from its container."),
      amount("acid.density", "Density", "In kg/L, from its container."),
      amount("acid.leave", "Alkalinity to leave", "In mmol/L; 1 if empty."),
    ),
    h("p", { class: "why plain" }, "Needs the alkalinity of the water from a report. Check by pH."),
  );
}

export function stockPart(points) {
  return only(
    "stock",
    whole("stock"),
    pair(
      amount("stock.volume", "Stock to make", "In L."),
      amount(
        "stock.coldest_night",
        "Coldest night it stands through",
        "In °C: salts fall out in the cold.",
      ),
    ),
    field("stock.stocks", "Barrels", {
      options: [
        ["1", "one stock"],
        ["2", "two: calcium apart"],
      ],
    }),
    field("~dilution", "The injector is set in", {
      options: [
        ["makes", "litres that one litre of stock makes"],
        ["percent", "percent"],
        ["parts_water", "parts of water to one of stock"],
        ["dial", "a setting of its dial"],
      ],
    }),
    only("dilution:makes", amount("stock.makes", "One litre of stock makes", "In L of feed.")),
    only("dilution:percent", amount("stock.percent", "Percent")),
    only("dilution:parts_water", amount("stock.parts_water", "Parts of water")),
    only("dilution:dial", amount("stock.dial", "Dial set to")),
    h(
      "details",
      { class: "plain" },
      h("summary", {}, "The dial, as measured"),
      whole("stock.dial_points"),
      points,
    ),
    h(
      "details",
      { class: "plain" },
      h("summary", {}, "Check the stock by a measured dilution"),
      whole("check.dilution"),
      pair(
        amount("check.dilution.stock", "Stock taken", "10 mL"),
        amount("check.dilution.in", "Made up to", "1 L, with the same water"),
        amount("check.dilution.measured", "It reads", "In mS/cm at 25 °C."),
        field("check.dilution.of", "Of", {
          options: [
            ["", "the only stock"],
            ["calcium", "calcium stock"],
            ["sulfate-phosphate", "sulfate-phosphate stock"],
          ],
        }),
      ),
    ),
  );
}
