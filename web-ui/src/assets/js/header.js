/** Nursery, time, whether it records, and how far it is safe on disk. */

import { now } from "./clock.js";
import { say } from "./dom.js";
import { clockTime, moment, weekdayAndTime } from "./format.js";
import { state } from "./state.js";

export function header(root) {
  const at = (name) => root.querySelector(`[data-${name}]`);
  const parts = {
    site: at("site"),
    clock: at("clock"),
    recording: at("recording"),
    durable: at("durable"),
    lost: at("lost"),
    version: at("version"),
  };
  return () => {
    const { health, site, connected } = state;
    if (site) {
      say(parts.site, site.name);
      const title = `${site.name} · Feedwitness`;
      if (document.title !== title) document.title = title;
    }
    say(parts.clock, weekdayAndTime(now()));
    say(parts.recording, recordingWords(connected, health));
    parts.recording.className = health?.status === "trouble" || state.lostAt !== null ? "act" : "";
    const synced = health?.durable_through?.synced_at;
    say(parts.durable, synced ? `safe on disk to ${clockTime(Date.parse(synced), true)}` : "");
    if (health) say(parts.version, `Feedwitness ${health.version}`);
    parts.lost.hidden = state.lostAt === null;
    if (!parts.lost.hidden && parts.lost.dataset.at !== String(state.lostAt)) {
      parts.lost.dataset.at = String(state.lostAt);
      parts.lost.replaceChildren(lostWords());
    }
  };
}

function recordingWords(connected, health) {
  if (!connected) return state.lostAt !== null ? "■ connection lost" : "asking the service …";
  if (!health) return "asking the service …";
  return health.status === "ok" ? "● recording" : "■ recording with trouble";
}

function lostWords() {
  const line = document.createElement("p");
  line.textContent =
    `■ This page has lost the service since ${moment(state.lostAt)}. What you see stands still. ` +
    "It tries again by itself; if this lasts, look whether the box has power and network.";
  return line;
}
