/** One alarm: what, since when, why it matters, what to do, and one thumb's answer. */

import { answered, asideWords, look, setAside, when } from "./alarm-words.js";
import { api } from "./api.js";
import { h, say } from "./dom.js";
import { capital, sentence } from "./words.js";

const NOTES = ["Looked, all well", "Cleaned the probe", "Stock filled", "Injector set again"];
const HOUR_MIN = 60;
const SHELVES = [
  [HOUR_MIN, "1 hour"],
  [4 * HOUR_MIN, "4 hours"],
  [24 * HOUR_MIN, "a day"],
  [7 * 24 * HOUR_MIN, "a week"],
];

/** {article, update(alarm)}; who: as whom one acts; changed(alarm): what the service answered. */
export function alarmEntry(alarm, who, changed) {
  return new Entry(alarm, who, changed);
}

class Entry {
  #alarm;
  #changed;
  #who;
  #trouble = h("p", { class: "error", role: "alert" });
  #title = h("h3");
  #when = h("p", { class: "when plain" });
  #words = h("p", { class: "say" });
  #todo = h("p", { class: "todo" });
  #answered = h("p", { class: "plain soft" });
  #actions = h("div", { class: "buttons" });
  #after = h("div", { class: "after plain" });
  #asked = "";

  constructor(alarm, who, changed) {
    this.#alarm = alarm;
    this.#who = who;
    this.#changed = changed;
    this.article = h(
      "article",
      { class: "alarm", "data-alarm": alarm.id },
      this.#title,
      this.#when,
      this.#words,
      this.#todo,
      this.#answered,
      this.#actions,
      this.#trouble,
      this.#after,
    );
    this.update(alarm);
  }

  update(alarm) {
    this.#alarm = alarm;
    const { shape, tone } = look(alarm);
    this.article.dataset.tone = tone;
    this.article.dataset.state = alarm.state;
    say(this.#title, `${shape} ${alarm.subject_title}: ${alarm.title.toLowerCase()}`);
    say(this.#when, when(alarm));
    const matters = alarm.consequence ? ` If it stays, ${alarm.consequence}.` : "";
    say(this.#words, `${sentence(capital(alarm.words))}${matters}`);
    say(this.#todo, sentence(capital(alarm.what_to_do)));
    const said = [asideWords(alarm), answered(alarm)].filter(Boolean).join(". ");
    this.#answered.hidden = !said;
    say(this.#answered, sentence(capital(said)));
    this.#offer();
  }

  /** Buttons are built anew only when others are due: one being pressed must not vanish. */
  #offer() {
    const { needs_answer: open, can_undo: undo } = this.#alarm;
    const aside = setAside(this.#alarm);
    const key = JSON.stringify([open, undo, aside, Boolean(this.#alarm.suppressed)]);
    if (key === this.#asked) return;
    this.#asked = key;
    const list = [];
    if (open) {
      list.push(this.#button("I see to it", "", () => this.#act("acknowledge", { note: "" })));
    }
    if (undo) {
      list.push(this.#button("Take the answer back", "second", () => this.#act("undo", {})));
    }
    if (this.#alarm.shelved) {
      list.push(this.#button("Watch again", "second", () => this.#act("unshelve", {})));
    }
    if (this.#alarm.out_of_service) {
      list.push(
        this.#button("Back in service", "second", () => this.#act("in-service", { note: "" })),
      );
    }
    this.#actions.replaceChildren(...list);
    const folds = [];
    if (open || undo) folds.push(this.#noteFold());
    if (!aside) folds.push(this.#asideFold());
    this.#after.replaceChildren(...folds);
  }

  #button(words, kind, press) {
    return h("button", { type: "button", class: kind, onclick: press }, words);
  }

  #noteFold() {
    const text = h("input", { type: "text", maxlength: "1000", "aria-label": "Your own words" });
    const keep = (note) => this.#act("acknowledge", { note });
    return h(
      "details",
      {},
      h("summary", {}, "Answer with a note"),
      h(
        "div",
        { class: "choices-of-words" },
        NOTES.map((note) => this.#button(note, "second", () => keep(note))),
      ),
      h(
        "div",
        { class: "pair" },
        text,
        this.#button("Keep", "", () => keep(text.value.trim())),
      ),
    );
  }

  #asideFold() {
    const note = h("input", { type: "text", maxlength: "1000" });
    const shelve = (minutes) => this.#act("shelve", { note: note.value.trim(), minutes });
    return h(
      "details",
      {},
      h("summary", {}, "Set aside for a while"),
      h("label", { class: "field" }, h("span", { class: "label" }, "Why"), note),
      h(
        "div",
        { class: "choices-of-words" },
        SHELVES.map(([minutes, words]) =>
          this.#button(`For ${words}`, "second", () => shelve(minutes)),
        ),
        this.#button("Out of service", "second", () =>
          this.#act("out-of-service", { note: note.value.trim() }),
        ),
      ),
    );
  }

  async #act(deed, body) {
    say(this.#trouble, "");
    const name = this.#who.name();
    if (!name) return;
    for (const button of this.article.querySelectorAll("button")) button.disabled = true;
    try {
      this.#changed(await api.alarm(this.#alarm.id, deed, { who: name, ...body }));
    } catch (trouble) {
      say(this.#trouble, trouble.errors?.[0]?.message ?? trouble.message);
    } finally {
      for (const button of this.article.querySelectorAll("button")) button.disabled = false;
    }
  }
}
