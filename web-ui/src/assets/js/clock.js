/**
 * Time of the service, not of the phone: a phone with a wrong clock must not make a fresh reading
 * look old. Set from /health, carried on with the browser's monotonic clock.
 */

let offset = Date.now() - performance.now();
let zone;

export function setNow(iso) {
  offset = Date.parse(iso) - performance.now();
}

/** Time of the service, ms since 1970. */
export function now() {
  return offset + performance.now();
}

/** An IANA zone name; one the browser does not know is left aside for the browser's own. */
export function setZone(name) {
  try {
    new Intl.DateTimeFormat("en-GB", { timeZone: name });
    zone = name;
  } catch {
    zone = undefined;
  }
}

export function timeZone() {
  return zone ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
}
