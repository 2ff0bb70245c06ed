/** What flags and causes mean, and the first thing to do about each. Keys are the service's codes. */

const FLAGS = {
  missing: "no reading",
  "outside-rated-range": "outside what the instrument is rated for",
  "both-zero": "conductivity and temperature are both zero",
  "temperature-impossible": "temperature cannot be right",
  "temperature-missing": "no temperature: not referred to 25 °C",
  "temperature-outside-compensation": "temperature is outside what the compensation covers",
  "conductivity-missing": "no conductivity in the message",
  unknown: "too little evidence to judge",
  undated: "the clock was not trusted when it came",
  "in-beaker": "probe is being checked: the liquid in the beaker, not that of its place",
  "out-of-place": "probe was lifted out and hung in something else",
  doubted: "a later check found the probe out of tolerance",
};

const FLAG_REMEDIES = {
  "in-beaker": "Finish the check and put the probe back.",
  "out-of-place": "Put the probe back where it belongs.",
  "outside-rated-range":
    "Catch a cup and compare with a handheld meter; if that agrees, the instrument is the wrong one for this strength.",
  "both-zero": "Look whether the probe has power and its plug sits tight.",
  "temperature-impossible":
    "Look whether the probe is in the water and the temperature lead is whole.",
  "temperature-missing":
    "Look at the temperature lead; until it reads, the value is at the water’s own temperature.",
  "temperature-outside-compensation":
    "Feel the water; if it is not that hot or cold, the temperature sensor is at fault.",
  "conductivity-missing": "Listen to the port and compare its messages with the profile.",
  undated:
    "Readings are kept and get their times once the box’s clock is set; look at its network.",
};

const CAUSE_REMEDIES = {
  "no-such-port": "Plug the adapter in, or choose another port.",
  "port-taken": "Close the other program that holds the port.",
  "no-permission": "Let the service’s user open serial ports, then start it again.",
  "cable-pulled": "Plug the cable in again; reading goes on by itself.",
  silent: "Look whether the instrument has power and the two data wires sit in their places.",
  unreadable: "Compare baud rate and profile with the instrument’s manual.",
  "instrument-refused": "Compare bus address and registers with the instrument’s manual.",
  "port-failed": "Unplug the adapter, wait a moment, plug it in again.",
};

export function flagWords(code) {
  return FLAGS[code] ?? code.replaceAll("-", " ");
}

/** First remedy any of the flags has; empty if none. */
export function flagRemedy(codes) {
  const code = codes.find((each) => FLAG_REMEDIES[each]);
  return code ? FLAG_REMEDIES[code] : "";
}

export function causeRemedy(cause) {
  return CAUSE_REMEDIES[cause] ?? "";
}

export function capital(text) {
  return text ? text[0].toUpperCase() + text.slice(1) : "";
}

/** The text as a sentence, with its full stop. */
export function sentence(text) {
  const whole = text.trim();
  return !whole || /[.!?…]$/.test(whole) ? whole : `${whole}.`;
}
