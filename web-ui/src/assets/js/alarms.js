/** The Alarms page: what needs an answer first, then what goes on, then what was set aside. */

import { alarmEntry } from "./alarm-entry.js";
import { setAside } from "./alarm-words.js";
import { h, say } from "./dom.js";
import { state } from "./state.js";
import { whoLine } from "./who.js";

const GROUPS = [
  ["Needs an answer", (alarm) => alarm.needs_answer && !setAside(alarm)],
  ["Answered, and still there", (alarm) => alarm.priority !== "notice" && !setAside(alarm)],
  ["Notices", (alarm) => !setAside(alarm)],
  ["Set aside", () => true],
];

export function alarms(page, { announce }) {
  const head = h("p", { class: "lead", "data-lead": true });
  const flood = h("p", { class: "notice", hidden: true });
  const box = h("div", { class: "alarm-groups", "data-alarms": true });
  const feed = h(
    "p",
    { class: "plain soft" },
    "Follow alarms in a feed reader: ",
    h("a", { href: "/alarms.atom" }, "alarms.atom"),
    ". Feedwitness is no safety interlock: it tells, it closes no valve.",
  );
  const who = whoLine();
  page.append(h("h2", {}, "Alarms"), head, flood, who.box, box, feed);
  const entries = new Map();

  const changed = (alarm) => {
    state.setAlarm(alarm);
    announce(alarm.needs_answer ? "Answer taken back" : `${alarm.title}: kept`);
  };
  const entryOf = (alarm) => {
    const entry = entries.get(alarm.id) ?? alarmEntry(alarm, who, changed);
    entries.set(alarm.id, entry);
    entry.update(alarm);
    return entry.article;
  };
  const refresh = () => {
    const { alarms: list, flood: many } = state.alarms;
    say(head, lead(list));
    who.box.hidden = list.length === 0;
    flood.hidden = !many;
    say(flood, many ? `▲ Many at once: ${many.words}. They may have one cause.` : "");
    const left = [...list];
    const groups = GROUPS.map(([words, belongs]) => {
      const mine = left.filter(belongs);
      for (const each of mine) left.splice(left.indexOf(each), 1);
      return [words, mine];
    }).filter(([, mine]) => mine.length > 0);
    arrange(box, groups, entryOf);
    for (const id of [...entries.keys()]) {
      if (!list.some((alarm) => alarm.id === id)) entries.delete(id);
    }
  };
  state.on("alarms", refresh);
  setInterval(() => !page.hidden && refresh(), 10_000);
  refresh();
  return {
    show(open) {
      if (!open) return;
      who.refresh();
      refresh();
    },
  };
}

/** Moves entries only where they are not yet, so that an open field keeps its cursor. */
function arrange(box, groups, entryOf) {
  const wanted = groups.map(([words, list]) => {
    const section =
      [...box.children].find((each) => each.dataset.group === words) ??
      h("section", { "data-group": words }, h("h2", {}, words));
    const articles = list.map(entryOf);
    const present = [...section.children].slice(1);
    const same = articles.length === present.length && articles.every((a, i) => a === present[i]);
    if (!same) section.replaceChildren(section.firstChild, ...articles);
    return section;
  });
  const same =
    wanted.length === box.children.length && wanted.every((each, i) => each === box.children[i]);
  if (!same) box.replaceChildren(...wanted);
}

function lead(list) {
  const open = list.filter((alarm) => alarm.needs_answer && !setAside(alarm)).length;
  if (open === 1) return "■ One alarm needs an answer.";
  if (open > 1) return `■ ${open} alarms need an answer.`;
  return "● Nothing needs an answer.";
}
