/** A note for the journal: what was done, what the plants look like, a photo. */

import { api } from "./api.js";
import { h, say } from "./dom.js";
import { field, showErrors } from "./fields.js";
import { photoOf } from "./photo.js";
import { state } from "./state.js";
import { whoLine } from "./who.js";

/** {box}; kept(entry) is told what was written. */
export function journalForm(kept) {
  const who = whoLine();
  const outcome = h("p", { class: "error", role: "alert" });
  const picture = h("input", { type: "file", name: "photo", accept: "image/*", id: "journal-photo" });
  const form = h(
    "form",
    { class: "typed", hidden: true, novalidate: true, "aria-label": "A note for the journal" },
    area("text", "What was done, what was seen"),
    area("plants", "What the plants look like (may be empty)"),
    h(
      "div",
      { class: "pair even" },
      field("point", "Measuring point", { options: [["", "none in particular"]] }),
      field("block", "Bench or block", { hint: "As you call it.", maxlength: "64" }),
    ),
    h(
      "div",
      { class: "field", "data-field": "photo" },
      h("label", { for: "journal-photo" }, "Photo"),
      picture,
      h("p", { class: "error", "data-error": "photo" }),
    ),
    who.box,
    h("div", { class: "buttons" }, h("button", {}, "Keep this note")),
    outcome,
  );
  const button = h(
    "button",
    { type: "button", class: "second", "aria-expanded": "false" },
    "Write a note",
  );
  const show = (open) => {
    form.hidden = !open;
    button.setAttribute("aria-expanded", String(open));
    say(button, open ? "Close without keeping" : "Write a note");
    if (!open) return;
    offerPoints(form.elements.point);
    who.refresh();
    form.elements.text.focus();
  };
  button.addEventListener("click", () => show(form.hidden));
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const author = who.name();
    if (author && (await keep(form, author, outcome, kept))) show(false);
  });
  return { box: h("div", { class: "journal-form" }, button, form) };
}

function area(name, label) {
  const id = `journal-${name}`;
  return h(
    "div",
    { class: "field", "data-field": name },
    h("label", { for: id }, label),
    h("textarea", { id, name, rows: "3", maxlength: name === "text" ? "4000" : "2000" }),
    h("p", { class: "error", "data-error": name }),
  );
}

function offerPoints(select) {
  select.replaceChildren(
    select.options[0],
    ...state.points().map((point) => h("option", { value: point.name }, point.title)),
  );
}

async function keep(form, author, outcome, kept) {
  const at = form.elements;
  say(outcome, showErrors(form, []));
  if (!at.text.value.trim()) {
    showErrors(form, [{ field: "text", message: "nothing written; a few words will do" }]);
    return false;
  }
  const submit = form.querySelector(".buttons button");
  submit.disabled = true;
  try {
    const note = { author, text: at.text.value.trim() };
    for (const name of ["plants", "point", "block"]) {
      if (at[name].value.trim()) note[name] = at[name].value.trim();
    }
    if (at.photo.files.length > 0) note.photo = await photoOf(at.photo.files[0]);
    kept(await api.note(note));
    form.reset();
    return true;
  } catch (trouble) {
    say(outcome, showErrors(form, trouble.errors ?? []) || trouble.message);
    return false;
  } finally {
    submit.disabled = false;
  }
}
