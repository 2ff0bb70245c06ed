/**
 * From what stands in the form to what the service is asked, and from its faults back to the fields.
 * The names of fields are the paths of the request; names that start with ~ are the form's own.
 */

/** An answer names a field with _ or -, as it was sent or as it is written in a recipe. */
export function plainPath(path) {
  return path.replaceAll("-", "_").toLowerCase();
}

/**
 * {request, places, faults}: places maps a path of the request to the name of the field it was typed
 * into; faults are those no request could carry.
 */
export function requestOf(controls, state) {
  const request = {};
  const places = new Map();
  for (const { name, value } of controls) {
    if (name.startsWith("~") || value.trim() === "") continue;
    put(request, name, value.trim());
  }
  chooseProducts(request, controls);
  const faults = nutrientsWanted(request, places, controls);
  ownProducts(request, state, places);
  return { request, places, faults };
}

/** The name of the place where a fault of that path is shown; its section if it has none itself. */
export function placeOf(path, places, known) {
  const plain = plainPath(path);
  for (const [from, to] of places) {
    if (plain === from || plain.startsWith(`${from}.`) || plain.startsWith(`${from}[`)) {
      const own = known.get(plainPath(to + path.slice(from.length)));
      return own ?? known.get(plainPath(to)) ?? null;
    }
  }
  for (let at = plain; at; at = at.replace(/(^|[.[])[^.[]*$/, "")) {
    if (known.has(at)) return known.get(at);
  }
  return null;
}

function put(target, path, value) {
  const steps = path.match(/[^.[\]]+/g);
  steps.reduce((into, step, index) => {
    const key = /^\d+$/.test(step) && Array.isArray(into) ? Number(step) - 1 : step;
    if (index === steps.length - 1) into[key] = value;
    else into[key] ??= /^\d+$/.test(steps[index + 1]) ? [] : {};
    return into[key];
  }, target);
}

/** A product is chosen from the list, or written as a formula. */
function chooseProducts(request, controls) {
  for (const { name, value } of controls) {
    if (!name.endsWith(".product") || value !== "~formula") continue;
    const formula = controls.find((each) => each.name === `~${name}.formula`);
    put(request, name, formula?.value.trim() ?? "");
  }
  for (const { name } of controls) {
    // An entry of the list stands even if nothing is filled in, or later ones would move up.
    const entry = /^use\[\d+\]/.exec(name);
    if (entry)
      put(
        request,
        `${entry[0]}.product`,
        request.use?.[Number(entry[0].slice(4, -1)) - 1]?.product ?? "",
      );
  }
  const points = request.stock?.dial_points;
  if (points) request.stock.dial_points = Array.from(points, (point) => point ?? {});
}

function wishes(controls) {
  const value = (name) => controls.find((each) => each.name === name)?.value.trim() ?? "";
  return controls
    .filter(({ name }) => /^~nutrient\[\d+\]\.symbol$/.test(name))
    .map(({ name, value: symbol }) => {
      const row = name.replace(".symbol", "");
      const amount = value(`${row}.amount`);
      const how = value(`${row}.how`);
      const wish = how === "most" ? { most: amount } : { want: amount, priority: how || "2" };
      return { symbol, amount, name: `${row}.amount`, value: wish };
    })
    .filter(({ symbol, amount }) => symbol && amount);
}

/** One nutrient may be wanted and have a ceiling, but not be wanted twice. */
function nutrientsWanted(request, places, controls) {
  const faults = [];
  const wanted = {};
  for (const { symbol, amount, name, value } of wishes(controls)) {
    const before = (wanted[symbol] ??= {});
    if (Object.keys(value).some((key) => key in before)) {
      faults.push({
        field: name,
        value: amount,
        reason: `${symbol} stands there twice`,
        remedy: "keep one line of it, or choose another nutrient",
      });
      continue;
    }
    Object.assign(before, value);
    places.set(plainPath(`goal.nutrients.${symbol}`), name);
  }
  if (Object.keys(wanted).length > 0) put(request, "goal.nutrients", wanted);
  return faults;
}

/** Those with something on their label, or chosen; places lead back to where they were typed. */
function ownProducts(request, state, places) {
  const own = [];
  state.products.forEach(({ id }, index) => {
    const path = `product[${index + 1}]`;
    const { chelated, ...typed } = request.product?.[index] ?? {};
    const used = JSON.stringify([request.use, request.supplement, request.fallback] ?? "").includes(
      `"${id}"`,
    );
    if (!used && !typed.label && !typed.formula) return;
    if (typed.measured) typed.measured = typed.measured.filter(Boolean);
    own.push({
      id,
      ...typed,
      ...(chelated ? { chelated: chelated.split(/[\s,;]+/).filter(Boolean) } : {}),
    });
    places.set(`product[${own.length}]`, path);
  });
  delete request.product;
  if (own.length > 0) request.product = own;
}
