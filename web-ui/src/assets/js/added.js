/** The part of a strength that the feed added: what is read here less the source water. Pure. */

import { decimals, known } from "./format.js";

const FED = new Set(["tank", "line", "drain"]);

/** The source point whose value counts for others; null without one. */
export function sourceOf(points) {
  const sources = points.filter(
    (point) => point.place === "source" && known(point.conductivity25_mS_cm),
  );
  const usable = (point) => point.state === "reading" && point.quality !== "bad";
  // The last value of a silent source still serves, and the page says how old it is.
  return sources.find(usable) ?? sources.find((point) => point.state === "missing") ?? null;
}

/**
 * mS/cm added by feed at a point, or null where it cannot be said. Made from the figures as shown,
 * so that the sum on the page comes out: 1.50 less 0.46 is 1.04 and not, unrounded, 1.03.
 */
export function addedByFeed(point, source) {
  if (!source || !FED.has(point.place) || !known(point.conductivity25_mS_cm)) return null;
  const places = placesOf(point);
  const shown = (value) => Number(value.toFixed(places));
  return shown(point.conductivity25_mS_cm) - shown(source.conductivity25_mS_cm);
}

/** Decimals of the part added: those of the total, two at most. */
export function placesOf(point) {
  return Math.min(2, decimals(point.conductivity25_mS_cm));
}
