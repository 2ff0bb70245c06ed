/** Words along the time axis: the clock within a day, the date where a day begins. */

import { clockTime, date } from "./format.js";

const DAY = 86400;

/** For uPlot's axis.values: splits in s since 1970, spacing in s. */
export function timeTicks(splits, spacing) {
  let shownDate = "";
  return splits.map((at) => {
    const day = date(at * 1000);
    if (spacing >= DAY) return day;
    const clock = clockTime(at * 1000, spacing < 60);
    const fresh = day !== shownDate && (shownDate === "" || clock.startsWith("00:00"));
    if (day !== shownDate) shownDate = day;
    return fresh ? `${clock}\n${day}` : clock;
  });
}
