/**
 * The word over a point and whether its value still counts. Pure. Colour (tone) only repeats the
 * shape, the shape only repeats the word.
 */

/** A probe not heard of for so long is stale even if the service has not said so, s. */
const SILENT_S = 120;
/** A typed reading is of yesterday, s. */
const TYPED_OLD_S = 86400;

/** {shape, word, tone: good|look|act|unsure, stale}. */
export function verdict(point, age, connected) {
  if (point.state === "missing") return say("■", "no reading", "act", true);
  if (point.state === "waiting") {
    return point.probe
      ? say("○", "can’t tell", "unsure", false)
      : say("–", "nothing typed yet", "unsure", false);
  }
  const old = age !== null && age > (point.origin === "typed" ? TYPED_OLD_S : SILENT_S);
  const stale = !connected || old;
  if (point.quality === "bad") return say("■", "not usable", "act", stale);
  if (point.quality === "suspect") return say("▲", "look", "look", stale);
  if (point.quality === "unknown" || stale) return say("○", "can’t tell", "unsure", stale);
  return say("●", point.origin === "typed" ? "typed by hand" : "reading", "good", false);
}

function say(shape, word, tone, stale) {
  return { shape, word, tone, stale };
}
