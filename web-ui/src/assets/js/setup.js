/** Sets up a measuring point: a few questions, in a grower's words, and what was heard meanwhile. */

import { api } from "./api.js";
import { h, say } from "./dom.js";
import { field, options, showErrors } from "./fields.js";
import { typedNumber } from "./format.js";
import { portChoice } from "./ports.js";
import { preview } from "./preview.js";
import { COMPENSATIONS, COMPENSATES, KINDS, PLACES, UNITS, suggestedName } from "./questions.js";
import { state } from "./state.js";

/** Not questions of their own: what comes before the first and what follows from the last. */
const FOLLOWS = new Set(["kind", "compensation"]);
/** For feed of nitrates, %/K at 25 °C. */
const FEED_PERCENT = 1.88;

export function setup(page, { saved, announce }) {
  return new Setup(page, saved, announce);
}

class Setup {
  #form;
  #profiles = [];
  #ports;
  #preview;
  #outcome;
  #saved;
  #announce;
  #named = false;
  #asked = false;

  constructor(page, saved, announce) {
    this.#saved = saved;
    this.#announce = announce;
    this.#ports = portChoice(() => this.#preview.stop());
    this.#preview = preview(() => this.#toHear());
    this.#outcome = h("p", { class: "error", role: "alert", "data-outcome": true });
    this.#form = h(
      "form",
      { class: "setup", novalidate: true, "data-setup": true },
      question("kind", "How are readings taken there?", options("hand_typed", KINDS)),
      question("port", "Which port?", this.#ports.box),
      question("profile", "Which kind of instrument?", this.#profileFields(), this.#preview.box),
      question("place", "Where is it?", options("place", PLACES), this.#nameFields()),
      question(
        "unit",
        "Which unit does it send?",
        field("conductivity_unit", "Unit of conductivity", {
          options: UNITS,
          hint: "The manual or the instrument’s own display says it. A wrong unit shows as a value ten or a thousand times off.",
        }),
      ),
      question(
        "compensates",
        "Does the instrument compensate already?",
        why(),
        options("compensates", COMPENSATES),
      ),
      question(
        "compensation",
        "How shall readings be referred to 25 °C?",
        options("compensation", COMPENSATIONS),
        this.#percentField(),
      ),
      h(
        "div",
        { class: "buttons" },
        h("button", {}, "Save this point"),
        h("a", { class: "button second", href: "#now" }, "Leave without saving"),
      ),
      this.#outcome,
    );
    this.#form.addEventListener("change", (event) => this.#changed(event.target));
    this.#form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.#save();
    });
    page.append(
      h("h2", {}, "Add a measuring point"),
      h(
        "p",
        { class: "why" },
        "Nothing is written until you save, and a point can be changed later in the file it is written to.",
      ),
      this.#form,
    );
    this.#arrange();
  }

  show(open) {
    if (!open) {
      this.#preview.stop();
      return;
    }
    if (!this.#asked) this.#ask();
  }

  async #ask() {
    this.#asked = true;
    this.#ports.refresh();
    try {
      this.#profiles = await api.profiles();
      const select = this.#form.elements.profile;
      select.replaceChildren(
        ...this.#profiles.map((each) => h("option", { value: each.name }, each.title || each.name)),
      );
      this.#followProfile();
    } catch (trouble) {
      this.#asked = false;
      showErrors(this.#form, [{ field: "profile", message: trouble.message }]);
    }
  }

  #profileFields() {
    return h(
      "div",
      { class: "field" },
      field("profile", "Profile", {
        options: [["", "asking …"]],
        hint: "A profile says how a family of instruments speaks. Pick the nearest, then listen.",
      }),
      field("unit", "Address on the bus", {
        class: "short",
        inputmode: "numeric",
        value: "1",
        hint: "1 to 247; the instrument’s manual or its menu says it.",
      }),
    );
  }

  #nameFields() {
    return h(
      "div",
      { class: "field" },
      field("title", "What shall it be called?", {
        hint: "As you would say it: “Line”, “Glasshouse tank”.",
      }),
      field("name", "Short name for the record", {
        spellcheck: "false",
        autocapitalize: "none",
        hint: "Small letters, digits, - and _, a letter first. It stays for good.",
      }),
    );
  }

  #percentField() {
    return field("percent_per_kelvin", "Percent per kelvin", {
      class: "short",
      inputmode: "decimal",
      value: String(FEED_PERCENT),
      hint: "1.88 suits nitrate feeds.",
    });
  }

  #changed(control) {
    if (control.name === "profile") this.#followProfile();
    if (control.name === "profile" || control.name === "unit") this.#preview.stop();
    if (control.name === "name") this.#named = control.value.trim() !== "";
    if (control.name === "place") this.#followPlace(control.value);
    if (control.name === "title" || control.name === "place") this.#followTitle();
    this.#arrange();
  }

  #profile() {
    return this.#profiles.find((each) => each.name === this.#form.elements.profile.value) ?? null;
  }

  #followProfile() {
    const profile = this.#profile();
    if (!profile) return;
    const { conductivity_unit: unit, compensates } = this.#form.elements;
    unit.options[0].textContent = `as the profile says: ${profile.conductivity_unit}`;
    unit.value = "";
    compensates.value = String(profile.compensates);
    this.#arrange();
  }

  #followPlace(place) {
    this.#form.elements.compensation.value = place === "source" ? "iso7888" : "linear";
  }

  #followTitle() {
    const { title, name, place } = this.#form.elements;
    if (!title.value.trim() && place.value && place.value !== "other") {
      title.value = PLACES.find((each) => each.value === place.value).title;
    }
    if (!this.#named) {
      const suggested = suggestedName(
        title.value,
        state.points().map((point) => point.name),
      );
      // Setting a value, even the same one, would move the cursor of whoever is typing.
      if (name.value !== suggested) name.value = suggested;
    }
  }

  /** Shows only the questions that apply, and numbers them. */
  #arrange() {
    const { hand_typed: kind, compensates, compensation } = this.#form.elements;
    const byHand = kind.value === "true";
    const hide = (name, hidden) => {
      this.#form.querySelector(`[data-question="${name}"]`).hidden = hidden;
    };
    for (const name of ["port", "profile", "unit", "compensates"]) hide(name, byHand);
    hide("compensation", !byHand && compensates.value === "true");
    this.#form.querySelector('[data-field="unit"]').hidden = !this.#profile()?.needs_unit;
    this.#form.querySelector('[data-field="percent_per_kelvin"]').hidden =
      compensation.value !== "linear";
    let number = 0;
    for (const each of this.#form.querySelectorAll(".question:not([hidden]) > legend")) {
      const follows = FOLLOWS.has(each.parentElement.dataset.question);
      each.textContent = follows ? each.dataset.words : `${++number}. ${each.dataset.words}`;
    }
  }

  #address() {
    return this.#profile()?.needs_unit ? typedNumber(this.#form.elements.unit.value) : 0;
  }

  #toHear() {
    const link = this.#ports.link();
    const profile = this.#form.elements.profile.value;
    return link && profile ? { link, profile, unit: this.#address() ?? 0 } : null;
  }

  #draft() {
    const at = this.#form.elements;
    const byHand = at.hand_typed.value === "true";
    const compensates = !byHand && at.compensates.value === "true";
    return {
      name: at.name.value.trim(),
      title: at.title.value.trim(),
      place: at.place.value,
      hand_typed: byHand,
      link: byHand ? "" : this.#ports.link(),
      profile: byHand ? "" : at.profile.value,
      unit: byHand ? 0 : this.#address(),
      conductivity_unit: byHand ? "" : at.conductivity_unit.value,
      compensates,
      compensation: at.compensation.value,
      percent_per_kelvin: typedNumber(at.percent_per_kelvin.value),
    };
  }

  async #save() {
    this.#preview.stop();
    const draft = this.#draft();
    const problems = check(draft);
    say(this.#outcome, showErrors(this.#form, problems));
    if (problems.length > 0) return;
    const button = this.#form.querySelector(".buttons button");
    button.disabled = true;
    try {
      const { file } = await api.savePoint(draft);
      this.#done(draft, file);
    } catch (trouble) {
      const left = showErrors(this.#form, trouble.errors ?? []);
      say(this.#outcome, left || (trouble.errors?.length ? "" : trouble.message));
    } finally {
      button.disabled = false;
    }
  }

  #done(draft, file) {
    this.#form.reset();
    this.#named = false;
    this.#asked = false;
    this.#arrange();
    this.#saved(`● ${draft.title} is set up. It is written in ${file}.`);
    this.#announce(`${draft.title} is set up`);
    location.hash = "#now";
  }
}

function question(name, words, ...content) {
  return h(
    "fieldset",
    { class: "question", "data-question": name },
    h("legend", { "data-words": words }, words),
    ...content,
  );
}

function why() {
  return h(
    "p",
    { class: "why" },
    "Conductivity rises about 2 % with each degree. If the instrument already shows the value at " +
      "25 °C and it is compensated again here, feed of 10 °C reads almost 40 % too strong and one feeds " +
      "too little: compensating twice is the classic mistake. To find out, warm a cup of feed by ten " +
      "degrees: a value that stays is compensated, one that climbs by about a fifth is not.",
  );
}

/** What the page can see for itself; the service checks everything again. */
function check(draft) {
  const problems = [];
  const need = (field, ok, message) => ok || problems.push({ field, message });
  if (!draft.hand_typed) {
    need("link", draft.link, "no port chosen; choose one, or type a path or tcp:HOST:PORT");
    need("profile", draft.profile, "no profile chosen; choose the nearest");
    need("unit", draft.unit !== null, "the address on the bus is not a number; 1 to 247");
  }
  need("place", draft.place, "no place chosen; it decides what the value is compared with");
  need("title", draft.title, "no name given; say it as you would call it, such as Line");
  need("name", draft.name, "no short name given; small letters, such as line");
  need(
    "percent_per_kelvin",
    draft.compensation !== "linear" || draft.percent_per_kelvin !== null,
    "not a number; 1.88 suits nitrate feeds",
  );
  return problems;
}
