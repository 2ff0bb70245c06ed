/** The part of a strength that the feed added: what is read here less the source water. Pure. */

import { known } from "./format.js";

const FED = new Set(["tank", "line", "drain"]);

/** The source point whose value counts for others; null without one. */
export function sourceOf(points) {
  const sources = points.filter(
    (point) =>
      point.place === "source" && known(point.conductivity25_mS_cm) && point.quality !== "bad",
  );
  return sources.find((point) => point.state === "reading") ?? sources[0] ?? null;
}

/** mS/cm added by feed at a point, or null where it cannot be said. */
export function addedByFeed(point, source) {
  if (!source || !FED.has(point.place) || !known(point.conductivity25_mS_cm)) return null;
  return point.conductivity25_mS_cm - source.conductivity25_mS_cm;
}
