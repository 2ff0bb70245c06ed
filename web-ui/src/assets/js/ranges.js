/** How far back a chart looks. */

const HOUR = 3600;
const DAY = 24 * HOUR;

/** live: readings are added as they come; every: s after which to ask the service again. */
export const RANGES = [
  { value: "1h", words: "hour", seconds: HOUR, live: true, every: 120 },
  { value: "6h", words: "6 hours", seconds: 6 * HOUR, live: true, every: 120 },
  { value: "1d", words: "day", seconds: DAY, live: false, every: 60 },
  { value: "1w", words: "week", seconds: 7 * DAY, live: false, every: 300 },
  { value: "1m", words: "month", seconds: 30 * DAY, live: false, every: 900 },
  { value: "season", words: "season (150 days)", seconds: 150 * DAY, live: false, every: 900 },
];
