/** Phones and other devices: lets one in by a code, shows which are, shuts one out. */

import { api } from "./api.js";
import { h, s } from "./dom.js";
import { options, showErrors } from "./fields.js";
import { moment } from "./format.js";

const REFRESH_MS = 3000;
const ROLES = [
  {
    value: "see-and-act",
    words: "See and act",
    note: "Type readings, acknowledge, set up. For who works with the feed.",
    checked: true,
  },
  { value: "see", words: "See only", note: "Looks at everything, changes nothing." },
];
const ROLE_WORDS = { "see-and-act": "sees and acts", see: "sees only" };

export function devices(page, { announce }) {
  return new DevicesPage(page, announce);
}

class DevicesPage {
  #self = h("p", { class: "why", "data-self": true });
  #form;
  #code = h("div", { class: "pairing-code", "data-code": true, hidden: true });
  #list = h("ul", { class: "devices plain", "data-devices": true });
  #outcome = h("p", { class: "error", role: "alert" });
  #announce;
  #timer = 0;
  #ends = 0;
  #known = null;
  #shown = "";

  constructor(page, announce) {
    this.#announce = announce;
    this.#form = h(
      "form",
      { class: "setup", novalidate: true, hidden: true, "data-offer": true },
      h(
        "fieldset",
        { class: "question" },
        h("legend", {}, "Let another device in"),
        options("role", ROLES),
        h("div", { class: "buttons" }, h("button", {}, "Show a code")),
        this.#code,
      ),
    );
    this.#form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.#offer();
    });
    page.append(
      h("h2", {}, "Devices"),
      this.#self,
      this.#form,
      h("section", { class: "question", "data-paired": true }, h("h3", {}, "Paired now"), this.#list),
      this.#outcome,
    );
  }

  show(open) {
    clearInterval(this.#timer);
    if (!open) {
      this.#hideCode();
      return;
    }
    this.#refresh();
    this.#timer = setInterval(() => this.#tick(), REFRESH_MS);
  }

  #tick() {
    if (this.#ends && performance.now() > this.#ends) this.#hideCode();
    this.#refresh();
  }

  async #refresh() {
    try {
      const self = await api.access();
      this.#self.textContent = selfWords(self);
      this.#form.hidden = !self.open || self.role !== "see-and-act";
      const list = self.role === "see-and-act" ? (await api.devices()).devices : [own(self)];
      this.#write(list, self);
      this.#outcome.textContent = "";
    } catch (trouble) {
      this.#outcome.textContent = trouble.message;
    }
  }

  #write(list, self) {
    if (this.#known && this.#ends) {
      const fresh = list.find((each) => !this.#known.has(each.id));
      if (fresh) {
        this.#hideCode();
        this.#announce(`${fresh.name} is paired`);
      }
    }
    this.#known = new Set(list.map((each) => each.id));
    const text = JSON.stringify(list.map((each) => ({ ...each, last_seen: seenWords(each) })));
    // Nothing moves under a thumb that is about to answer.
    const asking = this.#list.querySelector(".out .buttons:not([hidden])");
    if (text === this.#shown || asking) return;
    this.#shown = text;
    this.#list.replaceChildren(
      ...(list.length > 0
        ? list.map((each) => this.#line(each))
        : [h("li", {}, self.open ? "No device is paired yet." : "None.")]),
    );
  }

  #line(device) {
    const line = h(
      "li",
      { "data-device": device.name },
      h(
        "div",
        {},
        h("b", {}, device.name, device.self ? " (this one)" : ""),
        h("span", { class: "facts" }, facts(device)),
      ),
    );
    line.append(this.#shutOut(device));
    return line;
  }

  /** A second tap instead of an undo: a token that was thrown away cannot be had back. */
  #shutOut(device) {
    const sure = h("div", { class: "buttons", hidden: true });
    const first = h(
      "button",
      { type: "button", class: "second", "aria-label": `Shut ${device.name} out` },
      "Shut out",
    );
    const yes = h("button", { type: "button", "data-yes": true }, `Yes, shut ${device.name} out`);
    const no = h("button", { type: "button", class: "second" }, "Leave it in");
    const ask = (open) => {
      sure.hidden = !open;
      first.hidden = open;
      (open ? no : first).focus();
    };
    first.addEventListener("click", () => ask(true));
    no.addEventListener("click", () => ask(false));
    yes.addEventListener("click", () => this.#revoke(device));
    sure.append(yes, no);
    return h("div", { class: "out" }, first, sure);
  }

  async #revoke(device) {
    try {
      if (device.self) {
        await api.leave();
        location.replace("/");
        return;
      }
      await api.revoke(device.id);
      this.#announce(`${device.name} is shut out`);
      this.#list.replaceChildren();
      this.#shown = "";
      await this.#refresh();
    } catch (trouble) {
      this.#outcome.textContent = trouble.message;
    }
  }

  async #offer() {
    const button = this.#form.querySelector("button");
    button.disabled = true;
    try {
      const offer = await api.offerCode(this.#form.elements.role.value);
      this.#ends = performance.now() + offer.valid_s * 1000;
      this.#showCode(offer);
      this.#announce(`The code is ${offer.code.split("").join(" ")}`);
    } catch (trouble) {
      this.#outcome.textContent = showErrors(this.#form, trouble.errors ?? []) || trouble.message;
    } finally {
      button.disabled = false;
    }
  }

  #showCode({ code, address, qr, valid_s: valid }) {
    this.#code.hidden = false;
    this.#code.replaceChildren(
      h("p", { class: "digits", "data-digits": true }, `${code.slice(0, 4)} ${code.slice(4)}`),
      qr ? picture(qr) : null,
      h(
        "p",
        {},
        address
          ? `On the other device open ${address} and type these digits, or point its camera at the picture. `
          : "Open the page on the other device by the name of this machine and type these digits. ",
        `They let one device in and hold for ${Math.round(valid / 60)} minutes.`,
      ),
    );
  }

  #hideCode() {
    this.#ends = 0;
    this.#code.hidden = true;
    this.#code.replaceChildren();
  }
}

function picture({ size, path }) {
  return s(
    "svg",
    { viewBox: `0 0 ${size} ${size}`, class: "qr", role: "img", "aria-label": "The same as a picture" },
    s("rect", { width: size, height: size }),
    s("path", { d: path }),
  );
}

function selfWords(self) {
  const who =
    self.by === "device"
      ? `This device is paired as “${self.name}”; it ${ROLE_WORDS[self.role]}.`
      : "You are at the desk: the browser on the box itself needs no pairing.";
  if (self.open) return who;
  return (
    `${who} Only this machine can open the page. To take it to the barrel on a phone, make an access ` +
    "key with “feedwitness access-key” and name it in the configuration; docs/access.md leads through it."
  );
}

function own(self) {
  return { id: "", name: self.name, role: self.role, paired_at: null, last_seen: null, self: true };
}

function facts(device) {
  const paired = device.paired_at ? `paired ${moment(Date.parse(device.paired_at))}` : "paired";
  const by = device.paired_by ? ` from ${device.paired_by}` : "";
  return [ROLE_WORDS[device.role], `${paired}${by}`, seenWords(device)].filter(Boolean).join(" · ");
}

function seenWords(device) {
  if (device.self) return "";
  return device.last_seen
    ? `last seen ${moment(Date.parse(device.last_seen))}`
    : "not seen since the service started";
}
