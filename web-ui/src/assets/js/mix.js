/** The Mix page: from strength to grams and back, live while typing. The service does the sums. */

import { api } from "./api.js";
import { now } from "./clock.js";
import { h, say } from "./dom.js";
import { weekday } from "./format.js";
import { inShort, sheetOf } from "./mix-answer.js";
import { checksOf, fallbackOf, supplementOf } from "./mix-aside.js";
import { mixForm } from "./mix-form.js";
import { state } from "./state.js";

const PAUSE_MS = 200;

export function mix(page) {
  const form = mixForm(changed);
  const answer = h("div", { class: "mix-answer", "data-answer": true, tabindex: "-1" });
  const short = h("span", { "data-short": true });
  const strip = h("button", { type: "button", class: "mix-strip", hidden: true }, short);
  const said = h("p", { class: "visually-hidden", role: "status" });
  const print = h(
    "button",
    { type: "button", class: "second", onclick: () => globalThis.print() },
    "Print this sheet",
  );
  strip.addEventListener("click", () => {
    answer.scrollIntoView({ block: "start" });
    answer.focus({ preventScroll: true });
  });
  page.append(
    h("h2", {}, "Mix"),
    h(
      "p",
      { class: "why plain" },
      "From a strength to grams, and what your meter will show. Nothing is dosed; nothing leaves this box.",
    ),
    h("div", { class: "mix-columns" }, form.form, h("div", {}, answer, said)),
    strip,
  );

  let shown = false;
  let due = 0;
  let asking = false;
  let again = false;
  let loaded = false;

  function changed() {
    if (!shown) return;
    clearTimeout(due);
    due = setTimeout(ask, PAUSE_MS);
  }

  /** One question at a time; what is typed meanwhile is asked when it has been answered. */
  async function ask() {
    if (asking) {
      again = true;
      return;
    }
    asking = true;
    again = false;
    try {
      const got = await api.mix(form.request());
      if (!again) show(got);
    } catch (trouble) {
      form.showFaults([]);
      nothing(h("p", { class: "lead" }, `■ ${trouble.message}`));
    } finally {
      asking = false;
      if (again) ask();
    }
  }

  function show(got) {
    const faults = form.showFaults(got.faults);
    if (faults.length > 0) {
      const { title, count, children } = toPutRight(faults);
      nothing(h("h3", {}, title), ...children);
      say(short, `${title}: ${count}`);
      strip.hidden = false;
      return;
    }
    const heading = [state.site?.name, weekday(now())].filter(Boolean).join(", ");
    const parts = [
      got.sheet ? sheetOf(got.sheet, heading) : null,
      got.supplement ? supplementOf(got.supplement) : null,
      got.fallback ? fallbackOf(got.fallback) : null,
      got.checks.length > 0 ? checksOf(got.checks) : null,
    ].filter(Boolean);
    answer.replaceChildren(
      ...parts,
      parts.length > 0
        ? h("div", { class: "buttons" }, print)
        : h("p", { class: "why plain" }, "Fill in the form; the answer comes by itself."),
    );
    answer.dataset.state = "answered";
    const words = got.sheet
      ? inShort(got.sheet)
      : (answer.querySelector("[data-grams]")?.textContent ?? "");
    say(short, words);
    say(said, words);
    strip.hidden = words === "";
  }

  /** Grams of a moment ago are not left standing beside a field that no longer says so. */
  function nothing(...children) {
    answer.replaceChildren(...children);
    answer.dataset.state = "asking";
    strip.hidden = true;
    say(said, "");
  }

  return {
    show(visible) {
      shown = visible;
      if (!visible) return;
      if (!loaded) load();
      form.start();
    },
  };

  async function load() {
    try {
      form.offer(await api.fertilizers());
      loaded = true;
    } catch (trouble) {
      nothing(h("p", { class: "lead" }, `■ ${trouble.message}`));
    }
  }
}

function toPutRight(faults) {
  const wrong = faults.filter((each) => !each.missing);
  const missing = faults.length - wrong.length;
  const title = wrong.length > 0 ? "▲ To put right" : "○ Still to fill in";
  const places = new Set();
  const lines = (wrong.length > 0 ? wrong : faults).filter(({ place }) => {
    if (place && places.has(place)) return false;
    if (place) places.add(place);
    return true;
  });
  const children = [
    h("ul", { class: "plain put-right", "data-put-right": true }, lines.map(line)),
    wrong.length > 0 && missing > 0
      ? h("p", { class: "plain soft" }, "And some fields are still empty.")
      : null,
    h("p", { class: "why plain" }, "The grams appear here as soon as the sum can be done."),
  ].filter(Boolean);
  return { title, count: lines.length, children };
}

/** A line that leads to its field. */
function line({ words, place }) {
  const field = place?.closest(".field");
  const control = field?.querySelector("input, select");
  const label =
    field?.querySelector("label")?.textContent ??
    place?.closest(".question")?.querySelector("legend")?.textContent;
  const text = label ? `${label}: ${words}` : words;
  if (!control) return h("li", {}, text);
  const lead = () => {
    for (let at = control.closest("details"); at; at = at.parentElement.closest("details"))
      at.open = true;
    control.focus();
  };
  return h("li", {}, h("button", { type: "button", class: "link", onclick: lead }, text));
}
