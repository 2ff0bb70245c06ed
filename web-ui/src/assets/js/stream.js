/**
 * Live measurements. A browser's event source gives up on an answer such as 503 and never tries
 * again, so a closed one is opened anew, at first after a second, at last every fifteen.
 */

const FIRST_WAIT_MS = 1000;
const LONGEST_WAIT_MS = 15000;

/** hear: {snapshot(points), measurement(point), alarm(change), feeding(entry), reset(), connected(boolean)}. */
export function follow(address, hear) {
  let wait = FIRST_WAIT_MS;
  const open = () => {
    const source = new EventSource(address);
    source.onopen = () => {
      wait = FIRST_WAIT_MS;
      hear.connected(true);
    };
    source.onerror = () => {
      hear.connected(false);
      if (source.readyState === EventSource.CLOSED) {
        setTimeout(open, wait);
        wait = Math.min(2 * wait, LONGEST_WAIT_MS);
      }
    };
    source.addEventListener("snapshot", (event) => hear.snapshot(JSON.parse(event.data)));
    source.addEventListener("measurement", (event) => hear.measurement(JSON.parse(event.data)));
    for (const kind of ["alarm", "feeding"]) {
      source.addEventListener(kind, (event) => hear[kind](JSON.parse(event.data)));
    }
    source.addEventListener("reset", () => hear.reset());
  };
  open();
}
