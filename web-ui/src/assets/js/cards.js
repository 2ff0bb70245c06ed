/** The entries of the Now page, one a point. Built once, then only their words change. */

import { addedByFeed, sourceOf } from "./added.js";
import { card } from "./card.js";
import { h } from "./dom.js";
import { sharedScale } from "./ruler.js";
import { state } from "./state.js";

/** box: where the entries go; announce(text): says a change of verdict to screen readers. */
export function cards(box, announce) {
  let entries = new Map();
  const scaleFor = sharedScale();

  const rebuild = () => {
    const points = state.points();
    const kept = new Map();
    for (const point of points) {
      const old = entries.get(point.name);
      const same = old && old.title === point.title && old.byHand === !point.probe;
      kept.set(point.name, same ? old : card(point));
    }
    entries = kept;
    const wanted = [...entries.values()].map((entry) => entry.article);
    const list = wanted.length > 0 ? wanted : [empty()];
    const same = list.length === box.children.length && list.every((e, i) => box.children[i] === e);
    if (!same) box.replaceChildren(...list);
    box.dataset.count = String(wanted.length);
    refresh();
  };

  const refresh = () => {
    const points = state.points();
    const source = sourceOf(points);
    const values = points.flatMap((point) => [
      point.conductivity25_mS_cm,
      point.band?.high_total ?? null,
    ]);
    for (const point of points) {
      const said = entries.get(point.name)?.update(point, {
        age: state.age(point.name),
        connected: state.connected,
        source,
        added: addedByFeed(point, source),
        end: scaleFor(point.conductivity25_mS_cm, values),
      });
      if (said) announce(`${point.title}: ${said}`);
    }
  };

  state.on("points", rebuild);
  state.on("measurement", refresh);
  state.on("health", refresh);
  state.on("feeding", refresh);
  return { refresh };
}

function empty() {
  return h(
    "div",
    { class: "empty" },
    h("h2", {}, "No measuring point yet"),
    h(
      "p",
      {},
      "A measuring point is a place where you want to know the strength: the source water, a tank, " +
        "the line behind the injector, the run-off. It can have a probe on a cable, or you can type " +
        "in what a handheld meter shows.",
    ),
    h(
      "p",
      {},
      "Five short questions set one up, and you can hear the probe while you answer them.",
    ),
    h("a", { class: "button", href: "#setup" }, "Set up the first point"),
  );
}
