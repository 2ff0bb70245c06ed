/**
 * From the service's measurements to a line with its gaps. Pure.
 *
 * A gap is where readings are missing, where the value is unknown, or where two readings lie further
 * apart than three times what is usual. Whole buckets follow each other without a hole, so there one
 * empty bucket is a gap already, unless readings come more seldom than buckets.
 */

import { known } from "./format.js";

const APART = 3;
const BUCKET_APART = 1.5;
const READINGS_A_BUCKET = 3;

/**
 * {times, mean, min, max, warmth, corrected: columns with a null row in each gap (s since 1970); gaps and
 * flagged: [{from, to, codes}]; plotted: number of values; step: usual distance, s}. byHand: readings
 * typed now and then have no gaps.
 */
export function line(measurements, bucketS, byHand = false) {
  const step = usualStep(measurements, bucketS);
  const reach = byHand ? Infinity : breakAfter(measurements, bucketS, step);
  const made = { times: [], mean: [], min: [], max: [], warmth: [], corrected: [], gaps: [], plotted: 0, step };
  let last = null;
  let hole = false;
  for (const each of measurements) {
    const at = Date.parse(each.time) / 1000;
    const value = each.conductivity25_mS_cm;
    if (!known(value)) {
      if (!hole) row(made, at, null);
      hole = true;
      continue;
    }
    if (last !== null && (hole || at - last > reach)) {
      if (!hole) row(made, last + Math.min(step, (at - last) / 2), null);
      made.gaps.push({ from: last, to: at });
    }
    row(made, at, each);
    made.plotted++;
    last = at;
    hole = false;
  }
  if (hole && measurements.length > 0) {
    const end = Date.parse(measurements.at(-1).time) / 1000 + step;
    made.gaps.push({ from: last ?? Date.parse(measurements[0].time) / 1000, to: end });
  }
  return { ...made, flagged: flagged(measurements, step, reach) };
}

function row(made, at, each) {
  made.times.push(at);
  made.mean.push(each ? each.conductivity25_mS_cm : null);
  made.min.push(each ? (each.min_mS_cm ?? each.conductivity25_mS_cm) : null);
  made.max.push(each ? (each.max_mS_cm ?? each.conductivity25_mS_cm) : null);
  made.warmth.push(each ? each.temperature_C : null);
  made.corrected.push(each?.corrected25_mS_cm ?? null);
}

/** Stretches with flags other than "missing", which is a gap already. */
function flagged(measurements, step, reach) {
  const stretches = [];
  for (const each of measurements) {
    const codes = (each.flags ?? []).filter((code) => code !== "missing");
    if (codes.length === 0) continue;
    const at = Date.parse(each.time) / 1000;
    const open = stretches.at(-1);
    if (open && at - open.to <= Math.min(reach, APART * step)) {
      open.to = at + step;
      for (const code of codes) if (!open.codes.includes(code)) open.codes.push(code);
    } else {
      stretches.push({ from: at, to: at + step, codes: [...codes] });
    }
  }
  return stretches;
}

function breakAfter(measurements, bucketS, step) {
  const readings = median(measurements.map((each) => each.readings).filter((n) => n > 0));
  return bucketS > 0 && readings >= READINGS_A_BUCKET ? BUCKET_APART * bucketS : APART * step;
}

function usualStep(measurements, bucketS) {
  const steps = [];
  for (let i = 1; i < measurements.length; i++) {
    steps.push((Date.parse(measurements[i].time) - Date.parse(measurements[i - 1].time)) / 1000);
  }
  return Math.max(median(steps), bucketS, 0.001);
}

function median(numbers) {
  if (numbers.length === 0) return 0;
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}
