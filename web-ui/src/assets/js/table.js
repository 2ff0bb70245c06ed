/** The chart's numbers as tables, for screen readers and for copying. */

import { h } from "./dom.js";
import { conductivity, full, temperature } from "./format.js";
import { flagWords } from "./words.js";

const MOST_ROWS = 300;

export function table(title, measurements) {
  const rows = measurements.slice(-MOST_ROWS).reverse();
  const left = measurements.length - rows.length;
  const note = left > 0 ? `, the newest ${rows.length} of ${measurements.length}` : "";
  const heads = ["Time", "mS/cm at 25 °C", "Lowest to highest", "Water", "Remarks"];
  return h(
    "table",
    {},
    h("caption", {}, `${title}, newest first${note}`),
    h(
      "thead",
      {},
      h(
        "tr",
        {},
        heads.map((head) => h("th", { scope: "col" }, head)),
      ),
    ),
    h("tbody", {}, rows.map(row)),
  );
}

function row(each) {
  const flags = (each.flags ?? []).map(flagWords).join("; ");
  const range =
    each.readings > 1 && each.min_mS_cm !== null
      ? `${conductivity(each.min_mS_cm)} to ${conductivity(each.max_mS_cm)}`
      : "";
  return h(
    "tr",
    {},
    h("th", { scope: "row" }, full(Date.parse(each.time))),
    h("td", {}, conductivity(each.conductivity25_mS_cm)),
    h("td", {}, range),
    h("td", {}, temperature(each.temperature_C)),
    h("td", {}, flags),
  );
}
