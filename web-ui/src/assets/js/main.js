/** Ties the page together: what is heard goes to the state, the state to the pages. */

import { answers } from "./answers.js";
import { api } from "./api.js";
import { cards } from "./cards.js";
import { now, setNow, setZone } from "./clock.js";
import { header } from "./header.js";
import { history } from "./history.js";
import { messages } from "./messages.js";
import { setup } from "./setup.js";
import { state } from "./state.js";
import { follow } from "./stream.js";

const HEALTH_EVERY_MS = 10000;
const PAGES = ["now", "history", "messages", "setup"];

const find = (selector) => document.querySelector(selector);
const announce = (text) => {
  find("[data-announce]").textContent = text;
};
const writeHeader = header(document);
const writeAnswers = answers(find("[data-answers]"), find("[data-count]"));
const entries = cards(find("[data-cards]"), announce);
const pages = {
  history: history(find("#page-history")),
  messages: messages(find("#page-messages"), announce),
  setup: setup(find("#page-setup"), { saved, announce }),
};

function showPage(move) {
  const [wanted, detail] = location.hash.slice(1).split("/");
  const page = PAGES.includes(wanted) ? wanted : "now";
  for (const name of PAGES) {
    find(`#page-${name}`).hidden = name !== page;
    const link = find(`nav a[href="#${name}"], footer a[href="#${name}"]`);
    if (name === page) link.setAttribute("aria-current", "page");
    else link.removeAttribute("aria-current");
    pages[name]?.show(name === page, name === page ? decodeURIComponent(detail ?? "") : "");
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

for (const kind of ["points", "measurement", "health"]) state.on(kind, refresh);

follow("/api/v1/stream", {
  connected(is) {
    const first = state.lostAt === null && !state.connected;
    if (is === state.connected && !(first && !is)) return;
    state.connected = is;
    state.lostAt = is ? null : now();
    if (!first || !is) announce(is ? "Connected again" : "Connection to the service lost");
    state.changedHealth();
    if (is) askHealth();
    else if (first) reload();
  },
  snapshot: (points) => state.setPoints(points),
  measurement(point) {
    if (!state.setPoint(point)) reload();
  },
  reset: reload,
});

addEventListener("hashchange", () => showPage(true));
setInterval(() => {
  entries.refresh();
  writeHeader();
}, 1000);
setInterval(askHealth, HEALTH_EVERY_MS);
askHealth();
showPage(false);
