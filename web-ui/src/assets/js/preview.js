/** Lets one hear a port: what arrives, in octets, as text, and what it means. */

import { api } from "./api.js";
import { h, say } from "./dom.js";

const SECONDS = 4;

/** {box, stop()}; ask() gives {link, profile, unit}, or null while they are not chosen yet. */
export function preview(ask) {
  let listening = false;
  const status = h("p", { class: "plain", role: "status" });
  const list = h("ol", { class: "heard", hidden: true, tabindex: 0, "aria-label": "What arrives" });
  const button = h("button", { type: "button", class: "second" }, "Listen to this port");

  const stop = () => {
    listening = false;
    button.textContent = "Listen to this port";
  };

  const start = async () => {
    listening = true;
    button.textContent = "Stop listening";
    while (listening) {
      const request = ask();
      if (!request) {
        say(status, "Choose a port and a profile first; then one can hear whether they fit.");
        stop();
        return;
      }
      if (list.hidden) say(status, `Listening to ${request.link} …`);
      await once(request);
    }
  };

  const once = async (request) => {
    try {
      const answer = await api.listen({ ...request, seconds: SECONDS });
      if (!listening) return;
      show(answer, request);
      if (answer.trouble) stop();
    } catch (trouble) {
      list.hidden = true;
      say(status, `■ ${trouble.errors[0]?.message ?? trouble.message}`);
      stop();
    }
  };

  const show = ({ trouble, heard }, { link }) => {
    list.hidden = heard.length === 0;
    list.replaceChildren(...heard.map(line));
    const good = heard.filter((each) => each.understood).length;
    if (trouble) say(status, `■ ${trouble}`);
    else if (heard.length === 0) {
      say(status, `○ Nothing arrived from ${link} in ${SECONDS} s. Still listening …`);
    } else if (good === 0) {
      say(
        status,
        "▲ Something arrives, but this profile does not understand it. Try another profile.",
      );
    } else {
      say(status, `● ${good} of ${heard.length} messages understood. This profile fits.`);
    }
  };

  button.addEventListener("click", () => (listening ? stop() : start()));
  const box = h(
    "div",
    { class: "field", "data-preview": true },
    h("div", {}, button),
    status,
    list,
  );
  return { box, stop };
}

function line({ hex, text, understood, verdict }) {
  return h(
    "li",
    { "data-understood": String(understood) },
    h(
      "strong",
      { class: `plain ${understood ? "good" : "look"}` },
      `${understood ? "●" : "▲"} ${verdict}`,
    ),
    text ? h("code", {}, text) : null,
    h("code", { class: "hex" }, hex),
  );
}
