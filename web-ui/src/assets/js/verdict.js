/**
 * The word over a point and whether its value still counts. Pure. Colour (tone) only repeats the
 * shape, the shape only repeats the word.
 */

import { known } from "./format.js";

/** A probe not heard of for so long is silent even if the service has not said so, s. */
const SILENT_S = 120;
/** A typed reading is of yesterday, s. */
const TYPED_OLD_S = 86400;

/**
 * {shape, word, tone: good|look|act|unsure, silent, stale}. silent: nothing new is heard; stale: the
 * value shown no longer counts.
 */
export function verdict(point, age, connected) {
  const waiting = point.state === "waiting";
  const old = age !== null && age > (point.origin === "typed" ? TYPED_OLD_S : SILENT_S);
  const silent = !waiting && (point.state === "missing" || !connected || old);
  const [shape, word, tone] = words(point, silent);
  return { shape, word, tone, silent, stale: silent || (!waiting && point.quality === "bad") };
}

/** Where a band is known: as planned, or on which side of it. */
function againstPlan({ band, conductivity25_mS_cm: value }) {
  const low = band?.low_total ?? null;
  const high = band?.high_total ?? null;
  if (!known(value) || (!known(low) && !known(high))) return null;
  if (known(high) && value > high) return ["▲", "above plan", "look"];
  if (known(low) && value < low) return ["▲", "below plan", "look"];
  return ["●", "as planned", "good"];
}

function words(point, silent) {
  if (point.state === "missing") return ["■", "no reading", "act"];
  if (point.state === "waiting") {
    return point.probe ? ["○", "can’t tell", "unsure"] : ["–", "nothing typed yet", "unsure"];
  }
  if (point.quality === "bad") return ["■", "not usable", "act"];
  if (point.quality === "suspect") return ["▲", "look", "look"];
  if (point.quality === "unknown" || silent) return ["○", "can’t tell", "unsure"];
  const plan = againstPlan(point);
  if (plan) return plan;
  return ["●", point.origin === "typed" ? "typed by hand" : "reading", "good"];
}
