/** Ties the page together: what is heard goes to the state, the state to the pages. */

import { alarms } from "./alarms.js";
import { answers } from "./answers.js";
import { api } from "./api.js";
import { cards } from "./cards.js";
import { checks } from "./checks.js";
import { now, setNow, setZone } from "./clock.js";
import { devices } from "./devices.js";
import { header } from "./header.js";
import { history } from "./history.js";
import { journal } from "./journal.js";
import { lines } from "./lines.js";
import { messages } from "./messages.js";
import { mix } from "./mix.js";
import { more, MORE } from "./more.js";
import { setup } from "./setup.js";
import { state } from "./state.js";
import { follow } from "./stream.js";
import { suggestWho } from "./who.js";

const HEALTH_EVERY_MS = 10000;
const ALARMS_AFTER_MS = 300;
const PAGES = ["now", "alarms", "journal", "mix", "history", "more", ...MORE.map(([name]) => name)];

const find = (selector) => document.querySelector(selector);
const announce = (text) => {
  find("[data-announce]").textContent = text;
};
const writeHeader = header(document);
const writeAnswers = answers(find("[data-answers]"), find("[data-count]"), find("[data-alarm-count]"));
const entries = cards(find("[data-cards]"), announce);
const pages = {
  alarms: alarms(find("#page-alarms"), { announce }),
  journal: journal(find("#page-journal"), { announce }),
  mix: mix(find("#page-mix")),
  more: more(find("#page-more")),
  history: history(find("#page-history")),
  lines: lines(find("#page-lines"), { announce }),
  messages: messages(find("#page-messages"), announce),
  checks: checks(find("#page-checks"), { announce }),
  setup: setup(find("#page-setup"), { saved, announce }),
  devices: devices(find("#page-devices"), { announce }),
};

function showPage(move) {
  const [wanted, detail] = location.hash.slice(1).split("/");
  const page = PAGES.includes(wanted) ? wanted : "now";
  for (const name of PAGES) {
    find(`#page-${name}`).hidden = name !== page;
    pages[name]?.show(name === page, name === page ? decodeURIComponent(detail ?? "") : "");
  }
  const inMore = MORE.some(([name]) => name === page);
  for (const link of document.querySelectorAll("nav a")) {
    const current = link.getAttribute("href") === `#${inMore ? "more" : page}`;
    if (current) link.setAttribute("aria-current", "page");
    else link.removeAttribute("aria-current");
  }
  if (move) {
    if (page !== "now") find("[data-notice]").hidden = true;
    scrollTo(0, 0);
    find("main").focus({ preventScroll: true });
  }
}

async function reload() {
  try {
    state.setPoints(await api.points());
  } catch {
    // The stream brings the list as soon as the service answers again.
  }
}

function saved(words) {
  const notice = find("[data-notice]");
  notice.textContent = words;
  notice.hidden = false;
  reload();
}

async function loadAlarms() {
  try {
    const [list, feeding] = await Promise.all([api.alarms(), api.feeding()]);
    state.setAlarms(list);
    state.setAllFeeding(feeding.points);
  } catch {
    // Asked again with the next change, and every time the stream comes back.
  }
}

let alarmsDue = 0;

/** Many alarms may change at once; the list is asked for when they have. */
function alarmsChanged() {
  clearTimeout(alarmsDue);
  alarmsDue = setTimeout(loadAlarms, ALARMS_AFTER_MS);
}

async function askHealth() {
  try {
    state.health = await api.health();
    state.healthTrouble = "";
    setNow(state.health.now);
    if (!state.site) {
      state.site = await api.site();
      setZone(state.site.zone);
    }
  } catch (trouble) {
    state.healthTrouble = trouble.message;
  }
  state.changedHealth();
}

function refresh() {
  writeHeader();
  writeAnswers();
}

for (const kind of ["points", "measurement", "health", "alarms"]) state.on(kind, refresh);

follow("/api/v1/stream", {
  connected(is) {
    const first = state.lostAt === null && !state.connected;
    if (is === state.connected && !(first && !is)) return;
    state.connected = is;
    state.lostAt = is ? null : now();
    if (!first || !is) announce(is ? "Connected again" : "Connection to the service lost");
    state.changedHealth();
    if (is) {
      askHealth();
      alarmsChanged();
    } else if (first) reload();
  },
  snapshot: (points) => state.setPoints(points),
  measurement(point) {
    if (!state.setPoint(point)) reload();
  },
  alarm({ announces, alarm }) {
    if (announces) announce(`${alarm.subject_title}: ${alarm.title}`);
    alarmsChanged();
  },
  feeding: (entry) => state.setFeeding(entry),
  reset() {
    reload();
    alarmsChanged();
  },
});

/** What a device may not do is not offered; the service refuses it in any case. */
async function askRole() {
  try {
    const { role, by, name } = await api.access();
    document.body.dataset.role = role;
    if (by === "device") suggestWho(name);
  } catch {
    // Everything is offered then.
  }
}

addEventListener("hashchange", () => showPage(true));
setInterval(() => {
  entries.refresh();
  writeHeader();
}, 1000);
setInterval(askHealth, HEALTH_EVERY_MS);
askHealth();
askRole();
showPage(false);
