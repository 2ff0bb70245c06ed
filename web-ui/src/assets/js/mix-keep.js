/** What was typed into the mix and the grower's own products, kept by this browser. */

const KEY = "feedwitness-mix";

/** {values: path → text, uses, nutrients, points, products: [{id}]}. */
export function recall() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "null");
    if (kept && typeof kept.values === "object" && Array.isArray(kept.products)) {
      return { ...fresh(), ...kept };
    }
  } catch {
    // Begun anew; what cannot be read cannot be used.
  }
  return fresh();
}

export function keep(state) {
  try {
    localStorage.setItem(KEY, JSON.stringify(state));
  } catch {
    // The form still works; it is only not remembered.
  }
}

function fresh() {
  return { values: {}, uses: 1, nutrients: 3, points: 2, products: [] };
}
