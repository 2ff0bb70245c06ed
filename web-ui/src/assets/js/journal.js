/** The Journal: alarms, answers, notes and what was fed, newest first, a heading a day. */

import { transitionWords } from "./alarm-words.js";
import { api } from "./api.js";
import { h, say } from "./dom.js";
import { clockTime, weekday } from "./format.js";
import { journalForm } from "./journal-form.js";
import { state } from "./state.js";
import { capital, sentence } from "./words.js";

const PAGE = 50;
const KINDS = [
  ["", "everything"],
  ["note", "notes"],
  ["alarm", "alarms"],
  ["feeding", "feeding"],
];

export function journal(page, { announce }) {
  return new Journal(page, announce);
}

class Journal {
  #list = h("div", { class: "journal", "data-journal": true });
  #more = h("button", { type: "button", class: "second", hidden: true }, "Earlier");
  #empty = h("p", { class: "plain" });
  #kind = "";
  #next = null;
  #asked = 0;
  #day = "";

  constructor(page, announce) {
    this.page = page;
    const form = journalForm(() => {
      announce("The note is kept");
      this.#load();
    });
    this.#more.addEventListener("click", () => this.#add(this.#next));
    page.append(
      h("h2", {}, "Journal"),
      h(
        "p",
        { class: "why" },
        "What happened here and who did what. Nothing in it is ever changed; a correction is a note of its own.",
      ),
      form.box,
      this.#kinds(),
      this.#list,
      this.#empty,
      this.#more,
      h(
        "p",
        { class: "plain" },
        h("a", { href: "/api/v1/journal/export", download: true }, "All of it as a table (CSV)"),
      ),
    );
    state.on("alarms", () => !page.hidden && this.#load());
  }

  show(open) {
    if (open) this.#load();
  }

  #kinds() {
    return h(
      "fieldset",
      { class: "row words plain" },
      h("legend", {}, "Show"),
      KINDS.map(([value, words]) =>
        h(
          "label",
          {},
          h("input", {
            type: "radio",
            name: "journal-kind",
            value,
            checked: value === "",
            onchange: () => {
              this.#kind = value;
              this.#load();
            },
          }),
          words,
        ),
      ),
    );
  }

  #load() {
    return this.#add(null);
  }

  async #add(before) {
    const asked = ++this.#asked;
    let answer;
    try {
      answer = await api.journal({ kind: this.#kind, before, limit: PAGE });
    } catch (trouble) {
      if (asked === this.#asked) say(this.#empty, `■ No journal: ${trouble.message}`);
      return;
    }
    if (asked !== this.#asked) return;
    if (before === null) {
      this.#list.replaceChildren();
      this.#day = "";
    }
    for (const entry of answer.entries) this.#append(entry);
    this.#next = answer.next;
    this.#more.hidden = answer.next === null;
    const none = this.#list.childElementCount === 0;
    say(this.#empty, none ? "Nothing is written here yet." : "");
  }

  #append(entry) {
    const day = entry.time ? weekday(Date.parse(entry.time)) : "Without a date";
    if (day !== this.#day) {
      this.#day = day;
      this.#list.append(h("section", {}, h("h3", {}, day)));
    }
    this.#list.lastChild.append(written(entry));
  }
}

function written(entry) {
  const time = entry.time ? clockTime(Date.parse(entry.time)) : "–";
  const title = state.points().find((point) => point.name === entry.point)?.title ?? entry.point;
  const about = [title, entry.block].filter(Boolean).join(", ");
  return h(
    "article",
    { class: "entry", "data-kind": entry.kind },
    h("p", { class: "time plain" }, time),
    h(
      "div",
      {},
      h("p", { class: "about plain" }, [about, entry.author].filter(Boolean).join(" · ")),
      ...bodyOf(entry),
    ),
  );
}

function bodyOf(entry) {
  if (entry.alarm) return alarmBody(entry.alarm);
  if (entry.feeding) {
    return [h("p", {}, sentence(`Now feeding: ${entry.feeding.title || entry.feeding.what}`))];
  }
  return [
    ...paragraphs(entry.text),
    ...(entry.plants ? paragraphs(`Plants: ${entry.plants}`) : []),
    entry.photo
      ? h(
          "a",
          { href: entry.photo, target: "_blank", rel: "noopener" },
          h("img", { src: entry.photo, loading: "lazy", alt: `Photo to the note: ${entry.text}` }),
        )
      : null,
  ].filter(Boolean);
}

function alarmBody(alarm) {
  const shape = alarm.transition === "raised" ? (alarm.priority === "notice" ? "▲ " : "■ ") : "";
  const words = alarm.transition === "raised" ? `. ${capital(alarm.words)}` : "";
  const note = alarm.note ? `: ${alarm.note}` : "";
  return [
    h(
      "p",
      {},
      sentence(`${shape}${alarm.title} ${transitionWords(alarm.transition)}${note}${words}`),
    ),
  ];
}

function paragraphs(text) {
  return text.split(/\n+/).map((line) => h("p", {}, line));
}
