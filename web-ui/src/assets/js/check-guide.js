/** Leads through an open check: one thing to do at a time, with a big button for it. */

import { h, say } from "./dom.js";
import { conductivity, temperature } from "./format.js";
import { state } from "./state.js";
import { capital, sentence } from "./words.js";
import { whoLine } from "./who.js";

const ROUND = { "as-found": "As found", "after-cleaning": "After cleaning", "as-left": "As left" };
const VERDICT = { pass: "● Pass", fail: "■ Fail", "cant-tell": "○ Can’t tell" };
const TONE = { pass: "good", fail: "act", "cant-tell": "unsure" };

/** {box, write(detail)} */
export function guide(stand, act) {
  const who = whoLine();
  const round = h("p", { class: "plain soft", "data-round": true });
  const todo = h("p", { class: "todo", "data-guide": true, "aria-live": "polite" });
  const figure = h("p", { class: "live", "data-live": true });
  const settling = h("p", { class: "plain", "data-settling": true });
  const verdict = h("p", { class: "verdict plain", "data-check-verdict": true });
  const proposal = h("p", { class: "plain", "data-adjustment": true });
  const buttons = h("div", { class: "steps", "data-steps": true });
  const results = h("ul", { class: "results plain", "data-results": true });
  const typed = typedForm(stand, (deed, body) => go(deed, body));
  const box = h(
    "section",
    { class: "guide", "data-check": true },
    round,
    todo,
    figure,
    settling,
    verdict,
    proposal,
    typed.box,
    buttons,
    results,
    who.box,
  );
  let shown = "";
  let busy = false;

  async function go(deed, body = {}) {
    const name = who.name();
    if (!name || busy) return;
    busy = true;
    try {
      await act(deed, { who: name, ...body });
    } finally {
      busy = false;
    }
  }

  const button = (deed, words, second = false, ask = "") =>
    h(
      "button",
      {
        type: "button",
        class: second ? "second" : "",
        "data-step": deed,
        onclick: () => {
          if (!ask || confirm(ask)) go(deed, deed === "cleaned" ? { note: "cleaned" } : {});
        },
      },
      words,
    );

  function offered({ phase, verdict: said, round: at, adjustment }) {
    const give = button("abandon", "Give the check up", true, "Give this check up? What was measured stays on record.");
    if (phase === "rinse") return [button("rinsed", "Rinsed"), give];
    if (phase === "immerse") return [button("immersed", "It is in"), give];
    if (phase === "settling") return [give];
    if (phase === "did-you-mean") {
      return [button("wrong-bottle", "Yes, the wrong bottle"), button("really-that", "No, it is the right one", true), give];
    }
    if (said === "pass" || at === "as-left") {
      return [button("finish", "Finish"), ...(at === "as-left" ? [] : [button("cleaned", "Cleaned, check again", true)])];
    }
    if (at === "as-found") return [button("cleaned", "Cleaned, check again"), button("finish", "Finish as it is", true)];
    if (stand.kind === "meter") {
      return [
        button("adjusted-by-instrument", "I adjusted the meter"),
        button("cleaned", "Cleaned again", true),
        button("finish", "Finish as it is", true),
      ];
    }
    return [
      button("adjust", "Adjust", false, `${sentence(capital(adjustment ?? ""))} Use this from now on?`),
      button("adjusted-by-instrument", "I adjusted the instrument itself", true),
      button("cleaned", "Cleaned again", true),
      button("finish", "Finish as it is", true),
    ];
  }

  return {
    box,
    write({ open }) {
      if (!open) return;
      const point = state.points().find((each) => each.name === stand.name);
      const live = stand.kind === "probe" && ["immerse", "settling", "rinse"].includes(open.phase);
      figure.hidden = !live;
      if (live && point) {
        say(figure, `${conductivity(point.conductivity_mS_cm, 3)} mS/cm  ${temperature(point.temperature_C)}`);
      }
      say(round, `${ROUND[open.round]}${open.standard ? `, ${open.standard}` : ""}`);
      say(todo, sentence(capital(open.guide)));
      settling.hidden = open.settling === null;
      say(settling, open.settling ?? "");
      const whole = open.phase === "round-done";
      verdict.hidden = !whole;
      verdict.className = `verdict plain ${TONE[open.verdict]}`;
      say(verdict, VERDICT[open.verdict]);
      proposal.hidden = !whole || open.verdict === "pass" || open.adjustment === null;
      say(proposal, open.adjustment ? sentence(capital(open.adjustment)) : "");
      typed.write(open);
      const text = JSON.stringify([open.phase, open.verdict, open.round, open.adjustment, open.results]);
      if (text === shown) return;
      shown = text;
      buttons.replaceChildren(...offered(open));
      results.replaceChildren(...open.results.map((words) => h("li", {}, sentence(capital(words)))));
    },
  };
}

/** What a meter shows, or a thermometer in the beaker of a probe. */
function typedForm(stand, go) {
  const meter = stand.kind === "meter";
  const value = h("input", { type: "text", inputmode: "decimal", id: "check-value", autocomplete: "off" });
  const celsius = h("input", { type: "text", inputmode: "decimal", id: "check-celsius", autocomplete: "off" });
  const number = (input) => Number.parseFloat(input.value.replace(",", "."));
  const box = h(
    "form",
    {
      class: "plain typed-check",
      "data-typed-check": true,
      onsubmit: (event) => {
        event.preventDefault();
        const body = { temperature_c: orNull(number(celsius)) };
        if (meter) body.conductivity_mS_cm = orNull(number(value));
        go(meter ? "reading" : "temperature", body);
      },
    },
    meter ? h("label", { for: "check-value" }, "It shows at rest, mS/cm") : null,
    meter ? value : null,
    h("label", { for: "check-celsius" }, meter ? "Temperature of the standard, °C" : "A thermometer in the beaker says, °C (if there is one)"),
    celsius,
    h("button", { class: meter ? "" : "second" }, "Write it down"),
  );
  return {
    box,
    write(open) {
      box.hidden = !(open.phase === "settling" || (!meter && open.phase === "immerse"));
    },
  };
}

function orNull(number) {
  return Number.isFinite(number) ? number : null;
}
