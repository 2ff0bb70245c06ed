/** What the page knows: points in the service's order, the connection, the service's health. */

const points = new Map();
const listeners = {
  points: new Set(),
  measurement: new Set(),
  health: new Set(),
  alarms: new Set(),
  feeding: new Set(),
};

export const state = {
  /** Whether live readings arrive. */
  connected: false,
  /** Since when they do not, by the service's time; null before the first attempt has failed. */
  lostAt: null,
  health: null,
  healthTrouble: "",
  site: null,

  /** As the service lists them. */
  alarms: { needs_answer: 0, flood: null, alarms: [] },
  /** What runs, by the name of the point. */
  feeding: new Map(),

  points: () => [...points.values()].map((entry) => entry.point),

  /** Seconds since the last reading of a point by the browser's monotonic clock; null if none. */
  age(name) {
    const entry = points.get(name);
    if (!entry || entry.point.age_s === null) return null;
    return entry.point.age_s + (performance.now() - entry.heard) / 1000;
  },

  /** All points anew. */
  setPoints(list) {
    points.clear();
    for (const point of list) points.set(point.name, { point, heard: performance.now() });
    tell("points");
  },

  /** One point; false if it is a new one, and the whole list should be asked for. */
  setPoint(point) {
    const known = points.has(point.name);
    points.set(point.name, { point, heard: performance.now() });
    tell(known ? "measurement" : "points", point);
    return known;
  },

  setAlarms(answer) {
    state.alarms = answer;
    tell("alarms");
  },

  /** One alarm in its place in the list; the order is right again after the next asking. */
  setAlarm(alarm) {
    const { alarms } = state.alarms;
    const index = alarms.findIndex((each) => each.id === alarm.id);
    if (index >= 0) alarms[index] = alarm;
    else alarms.unshift(alarm);
    tell("alarms");
  },

  setAllFeeding(list) {
    state.feeding = new Map(list.map((entry) => [entry.point, entry]));
    tell("feeding");
  },

  setFeeding(entry) {
    state.feeding.set(entry.point, entry);
    tell("feeding");
  },

  /** kind: points (the list changed), measurement (one point), health (connection, recording), alarms, feeding. */
  on(kind, listener) {
    listeners[kind].add(listener);
  },

  changedHealth: () => tell("health"),
};

function tell(kind, what) {
  for (const listener of listeners[kind]) listener(what);
}
