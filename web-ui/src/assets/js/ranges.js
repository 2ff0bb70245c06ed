/** How far back a chart looks. A season is 150 days. */

const HOUR = 3600;
const DAY = 24 * HOUR;

/** live: readings are added as they come; every: s after which to ask the service again. */
export const RANGES = [
  { value: "1h", words: "1 h", seconds: HOUR, live: true, every: 120 },
  { value: "6h", words: "6 h", seconds: 6 * HOUR, live: true, every: 120 },
  { value: "1d", words: "1 day", seconds: DAY, live: false, every: 60 },
  { value: "1w", words: "1 week", seconds: 7 * DAY, live: false, every: 300 },
  { value: "1m", words: "1 month", seconds: 30 * DAY, live: false, every: 900 },
  { value: "season", words: "season", seconds: 150 * DAY, live: false, every: 900 },
];
