// The wall sheet without a new page: the form is sent, the server answers with the whole sheet, and it takes the place of the old
// one. Nothing is worked out here; without this script the same buttons bring a page.

/** Tells a screen reader what came of it. @param {string} words */
function say(words) {
  let place = document.getElementById("said");
  if (!place) {
    place = document.createElement("p");
    place.id = "said";
    place.className = "unseen";
    place.setAttribute("aria-live", "polite");
    document.body.append(place);
  }
  place.textContent = words;
}

/** How to find the focused element again in the new sheet. @param {Element | null} element */
function selectorOf(element) {
  if (element instanceof HTMLElement && element.id) return `#${CSS.escape(element.id)}`;
  if (element instanceof HTMLButtonElement) return `button[name="${CSS.escape(element.name)}"][value="${CSS.escape(element.value)}"]`;
  if (element instanceof HTMLInputElement && element.name) return `input[name="${CSS.escape(element.name)}"][value="${CSS.escape(element.value)}"]`;
  return null;
}

const KEPT = "benchleaf-walls";
const MOST_KEPT = 6;

/** @typedef {{ name: string, pairs: string }} Kept a wall's name and what its form held, as it would be posted */

/** Walls kept in this browser, the last one first. @returns {Kept[]} */
function keptWalls() {
  try {
    const walls = JSON.parse(localStorage.getItem(KEPT) ?? "[]");
    return Array.isArray(walls) ? walls.filter((wall) => typeof wall?.name === "string" && typeof wall?.pairs === "string") : [];
  } catch {
    return [];
  }
}

/** @param {Kept[]} walls */
function keep(walls) {
  try {
    localStorage.setItem(KEPT, JSON.stringify(walls.slice(0, MOST_KEPT)));
  } catch {
    // A browser that keeps nothing still works the sheet.
  }
}

/** What a form would post. @param {HTMLFormElement} form */
function posted(form) {
  const body = new URLSearchParams();
  for (const [name, value] of new FormData(form)) body.append(name, String(value));
  return body;
}

/** Keeps the survey under its wall's name. @param {HTMLFormElement} form */
function keepForm(form) {
  const body = posted(form);
  const name = body.get("/survey/name")?.trim();
  if (name) keep([{ name, pairs: body.toString() }, ...keptWalls().filter((wall) => wall.name !== name)]);
}

/** Offers the walls kept here, but not one that is on the page as it was kept. */
function offerKept() {
  const place = document.getElementById("kept");
  const buttons = place?.querySelector(".buttons");
  const form = document.getElementById("wall-form");
  if (!place || !(buttons instanceof HTMLElement) || !(form instanceof HTMLFormElement)) return;
  const here = posted(form).toString();
  const walls = keptWalls().filter((wall) => wall.pairs !== here);
  for (const old of buttons.querySelectorAll("[data-pairs]")) old.remove();
  for (const wall of walls.toReversed()) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "btn";
    button.dataset.pairs = wall.pairs;
    button.textContent = `${buttons.dataset.take ?? ""} ${wall.name}`;
    buttons.prepend(button);
  }
  place.hidden = walls.length === 0;
}

document.addEventListener("click", (event) => {
  const button = event.target instanceof Element ? event.target.closest("#kept button") : null;
  const form = document.getElementById("wall-form");
  if (!(button instanceof HTMLButtonElement) || !(form instanceof HTMLFormElement)) return;
  if (button.value === "forget") {
    keep([]);
    offerKept();
    return;
  }
  const body = new URLSearchParams(button.dataset.pairs);
  const units = document.documentElement.dataset.units ?? "";
  // Kept in one system, shown in the other: the server says it anew.
  if (body.get("units") !== units) body.append("turn", units);
  body.set("view", "sheet");
  ask(form, body, null).then(offerKept);
});

/** @type {AbortController | null} */
let running = null;

/** @param {HTMLFormElement} form @param {HTMLElement | null} submitter */
async function send(form, submitter) {
  const body = posted(form);
  if (submitter instanceof HTMLButtonElement) body.append(submitter.name, submitter.value);
  if (form.querySelector("details.survey")?.hasAttribute("open")) body.append("open", "yes");
  await ask(form, body, submitter);
  // Looking at another layout or part changes nothing that was typed.
  const fresh = document.getElementById("wall-form");
  const looked = submitter instanceof HTMLButtonElement && submitter.name !== "do";
  if (fresh instanceof HTMLFormElement && !looked) keepForm(fresh);
}

/**
 * What was typed while the answer was on its way stays as it is.
 * @param {HTMLFormElement} old
 * @param {Element} fresh
 * @param {URLSearchParams} body
 */
function keepTyping(old, fresh, body) {
  for (const field of old.elements) {
    if (!(field instanceof HTMLInputElement) || field.type !== "text") continue;
    if (field.value === field.defaultValue || field.value === body.get(field.name)) continue;
    const twin = fresh.querySelector(`input[name="${CSS.escape(field.name)}"]`);
    if (twin instanceof HTMLInputElement) twin.value = field.value;
  }
}

/**
 * Sends a survey and puts the answer in the place of the sheet.
 * @param {HTMLFormElement} form
 * @param {URLSearchParams} body
 * @param {HTMLElement | null} submitter
 */
async function ask(form, body, submitter) {
  const sheet = form.closest(".wallsheet");
  if (!sheet) return;
  running?.abort();
  running = new AbortController();
  try {
    const reply = await fetch("/wall", { method: "POST", body, headers: { Accept: "text/html", "X-Part": "wall" }, signal: running.signal });
    const page = new DOMParser().parseFromString(await reply.text(), "text/html");
    const fresh = page.getElementById("wall-sheet");
    if (!fresh) throw new Error("no sheet in the reply");
    fresh.querySelector("[autofocus]")?.removeAttribute("autofocus");
    for (const fold of sheet.querySelectorAll("details[open][id]")) fresh.querySelector(`#${CSS.escape(fold.id)}`)?.setAttribute("open", "");
    keepTyping(form, fresh, body);
    const back = selectorOf(document.activeElement);
    sheet.replaceWith(fresh);
    const faults = fresh.querySelector(".faults");
    const worked = submitter instanceof HTMLButtonElement && submitter.value === "work";
    const target = worked && faults ? faults : (back && fresh.querySelector(back)) || fresh.querySelector("h1");
    if (target instanceof HTMLElement) {
      if (target.tabIndex < 0) target.setAttribute("tabindex", "-1");
      target.focus({ preventScroll: !(worked && faults) });
    }
    say(fresh instanceof HTMLElement ? fresh.dataset.say ?? "" : "");
    document.dispatchEvent(new CustomEvent("sheet-drawn"));
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return;
    say("The calculating part is not answering. What you typed is kept; press Draw it again.");
  }
}

document.addEventListener("submit", (event) => {
  const form = event.target;
  if (!(form instanceof HTMLFormElement) || form.id !== "wall-form") return;
  // A change of units turns the whole page, its head too.
  if (event.submitter instanceof HTMLButtonElement && event.submitter.name === "turn") return;
  event.preventDefault();
  send(form, event.submitter);
});

document.addEventListener("change", (event) => {
  const field = event.target;
  if (!(field instanceof HTMLInputElement || field instanceof HTMLSelectElement) || !field.name || !field.form) return;
  if (field.form.id === "wall-form") send(field.form, null);
});

// In a field that is stepped, arrow keys step: one of the tape's, ten with Shift.
document.addEventListener("keydown", (event) => {
  const field = event.target;
  if (!(field instanceof HTMLInputElement) || field.form?.id !== "wall-form") return;
  if (event.key === "Escape") {
    field.value = field.defaultValue;
    return;
  }
  const verb = event.key === "ArrowUp" ? "more" : event.key === "ArrowDown" ? "less" : "";
  const button = verb && field.form.querySelector(`button[value="${CSS.escape(`${verb} ${field.name}`)}"]`);
  if (!(button instanceof HTMLButtonElement)) return;
  event.preventDefault();
  const by = document.createElement("button");
  by.name = button.name;
  by.value = event.shiftKey ? `${button.value} 10` : button.value;
  send(field.form, by);
});

offerKept();
