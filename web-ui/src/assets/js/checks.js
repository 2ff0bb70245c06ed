/** Checks of probes and meters: who is due, and the way through a check at the probe. */

import { api } from "./api.js";
import { checkChart } from "./check-chart.js";
import { compareForm } from "./check-compare.js";
import { checkForm } from "./check-form.js";
import { checkRecord } from "./check-record.js";
import { replacedForm } from "./check-replaced.js";
import { guide } from "./check-guide.js";
import { h, say } from "./dom.js";
import { moment } from "./format.js";
import { capital, sentence } from "./words.js";

const OPEN_MS = 1000;
const LIST_MS = 5000;
const VERDICT = {
  pass: ["good", "● pass"],
  fail: ["act", "■ fail"],
  "cant-tell": ["unsure", "○ can’t tell"],
};
const STATUS = { good: "good", due: "look", overdue: "act", "never-checked": "look" };

export function checks(page, { announce }) {
  return new ChecksPage(page, announce);
}

export function verdictMark(verdict) {
  const [tone, words] = VERDICT[verdict] ?? VERDICT["cant-tell"];
  return h("b", { class: tone }, words);
}

class ChecksPage {
  #announce;
  #body = h("div", { class: "checks", "data-checks": true });
  #trouble = h("p", { class: "error", role: "alert", "data-check-trouble": true });
  #timer = 0;
  #where = "";
  #shown = "";
  #guide = null;

  constructor(page, announce) {
    this.#announce = announce;
    page.append(h("h2", {}, "Checks"), this.#body, this.#trouble);
  }

  /** detail: empty, "probe.tank", or "record.ID". */
  show(visible, detail) {
    clearInterval(this.#timer);
    if (!visible) return;
    this.#where = detail;
    this.#shown = "";
    this.#guide = null;
    this.#body.replaceChildren();
    say(this.#trouble, "");
    this.#refresh();
    const [kind] = detail.split(".");
    if (kind !== "record") {
      this.#timer = setInterval(() => this.#refresh(), detail ? OPEN_MS : LIST_MS);
    }
  }

  async #refresh() {
    const where = this.#where;
    const [kind, name] = split(where);
    try {
      if (kind === "record") {
        const record = await api.checkRecord(name);
        if (where === this.#where) this.#body.replaceChildren(checkRecord(record));
      } else if (kind) {
        const [detail, list] = await Promise.all([api.check(kind, name), api.checks()]);
        if (where === this.#where) this.#one(detail, list);
      } else {
        const list = await api.checks();
        if (where === this.#where) this.#list(list);
      }
      if (this.#trouble.dataset.kept === undefined) say(this.#trouble, "");
    } catch (trouble) {
      say(this.#trouble, trouble.message);
    }
  }

  #list(list) {
    const text = JSON.stringify([list.subjects, list.shelf]);
    if (text === this.#shown) return;
    this.#shown = text;
    this.#body.replaceChildren(
      h(
        "p",
        { class: "why" },
        "A reading is worth what the last check of its probe is worth. Take two bottles, a weaker and a stronger one.",
      ),
      h("ul", { class: "check-list plain" }, list.subjects.map(subjectLine)),
      h("h3", {}, "On the shelf"),
      shelf(list.shelf),
      h(
        "p",
        { class: "buttons plain" },
        h("a", { class: "button second", href: "/api/v1/checks/export", download: true }, "Season’s log as a table"),
      ),
      meterForm(),
    );
  }

  #one(detail, list) {
    const meters = list.subjects.filter((each) => each.kind === "meter");
    this.#guide?.compare?.write(meters);
    const text = JSON.stringify(detail);
    if (text === this.#shown) return;
    const first = this.#shown === "";
    this.#shown = text;
    const { stand, open } = detail;
    const act = (deed, body = {}) => this.#act(stand, deed, body);
    const on = open ? `open ${open.id}` : `closed ${stand.aside ?? ""}`;
    if (first || this.#guide?.on !== on) {
      const made = open
        ? guide(stand, act)
        : checkForm(stand, list.shelf, (deed, body) => this.#act(stand, deed, body));
      const idle = !open && !stand.aside;
      const compare =
        idle && stand.kind === "probe" ? compareForm(stand, (done) => this.#one(done.now, list)) : null;
      compare?.write(meters);
      this.#guide = { on, ...made, compare };
      this.#body.replaceChildren(
        h("p", { class: "plain" }, h("a", { href: "#checks" }, "All probes and meters")),
        h("h3", { class: "check-title" }, stand.title),
        h("p", { class: "error", role: "alert", "data-record-trouble": true }),
        this.#guide.box,
        compare?.box ?? "",
        h("div", { "data-past": true }),
        idle && (detail.checks.length > 0 || stand.kind === "probe") ? replacedForm(stand, act) : "",
      );
    }
    say(this.#body.querySelector("[data-record-trouble]"), sentence(capital(stand.trouble ?? "")));
    this.#guide.write(detail);
    const { chart, checks: all, compared, doubted, undoable } = detail;
    const known = JSON.stringify([chart, all, compared, doubted, undoable, open === null]);
    if (this.#guide.past === known) return;
    this.#guide.past = known;
    this.#body.querySelector("[data-past]").replaceChildren(past(detail, act));
  }

  async #act(stand, deed, body) {
    say(this.#trouble, "");
    delete this.#trouble.dataset.kept;
    try {
      const done =
        deed === "begin"
          ? await api.beginCheck(stand.kind, stand.name, body)
          : await api.stepCheck(stand.kind, stand.name, { step: deed, ...body });
      this.#announce(done.words);
      this.#one(done.now, await api.checks());
      return null;
    } catch (trouble) {
      if (deed === "begin") return trouble;
      this.#trouble.dataset.kept = "";
      say(this.#trouble, trouble.message);
      this.#trouble.scrollIntoView({ block: "nearest" });
      return trouble;
    }
  }
}

function split(where) {
  const dot = where.indexOf(".");
  return dot < 0 ? ["", ""] : [where.slice(0, dot), where.slice(dot + 1)];
}

function subjectLine(stand) {
  return h(
    "li",
    { "data-subject": `${stand.kind}.${stand.name}` },
    h("a", { href: `#checks/${stand.kind}.${stand.name}` }, stand.title),
    h(
      "p",
      { class: STATUS[stand.status] },
      stand.checking ? "▲ a check is open" : sentence(capital(age(stand))),
    ),
    stand.status === "never-checked" ? null : h("p", {}, "Left it: ", verdictMark(stand.verdict)),
    stand.out_of_place ? h("p", { class: "look" }, `▲ ${sentence(stand.out_of_place)}`) : null,
  );
}

function age(stand) {
  if (stand.status === "never-checked") return "never checked";
  const when = stand.due_at ? moment(Date.parse(stand.due_at)) : "";
  if (stand.status === "good") return `next check ${when}`;
  return stand.status === "due" ? `due since ${when}` : `overdue since ${when}`;
}

function shelf(bottles) {
  if (bottles.length === 0) {
    return h(
      "p",
      { class: "why" },
      "Nothing yet. Write a [[standard]] table for each bottle into the configuration; docs/checks.md shows how.",
    );
  }
  return h(
    "ul",
    { class: "shelf plain" },
    bottles.map((bottle) =>
      h(
        "li",
        { "data-bottle": bottle.name },
        h("b", {}, bottle.name),
        ` ${bottle.title}`,
        bottle.opened ? `, opened ${bottle.opened}` : "",
        bottle.expires ? `, good until ${bottle.expires}` : "",
        bottle.warnings.map((words) => h("p", { class: "look" }, `▲ ${sentence(words)}`)),
      ),
    ),
  );
}

/** A meter gets on record by its first check. */
function meterForm() {
  const name = h("input", { type: "text", id: "meter-name", placeholder: "pen", autocomplete: "off" });
  return h(
    "form",
    {
      class: "plain meter",
      onsubmit: (event) => {
        event.preventDefault();
        const plain = name.value.trim().toLowerCase().replaceAll(/[^a-z0-9_-]+/g, "-");
        if (/^[a-z]/.test(plain)) location.hash = `#checks/meter.${plain.slice(0, 32)}`;
      },
    },
    h("label", { for: "meter-name" }, "Check a handheld meter, called"),
    name,
    h("button", { class: "second" }, "Go on"),
  );
}

function past({ chart, checks: all, compared, doubted, undoable, stand, open }, act) {
  return h(
    "div",
    { class: "past" },
    chart.points.length > 0 ? checkChart(chart) : null,
    chart.points.length > 0 ? h("p", { class: "plain" }, sentence(capital(chart.words))) : null,
    all.length > 0 ? h("h3", {}, "Checks on record") : null,
    h(
      "ul",
      { class: "check-list plain" },
      all.map((one) =>
        h(
          "li",
          {},
          h("a", { href: `#checks/record.${one.id}` }, moment(Date.parse(one.begun))),
          h("p", {}, verdictMark(one.verdict), ` ${one.who}, ${one.end}`),
        ),
      ),
    ),
    compared.length > 0 ? h("h3", {}, "Comparisons on record") : null,
    h(
      "ul",
      { class: "check-list plain" },
      compared.map((one) =>
        h(
          "li",
          { "data-comparison": true },
          h("p", {}, h("b", {}, moment(Date.parse(one.time))), " ", verdictMark(one.verdict), one.who === "feedwitness" ? "" : ` ${one.who}`),
          h("p", {}, sentence(capital(one.words))),
        ),
      ),
    ),
    doubted.length > 0 ? h("h3", {}, "Readings in doubt") : null,
    doubted.map((range) =>
      h(
        "p",
        { class: "plain", "data-doubted": true },
        `${moment(Date.parse(range.from))} to ${moment(Date.parse(range.to))}: likely error ${signed(range.error_at_start)} to ${signed(range.error_at_end)}. `,
        sentence(capital(range.words)),
      ),
    ),
    undoable && !open
      ? h(
          "p",
          { class: "buttons needs-act" },
          h(
            "button",
            { type: "button", class: "second", "data-undo": true, onclick: () => undo(stand, act) },
            "Take the last adjustment back",
          ),
        )
      : null,
  );
}

async function undo(stand, act) {
  const { who } = await import("./who.js");
  if (confirm(`Take the last adjustment of ${stand.title} back? Readings from now on use the curve before it.`)) {
    act("undo", { who: who() || "somebody" });
  }
}

function signed(percent) {
  if (percent === null) return "unknown";
  return `${percent < 0 ? "−" : "+"}${Math.abs(percent).toFixed(1)} %`;
}
