/** The form of the mix: what is shown when, what it keeps, and what is wrong beside the fields. */

import { h, say } from "./dom.js";
import {
  acidPart,
  choice,
  goalPart,
  makePart,
  meterPart,
  part,
  stockPart,
  tick,
  waterPart,
  whole,
} from "./mix-fields.js";
import { fallbackPart, injectorPart, saltPart } from "./mix-fields-aside.js";
import { keep, recall } from "./mix-keep.js";
import { ownProducts } from "./mix-own.js";
import { placeOf, plainPath, requestOf } from "./mix-request.js";
import { dialPoints, nutrients, offer, productField, uses } from "./mix-rows.js";

const MODES = [
  ["feed", "a feed"],
  ["salt", "one salt"],
  ["fallback", "no meter"],
  ["injector", "injector"],
];

/** {form, request(), showFaults(faults), offer(fertilizers)}; changed() is called when something was. */
export function mixForm(changed) {
  const state = recall();
  let fertilizers = [];
  let places = new Map();
  let ownFaults = [];
  const restructured = () => {
    restore();
    offer(form, fertilizers, state);
    settle();
  };
  const lists = {
    uses: uses(state, () => restructured()),
    nutrients: nutrients(state, () => restructured()),
    points: dialPoints(state, () => restructured()),
    own: ownProducts(state, () => restructured()),
  };
  const form = h(
    "form",
    { class: "setup mix", novalidate: true, "data-mix": true, "aria-label": "Mix" },
    choice("~what", "Reckon", MODES),
    part("products", "Product", whole("use"), lists.uses.box),
    waterPart(),
    goalPart(lists.nutrients.box),
    makePart(),
    meterPart(),
    part(
      "also",
      "When needed",
      tick("~stock", "Make stock", "For an injector or a dial."),
      stockPart(lists.points.box),
      tick("~acid", "Take alkalinity with acid", "For hard water."),
      acidPart(),
      tick("~supplement", "One salt more beside the feed", "For pale leaves, on some of the pots."),
    ),
    saltPart(productField("supplement.product", "Salt")),
    fallbackPart(productField("fallback.product", "Product")),
    injectorPart(),
    part(
      "own",
      "Your own products",
      h("p", { class: "why plain" }, "Kept by this browser only."),
      whole("product"),
      lists.own.box,
    ),
  );

  const chosen = (name) => form.querySelector(`[name="${CSS.escape(name)}"]:checked`)?.value ?? "";
  const value = (name) => form.querySelector(`[name="${CSS.escape(name)}"]`)?.value ?? "";

  /** Puts what is kept into the fields. */
  function restore() {
    for (const control of form.elements) {
      const kept = state.values[control.name];
      if (!control.name || kept === undefined || control.type === "hidden") continue;
      if (control.type === "radio" || control.type === "checkbox")
        control.checked = control.value === kept;
      else control.value = kept;
    }
  }

  function settle() {
    for (const element of form.querySelectorAll("[data-part]")) {
      const shown = isShown(element.dataset.part);
      element.hidden = !shown;
      element.disabled = !shown;
    }
    state.products.forEach((_, index) => {
      const path = `product[${index + 1}]`;
      const title = form.querySelector(`[data-title-of="${CSS.escape(path)}"]`);
      say(title, state.values[`${path}.title`] || "A product of your own");
    });
    form.querySelector("[data-today]").value = new Date().toISOString().slice(0, 10);
    keep(state);
    changed();
  }

  function isShown(name) {
    const mode = chosen("~what");
    const feed = mode === "feed";
    const salt = mode === "salt" || (feed && chosen("~supplement") === "yes");
    const stock = chosen("~stock") === "yes";
    const by = chosen("~make");
    const simple = {
      products: feed,
      goal: feed,
      make: feed,
      meter: feed,
      also: feed,
      stock,
      salt,
      water: feed || mode === "salt",
      acid: chosen("~acid") === "yes",
      fallback: mode === "fallback",
      injector: mode === "injector",
      own: mode !== "injector",
      granules: chosen("~granules") === "yes",
      "use:rate": chosen("~goal") === "rates",
      "use:part": state.uses > 1 && ["strength", "added"].includes(chosen("~goal")),
      "make:litres": by === "litres",
      "make:count": by !== "litres",
      "make:pots": by === "pots",
      "make:given": by === "given",
      "meter:compensates": value("meter.compensates") === "yes",
    };
    if (name in simple) return simple[name];
    const [group, ...rest] = name.split(":");
    if (group === "formula") return value(rest.join(":")) === "~formula";
    if (group === "own") return value(`~product[${rest[0]}].kind`) === rest[1];
    return (group === "dilution" ? value("~dilution") : chosen(`~${group}`)) === rest[0];
  }

  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", ({ target }) => {
    if (!target.name) return;
    const ticked = target.type !== "checkbox" || target.checked;
    state.values[target.name] = ticked ? target.value : "";
    for (const twin of form.querySelectorAll(`[name="${CSS.escape(target.name)}"]`)) {
      if (twin !== target && twin.type === "text") twin.value = target.value;
    }
    if (target.name.endsWith("].title")) offer(form, fertilizers, state);
    settle();
  });

  /** What is shown and filled in; parts not shown do not count. */
  function controls() {
    return [...form.elements].filter(
      (control) =>
        control.name &&
        !control.matches(":disabled") &&
        (control.checked || !["radio", "checkbox"].includes(control.type)),
    );
  }

  restore();
  return {
    form,
    start: settle,
    offer(list) {
      fertilizers = list;
      restructured();
    },
    request() {
      const asked = requestOf(
        controls().map(({ name, value: typed }) => ({ name, value: typed })),
        state,
      );
      places = asked.places;
      ownFaults = asked.faults;
      return asked.request;
    },
    showFaults: (faults) => showFaults(form, [...ownFaults, ...faults], places),
    mode: () => chosen("~what"),
  };
}

/** What is wrong stands beside its field; answers with [{words, control}], for the answer's side. */
function showFaults(form, faults, places) {
  const known = new Map();
  for (const place of form.querySelectorAll("[data-error]")) {
    if (!place.closest("[hidden]")) known.set(plainPath(place.dataset.error), place);
  }
  const said = new Map();
  const told = faults.map((fault) => {
    const words = `${fault.reason}; ${fault.remedy}`;
    const place = placeOf(fault.field, places, known);
    const value = fault.value ?? "";
    if (!place) return { words: `${fault.field}: ${words}`, place: null, missing: value === "" };
    const before = said.get(place);
    if (!before) said.set(place, { words, missing: value === "" });
    return { words, place, missing: value === "" };
  });
  for (const control of form.querySelectorAll("[aria-invalid]")) {
    control.removeAttribute("aria-invalid");
  }
  for (const place of form.querySelectorAll("[data-error]")) {
    const fault = said.get(place);
    say(place, fault?.words ?? "");
    place.toggleAttribute("data-missing", fault?.missing ?? false);
    if (!fault || fault.missing) continue;
    const name = CSS.escape(place.dataset.error);
    place.parentElement.querySelector(`[name="${name}"]`)?.setAttribute("aria-invalid", "true");
  }
  return told;
}
