/** How people are reached when they are elsewhere, and the button that tries it. */

import { api } from "./api.js";
import { h, say } from "./dom.js";
import { moment } from "./format.js";

const EVERY_MS = 3000;

const LEAST = {
  note: "tells everything, and the daily note",
  low: "tells all alarms",
  medium: "tells alarms of medium and high priority",
  high: "tells urgent alarms only",
};

export function messages(page, announce) {
  return new Messages(page, announce);
}

class Messages {
  #announce;
  #intro = h("p", { class: "why" });
  #list = h("div", { class: "channels plain", "data-channels": true });
  #button = h("button", { type: "button", "data-test-messages": true }, "Send a test message");
  #outcome = h("p", { class: "error", role: "alert", "data-test-outcome": true });
  #timer = 0;
  #testing = false;

  constructor(page, announce) {
    this.#announce = announce;
    this.#button.addEventListener("click", () => this.#test());
    page.append(
      h("h2", {}, "Messages"),
      this.#intro,
      this.#list,
      h("p", { class: "buttons" }, this.#button),
      this.#outcome,
    );
  }

  show(visible) {
    clearInterval(this.#timer);
    if (!visible) return;
    this.#ask();
    this.#timer = setInterval(() => this.#ask(), EVERY_MS);
  }

  async #ask() {
    try {
      this.#write(await api.messages());
    } catch (trouble) {
      say(this.#outcome, trouble.message);
    }
  }

  async #test() {
    say(this.#outcome, "");
    this.#button.disabled = true;
    try {
      await api.testMessages();
      this.#testing = true;
      this.#announce("A test message is on its way");
      await this.#ask();
    } catch (trouble) {
      say(this.#outcome, trouble.message);
      this.#button.disabled = false;
    }
  }

  #write({ channels, unanswered, quiet_until: quietUntil }) {
    const none = channels.length === 0;
    say(
      this.#intro,
      none
        ? "Nobody is told yet. Name a mail server under [mail] or a receiver under [[webhook]] in the configuration; docs/messages.md shows how."
        : `${waits(unanswered)}${quietUntil ? ` Quiet until ${moment(Date.parse(quietUntil))}: only what is urgent is sent.` : ""}`,
    );
    const busy = channels.some((channel) => channel.testing);
    if (this.#testing && !busy) {
      this.#testing = false;
      const failed = channels.filter((channel) => !channel.last?.delivered);
      this.#announce(
        failed.length === 0
          ? "The test message was taken everywhere"
          : `The test message failed: ${failed.map((channel) => channel.name).join(", ")}`,
      );
    }
    this.#button.hidden = none;
    this.#button.disabled = busy;
    say(this.#button, busy ? "A test message is on its way …" : "Send a test message");
    const cards = channels.map(card);
    if (cards.map((each) => each.outerHTML).join("") !== this.#list.innerHTML) {
      this.#list.replaceChildren(...cards);
    }
  }
}

function waits(unanswered) {
  if (unanswered === 0) return "No alarm waits for an answer.";
  return unanswered === 1
    ? "One alarm waits for an answer."
    : `${unanswered} alarms wait for an answer.`;
}

function card(channel) {
  const [tone, mark, verdict] = judge(channel);
  return h(
    "article",
    { class: "channel", "data-channel": channel.name },
    h("h3", {}, channel.name === "mail" ? "E-mail" : `Webhook ${channel.name}`),
    h("p", { class: tone, "data-channel-verdict": true }, `${mark} ${verdict}`),
    channel.last && h("p", { class: "said" }, `${moment(Date.parse(channel.last.at))}: ${channel.last.said}`),
    h("p", { class: "unsure" }, `${channel.leads_to}; ${LEAST[channel.least]}`),
    backlog(channel) && h("p", {}, backlog(channel)),
  );
}

function judge({ last, failures, testing }) {
  if (testing) return ["unsure", "○", "trying"];
  if (!last) return ["unsure", "○", "not tried since the start"];
  if (last.delivered) return ["good", "●", "delivered"];
  return failures > 1
    ? ["act", "■", `not delivered, ${failures} attempts in a row`]
    : ["look", "▲", "not delivered"];
}

function backlog({ open, waiting, next_attempt: next }) {
  const parts = [];
  if (open > 0) parts.push(open === 1 ? "1 message to deliver" : `${open} messages to deliver`);
  if (waiting > 0) parts.push(waiting === 1 ? "1 notice waits" : `${waiting} notices wait`);
  if (next) parts.push(`next attempt ${moment(Date.parse(next))}`);
  return parts.join("; ");
}
