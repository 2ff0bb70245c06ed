/** Questions beside the mix: one salt more, no meter, the injector. */

import { h } from "./dom.js";
import { field } from "./fields.js";
import {
  amount,
  choice,
  FREQUENCIES,
  NUTRIENTS,
  only,
  pair,
  part,
  tick,
  whole,
} from "./mix-fields.js";

export function saltPart(product) {
  return part(
    "salt",
    "One salt more",
    whole("supplement"),
    product,
    choice("~salt", "Set by", [
      ["adds", "what it adds"],
      ["rate", "grams in a litre"],
    ]),
    only(
      "salt:adds",
      pair(
        field("supplement.nutrient", "Nutrient", {
          options: NUTRIENTS.map((each) => [each, each]),
        }),
        amount("supplement.adds", "It should add", "In mg/L."),
      ),
    ),
    only("salt:rate", amount("supplement.rate", "Grams in a litre", "In g/L.")),
    pair(
      amount("supplement.volume", "Volume", "In L."),
      amount("supplement.purity", "Purity", "In %; may be empty."),
      amount("supplement.pots", "Pots treated"),
      amount(
        "supplement.untreated",
        "Pots left untreated",
        "So that one can see whether it helped.",
      ),
      amount("supplement.review", "Look again on", "", { type: "date" }),
    ),
  );
}

export function fallbackPart(product) {
  return part(
    "fallback",
    "Without a meter to trust",
    h(
      "p",
      { class: "why plain" },
      "A fallback, not a measurement: the low end of what the label says.",
    ),
    whole("fallback"),
    product,
    amount(
      "fallback.label_rate",
      "Rate on the label",
      "In g/L: 0.5 to 1.2 g/L. May be empty if the product states it.",
    ),
    field("fallback.frequency", "The label means it", { options: FREQUENCIES }),
    amount("fallback.volume", "Volume", "In L."),
    tick(
      "~granules",
      "Coated granules are in the pots",
      "Then less is given, until they have run out.",
    ),
    only(
      "granules",
      whole("fallback.granules"),
      pair(
        amount("fallback.granules.product", "Granules"),
        amount("fallback.granules.rate", "Rate", "In g/L of pot."),
        amount("fallback.granules.applied", "Put in on", "", { type: "date" }),
        amount("fallback.granules.longevity", "They last", "As the bag says: 6 months."),
        amount("fallback.granules.at", "At", "The bag’s temperature, in °C."),
        amount("fallback.granules.pot_temperature", "Pots are about", "In °C."),
        h("input", { type: "hidden", name: "fallback.granules.today", "data-today": true }),
      ),
    ),
  );
}

export function injectorPart() {
  return part(
    "injector",
    "Does the injector draw what it should?",
    h(
      "p",
      { class: "why plain" },
      "Let it draw from a measuring jug while it fills a barrel of known size. No conductivity needed.",
    ),
    whole("check"),
    whole("check.draw_down"),
    pair(
      amount("check.draw_down.drawn", "Stock drawn", "In L, or mL."),
      amount("check.draw_down.delivered", "Feed delivered", "In L."),
      amount("check.draw_down.should_make", "One litre should make", "In L; may be empty."),
    ),
  );
}
