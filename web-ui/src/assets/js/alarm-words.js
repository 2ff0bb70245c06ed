/** How alarms are put in words and shapes. Pure. */

import { conductivity, known, moment, span } from "./format.js";
import { now } from "./clock.js";

/** {shape, tone} of an alarm: shape and words say it, colour repeats it. */
export function look(alarm) {
  if (setAside(alarm)) return { shape: "–", tone: "unsure" };
  if (alarm.priority === "notice") return { shape: "▲", tone: "look" };
  if (!alarm.active) return { shape: "○", tone: "unsure" };
  return { shape: "■", tone: alarm.needs_answer ? "act" : "look" };
}

export function setAside(alarm) {
  return Boolean(alarm.shelved || alarm.out_of_service || alarm.suppressed);
}

/** "since 12:05, 14 min"; "came 12:05 and went again 12:20". */
export function when(alarm) {
  if (!alarm.raised) return "since a time not known: the clock was not set";
  const raised = Date.parse(alarm.raised);
  if (alarm.active) return `since ${moment(raised)}, ${span((now() - raised) / 1000)}`;
  const changed = alarm.changed ? ` and went by itself ${moment(Date.parse(alarm.changed))}` : "";
  return `came ${moment(raised)}${changed}`;
}

/** "answered by Kim 12:06: injector reset"; empty if nobody did. */
export function answered(alarm) {
  if (!alarm.answer) return "";
  const note = alarm.answer.note ? `: ${alarm.answer.note}` : "";
  const at = alarm.answer.time ? ` ${moment(Date.parse(alarm.answer.time))}` : "";
  return `answered by ${alarm.answer.who}${at}${note}`;
}

/** Why it makes no noise at the moment; empty if it may. */
export function asideWords(alarm) {
  const by = (entry, words) =>
    `${words} by ${entry.who}${entry.note ? `: ${entry.note}` : ""}`;
  if (alarm.out_of_service) return by(alarm.out_of_service, "out of service,");
  if (alarm.shelved) {
    const until = alarm.shelved.until ? ` until ${moment(Date.parse(alarm.shelved.until))}` : "";
    return by(alarm.shelved, `set aside${until}`);
  }
  return alarm.suppressed ? `not watched now: ${alarm.suppressed}` : "";
}

const TRANSITIONS = {
  raised: "came up",
  acknowledged: "answered",
  reopened: "answer taken back",
  cleared: "went away",
  shelved: "set aside",
  unshelved: "watched again",
  suppressed: "not watched",
  unsuppressed: "watched again",
  "out-of-service": "taken out of service",
  "in-service": "put back in service",
};

export function transitionWords(transition) {
  return TRANSITIONS[transition] ?? transition.replaceAll("-", " ");
}

/** "1.35 to 1.65 mS/cm", "up to 2.40 mS/cm added by feed"; empty without limits. */
export function bandWords(band) {
  if (!band) return "";
  const low = known(band.low) ? conductivity(band.low) : "";
  const high = known(band.high) ? conductivity(band.high) : "";
  if (!low && !high) return "";
  const range = low && high ? `${low} to ${high}` : low ? `at least ${low}` : `up to ${high}`;
  return `${range} mS/cm${band.of === "added" ? " added by feed" : ""}`;
}
