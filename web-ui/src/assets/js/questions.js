/** The choices the setup page offers, in the words of the trade. Values are the service's. */

export const KINDS = [
  {
    value: "false",
    words: "A probe on a cable or a serial server",
    note: "It is read all the time.",
    checked: true,
  },
  { value: "true", words: "By hand", note: "You type in what a handheld meter shows." },
];

export const PLACES = [
  {
    value: "source",
    title: "Source",
    words: "Source water",
    note: "Before anything is added; others are compared with it.",
  },
  { value: "tank", title: "Tank", words: "Mixing tank", note: "Ready feed, mixed in a batch." },
  {
    value: "line",
    title: "Line",
    words: "Line",
    note: "Behind the injector, on the way to the plants.",
  },
  { value: "drain", title: "Drain", words: "Drain", note: "What runs off below the pots." },
  { value: "other", title: "", words: "Somewhere else" },
];

export const UNITS = [
  ["", "as the profile says"],
  ["µS/cm", "µS/cm"],
  ["mS/cm", "mS/cm"],
  ["dS/m", "dS/m (the same number as mS/cm)"],
  ["mS/m", "mS/m"],
  ["S/m", "S/m"],
  ["CF", "CF (ten times mS/cm)"],
];

export const COMPENSATES = [
  {
    value: "false",
    words: "No, it sends the value at the water’s own temperature",
    note: "Feedwitness refers it to 25 °C.",
    checked: true,
  },
  {
    value: "true",
    words: "Yes, it sends the value at 25 °C",
    note: "Feedwitness leaves it as it is.",
  },
];

export const COMPENSATIONS = [
  {
    value: "linear",
    words: "Linear",
    note: "For feed. 1.88 % per kelvin unless you know better.",
    checked: true,
  },
  {
    value: "iso7888",
    words: "Natural water (ISO 7888)",
    note: "For source water alone; it over-corrects feed in the cold.",
  },
  {
    value: "kcl",
    words: "Potassium chloride",
    note: "For a probe standing in a standard solution.",
  },
  {
    value: "none",
    words: "Not at all",
    note: "Only if the water always has 25 °C; else the value follows the weather.",
  },
];

/** A short name from a title that no other point has yet: "Glasshouse line" → "glasshouse-line". */
export function suggestedName(title, taken) {
  const plain = title
    .normalize("NFD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^[^a-z]+|-+$/g, "")
    .slice(0, 28)
    .replace(/-+$/, "");
  if (!plain) return "";
  let name = plain;
  for (let i = 2; taken.includes(name); i++) name = `${plain}-${i}`;
  return name;
}
