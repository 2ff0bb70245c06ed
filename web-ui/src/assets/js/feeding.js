/** Now feeding: one tap says which strength, plain water or nothing runs on a line. */

import { bandWords } from "./alarm-words.js";
import { api } from "./api.js";
import { h, say } from "./dom.js";
import { conductivity, moment } from "./format.js";
import { state } from "./state.js";
import { whoLine } from "./who.js";

/** {box, update()} for a point; the box stays hidden where nothing can be chosen. */
export function feeding(name) {
  return new Feeding(name);
}

class Feeding {
  #name;
  #who = whoLine();
  #said = h("p", { class: "now-feeding", "data-feeding": true });
  #question = h("div", { class: "question-of-level", hidden: true });
  #choices = h("div", { class: "choices-of-words" });
  #trouble = h("p", { class: "error", role: "alert" });
  #fold;
  #shown = "";

  constructor(name) {
    this.#name = name;
    this.#fold = h(
      "details",
      {},
      h("summary", {}, "Say what runs now"),
      this.#choices,
      this.#who.box,
    );
    this.box = h(
      "div",
      { class: "feeding plain", hidden: true },
      this.#question,
      this.#said,
      this.#fold,
      this.#trouble,
    );
  }

  update() {
    const entry = state.feeding.get(this.#name);
    const text = JSON.stringify(entry ?? null);
    if (text === this.#shown) return;
    this.#shown = text;
    this.box.hidden = !entry;
    if (!entry) return;
    this.#who.refresh();
    say(this.#said, saidWords(entry));
    this.#choices.replaceChildren(
      ...entry.choices.map((choice) =>
        this.#button(
          `${choice.title} ${conductivity(choice.conductivity_mS_cm)}${choice.of === "added" ? " added" : ""}`,
          entry.what === "strength" && entry.strength === choice.name,
          () => this.#say({ what: "strength", strength: choice.name }),
        ),
      ),
      this.#button("Plain water", entry.what === "plain-water", () =>
        this.#say({ what: "plain-water" }),
      ),
      this.#button("Nothing runs", entry.what === "nothing", () => this.#say({ what: "nothing" })),
    );
    this.#ask(entry.question);
  }

  #button(words, pressed, press) {
    return h(
      "button",
      { type: "button", class: "second", "aria-pressed": String(pressed), onclick: press },
      words,
    );
  }

  #ask(question) {
    this.#question.hidden = !question;
    if (!question) return;
    const title = h("input", {
      type: "text",
      maxlength: "40",
      "aria-label": "What you call this strength",
      placeholder: "Growing on",
    });
    this.#question.replaceChildren(
      h("p", {}, `○ ${question.words}`),
      h(
        "div",
        { class: "pair" },
        title,
        this.#button("Call it so", false, () =>
          this.#answer({ answer: "strength", title: title.value.trim() }),
        ),
      ),
      h(
        "div",
        { class: "choices-of-words" },
        this.#button("It is plain water", false, () => this.#answer({ answer: "plain-water" })),
        this.#button("Don’t ask again", false, () => this.#answer({ answer: "ignore" })),
      ),
    );
  }

  #say(body) {
    return this.#send(body, api.feed);
  }

  #answer(body) {
    return this.#send(body, api.feedLevel);
  }

  async #send(body, send) {
    say(this.#trouble, "");
    const name = this.#who.name();
    if (!name) {
      this.#fold.open = true;
      return;
    }
    try {
      state.setFeeding(await send({ who: name, point: this.#name, ...body }));
      this.#fold.open = false;
    } catch (trouble) {
      say(this.#trouble, trouble.errors?.[0]?.message ?? trouble.message);
    }
  }
}

function saidWords(entry) {
  const band = bandWords(entry.band);
  const limits = band ? `, limits ${band}` : ", no limits";
  if (entry.what === "unsaid") return `Nobody said what runs${band ? limits : ""}`;
  const chosen = entry.choices.find((choice) => choice.name === entry.strength);
  const what =
    entry.what === "strength"
      ? (chosen?.title ?? entry.strength)
      : entry.what === "plain-water"
        ? "Plain water"
        : "Nothing";
  const since = entry.since ? ` since ${moment(Date.parse(entry.since))}` : "";
  const by = entry.by ? `, ${entry.by}` : "";
  return `${what}${since}${by}${entry.what === "nothing" ? "; not watched" : limits}`;
}
