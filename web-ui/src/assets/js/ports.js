/** Question one: which port. */

import { api } from "./api.js";
import { h, say } from "./dom.js";
import { field, option } from "./fields.js";

const OTHER = "";

/** {box, refresh(), link()}; changed() is called when another one is chosen. */
export function portChoice(changed) {
  const list = h("div", { class: "options" });
  const note = h("p", { class: "plain", role: "status" });
  const other = field("link_other", "Path or network address", {
    hint: "/dev/serial/by-id/… for a cable, tcp:HOST:PORT for a serial server",
    placeholder: "tcp:127.0.0.1:4001",
    spellcheck: "false",
    autocapitalize: "none",
  });
  other.hidden = true;
  const again = h("button", { type: "button", class: "second" }, "Look for ports again");

  const chosen = () => list.querySelector("input:checked");
  const onChange = () => {
    other.hidden = chosen()?.value !== OTHER;
    changed();
  };
  const refresh = async () => {
    const before = chosen()?.value ?? null;
    let ports = [];
    try {
      ports = await api.ports();
      say(
        note,
        ports.length === 0
          ? "○ No serial port is there. Plug the adapter in, then look again."
          : "",
      );
    } catch (trouble) {
      say(note, `■ ${trouble.message}`);
    }
    const keep = before ?? ports.find((port) => port.usable)?.path ?? null;
    list.replaceChildren(...ports.map((port) => line(port, keep)), elsewhere(keep === OTHER));
    onChange();
  };
  list.addEventListener("change", onChange);
  other.querySelector("input").addEventListener("change", changed);
  again.addEventListener("click", refresh);
  const box = h(
    "div",
    { class: "field", "data-field": "link" },
    list,
    other,
    h("p", { class: "error", "data-error": "link" }),
    note,
    h("div", {}, again),
  );
  const link = () => chosen()?.value || other.querySelector("input").value.trim();
  return { box, refresh, link };
}

function line(port, keep) {
  const name = port.description || port.path.split("/").at(-1);
  const remark = port.remark || (port.usable ? "ready" : "cannot be opened");
  const note = `${port.path} · ${port.usable ? remark : `▲ ${remark}`}`;
  return option("link", { value: port.path, words: name, note, checked: port.path === keep });
}

function elsewhere(checked) {
  return option("link", {
    value: OTHER,
    words: "Another one",
    note: "type a path or a network address",
    checked,
  });
}
