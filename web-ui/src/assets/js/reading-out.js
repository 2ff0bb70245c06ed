/** The chart in words: for the line below it, for screen readers, for the marks. */

import { conductivity, known, span, temperature } from "./format.js";
import { flagWords } from "./words.js";

/** A line in one sentence. */
export function summary(each) {
  const values = each.mean.filter(known);
  if (values.length === 0) return `${each.title}: no readings.`;
  const low = conductivity(Math.min(...each.min.filter(known)));
  const high = conductivity(Math.max(...each.max.filter(known)));
  const gaps =
    each.gaps.length === 0 ? "" : each.gaps.length === 1 ? ", 1 gap" : `, ${each.gaps.length} gaps`;
  return `${each.title}: ${low} to ${high} mS/cm, last ${conductivity(values.at(-1))}${gaps}.`;
}

/** What a line shows nearest to a time, s since 1970. */
export function valueWords(each, at) {
  let nearest = 0;
  for (let i = 1; i < each.times.length; i++) {
    if (Math.abs(each.times[i] - at) < Math.abs(each.times[nearest] - at)) nearest = i;
  }
  const value = each.mean[nearest];
  if (!known(value)) return `${each.title}: no reading`;
  const [low, high] = [conductivity(each.min[nearest]), conductivity(each.max[nearest])];
  const band = low === high ? "" : ` (${low} to ${high})`;
  const warm = known(each.warmth[nearest]) ? `, ${temperature(each.warmth[nearest])}` : "";
  const corrected = each.corrected[nearest];
  const likely = known(corrected) ? `, likely ${conductivity(corrected)} by a later check` : "";
  return `${each.title} ${conductivity(value)}${band} mS/cm${likely}${warm}`;
}

/** What the marks under a line mean, with the shape they have there. */
export function markWords(each) {
  const words = [];
  if (each.gaps.length > 0) {
    const longest = Math.max(...each.gaps.map(({ from, to }) => to - from));
    const many = each.gaps.length === 1 ? "one gap" : `${each.gaps.length} gaps, the longest`;
    words.push(`■ ${each.title}: ${many} of ${span(longest)} without readings`);
  }
  const codes = [...new Set(each.flagged.flatMap((flag) => flag.codes))];
  for (const code of codes) words.push(`▲ ${each.title}: ${flagWords(code)}`);
  return words;
}
