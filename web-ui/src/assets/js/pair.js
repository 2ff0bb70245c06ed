/**
 * The one page a device sees before it is paired. It stands alone: until then the service gives away
 * nothing else.
 */

const ADDRESS = "/api/v1/access/pair";
const PATIENCE_MS = 30000;

const form = document.querySelector("[data-pair]");
const outcome = form.querySelector("[data-outcome]");
const { code, name } = form.elements;

/** The picture at the desk leads to /#pair/12345678; what stands after # is sent to no server. */
function takeScanned() {
  const scanned = /^#pair\/([0-9]{8})$/.exec(location.hash);
  if (!scanned) return false;
  code.value = grouped(scanned[1]);
  history.replaceState(null, "", location.pathname);
  name.focus();
  return true;
}

addEventListener("hashchange", takeScanned);
if (!takeScanned()) code.focus();

code.addEventListener("input", () => {
  const digits = code.value.replaceAll(/[^0-9]/g, "").slice(0, 8);
  if (code.selectionStart === code.value.length) code.value = grouped(digits);
});

form.addEventListener("submit", async (event) => {
  event.preventDefault();
  const button = form.querySelector("button");
  say([]);
  const missing = check();
  if (missing.length > 0) {
    say(missing);
    return;
  }
  button.disabled = true;
  try {
    say(await pair());
  } finally {
    button.disabled = false;
  }
});

function grouped(digits) {
  return digits.length > 4 ? `${digits.slice(0, 4)} ${digits.slice(4)}` : digits;
}

function check() {
  const errors = [];
  if (code.value.replaceAll(/[^0-9]/g, "").length !== 8) {
    errors.push({ field: "code", message: "the code has eight digits; type all of them" });
  }
  if (!name.value.trim()) {
    errors.push({ field: "name", message: "no name given; such as Barrel phone" });
  }
  return errors;
}

/** Errors by field; none if the page has gone on to the readings. */
async function pair() {
  let answer;
  try {
    answer = await fetch(ADDRESS, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify({ code: code.value, name: name.value }),
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
  } catch {
    return [{ field: "", message: "Feedwitness does not answer; is this phone on its network?" }];
  }
  if (answer.ok) {
    location.replace("/");
    return [];
  }
  const problem = await answer.json().catch(() => null);
  if (problem?.errors?.length > 0) return problem.errors;
  return [{ field: "", message: problem?.detail ?? `the service answered ${answer.status}` }];
}

function say(errors) {
  for (const place of form.querySelectorAll("[data-error]")) place.textContent = "";
  for (const input of [code, name]) input.removeAttribute("aria-invalid");
  outcome.textContent = "";
  for (const { field, message } of errors) {
    const place = field ? form.querySelector(`[data-error="${CSS.escape(field)}"]`) : outcome;
    (place ?? outcome).textContent = message;
    form.elements[field]?.setAttribute("aria-invalid", "true");
  }
  form.querySelector("[aria-invalid]")?.focus();
}
