/** Asks the service. Every failure becomes a Trouble with words for people. */

const PATIENCE_MS = 20000;

/** A refusal of the service (RFC 9457) or a service that cannot be reached (status 0). */
export class Trouble extends Error {
  constructor(message, status, errors) {
    super(message);
    this.status = status;
    this.errors = errors;
  }
}

export const api = {
  health: () => ask("/health"),
  site: () => ask("/api/v1/site"),
  points: () => ask("/api/v1/points"),
  ports: () => ask("/api/v1/setup/ports"),
  profiles: () => ask("/api/v1/setup/profiles"),
  messages: () => ask("/api/v1/messages"),
  testMessages: () => send("/api/v1/messages/test", {}),
  listen: (request) => send("/api/v1/setup/listen", request),
  savePoint: (draft) => send("/api/v1/setup/points", draft),
  typeReading: (name, reading) =>
    send(`/api/v1/points/${encodeURIComponent(name)}/readings`, reading),
  access: () => ask("/api/v1/access"),
  devices: () => ask("/api/v1/access/devices"),
  offerCode: (role) => send("/api/v1/access/codes", { role }),
  revoke: (id) => send(`/api/v1/access/devices/${encodeURIComponent(id)}/revoke`, {}),
  leave: () => send("/api/v1/access/leave", {}),
  alarms: () => ask("/api/v1/alarms"),
  alarm: (id, deed, body) =>
    send(`/api/v1/alarms/${id.split("/").map(encodeURIComponent).join("/")}/${deed}`, body),
  feeding: () => ask("/api/v1/feeding"),
  feed: (body) => send("/api/v1/feeding", body),
  feedLevel: (body) => send("/api/v1/feeding/level", body),
  fertilizers: () => ask("/api/v1/fertilizers"),
  mix: (form) => send("/api/v1/mix", form),
  checks: () => ask("/api/v1/checks"),
  check: (kind, name) => ask(`/api/v1/checks/${kind}/${encodeURIComponent(name)}`),
  beginCheck: (kind, name, wish) =>
    send(`/api/v1/checks/${kind}/${encodeURIComponent(name)}/begin`, wish),
  stepCheck: (kind, name, step) =>
    send(`/api/v1/checks/${kind}/${encodeURIComponent(name)}/step`, step),
  compareProbe: (name, comparison) =>
    send(`/api/v1/checks/probe/${encodeURIComponent(name)}/compare`, comparison),
  checkRecord: (id) => ask(`/api/v1/check-records/${encodeURIComponent(id)}`),
  feedLines: () => ask("/api/v1/feed-lines"),
  logLineChange: (name, body) =>
    send(`/api/v1/feed-lines/${encodeURIComponent(name)}/changes`, body),
  note: (note) => send("/api/v1/journal", note),
  /** wanted: {kind, point, from, to, before, limit}; what is empty is left out. */
  journal(wanted) {
    const query = new URLSearchParams();
    for (const [name, value] of Object.entries(wanted)) {
      if (value !== null && value !== undefined && value !== "") query.set(name, String(value));
    }
    return ask(`/api/v1/journal?${query}`);
  },
  explain(name, time) {
    const query = time ? `?${new URLSearchParams({ at: new Date(time).toISOString() })}` : "";
    return ask(`/api/v1/points/${encodeURIComponent(name)}/explain${query}`);
  },
  measurements(name, from, to, points) {
    const query = new URLSearchParams({
      from: from.toISOString(),
      to: to.toISOString(),
      points: String(points),
    });
    return ask(`/api/v1/points/${encodeURIComponent(name)}/measurements?${query}`);
  },
};

function send(path, body) {
  return ask(path, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(body),
  });
}

async function ask(path, options = {}) {
  let response;
  try {
    response = await fetch(path, { ...options, signal: AbortSignal.timeout(PATIENCE_MS) });
  } catch {
    throw new Trouble("Feedwitness does not answer; is it running?", 0, []);
  }
  if (response.status === 401) {
    // Shut out: in place of this page comes the one that asks for a code.
    location.replace("/");
  }
  const body = await response.json().catch(() => null);
  if (!response.ok) {
    const words = body?.detail || body?.title || `the service answered ${response.status}`;
    throw new Trouble(words, response.status, body?.errors ?? []);
  }
  return body;
}
