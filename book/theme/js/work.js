// Calculations without a new page: a form is sent, the server answers with the whole calculation, and it takes the place of
// the old one. Focus stays where it was. Nothing is worked out here; without this script the same form brings a page.

import { used } from "./recent.js";

const STEP_KEYS = new Map([["ArrowUp", "more"], ["ArrowDown", "less"]]);
const HOLD_FIRST = 450;
const HOLD_NEXT = 110;
const SLOW = 500;

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

/** How to find the element again in a new copy of the calculation. @param {Element | null} element */
function selectorOf(element) {
  if (element instanceof HTMLElement && element.id && element.closest("form.work")) return `#${CSS.escape(element.id)}`;
  if (element instanceof HTMLButtonElement && !element.classList.contains("unseen")) {
    return `button[value="${CSS.escape(element.value)}"]`;
  }
  if (element instanceof HTMLInputElement) return `input[name="${CSS.escape(element.name)}"][value="${CSS.escape(element.value)}"]`;
  return null;
}

/** @type {Map<string, AbortController>} */
const running = new Map();

/**
 * What was typed while the answer was on its way stays as it is.
 * @param {HTMLFormElement} old
 * @param {HTMLFormElement} fresh
 * @param {URLSearchParams} body
 */
function keepTyping(old, fresh, body) {
  for (const field of old.elements) {
    if (!(field instanceof HTMLInputElement) || field.type !== "text") continue;
    if (field.value === field.defaultValue || field.value === body.get(field.name)) continue;
    const twin = fresh.elements.namedItem(field.name);
    if (twin instanceof HTMLInputElement) twin.value = field.value;
  }
}

/**
 * Asks for a calculation and puts the answer in the place of the old one.
 * @param {HTMLFormElement} form
 * @param {URLSearchParams} body what is posted
 * @param {boolean} asked whether somebody pressed the button and waits for it
 */
export async function ask(form, body, asked) {
  const section = form.closest("section.calculation");
  if (!section) return;
  running.get(section.id)?.abort();
  const control = new AbortController();
  running.set(section.id, control);
  // A look that takes longer than a moment says so; the best so far stays in sight below it.
  const slow = window.setTimeout(() => {
    const line = document.createElement("p");
    line.className = "silent";
    line.textContent = "Working it out. What stands below is the best so far.";
    section.querySelector(".answer")?.prepend(line);
    section.querySelector(".answer")?.setAttribute("aria-busy", "true");
    say(line.textContent);
  }, SLOW);
  try {
    const reply = await fetch(form.action, { method: "POST", body, headers: { Accept: "text/html", "X-Part": "calculation" }, signal: control.signal });
    const page = new DOMParser().parseFromString(await reply.text(), "text/html");
    const fresh = page.getElementById(section.id);
    const answered = fresh?.querySelector("form.work");
    if (!fresh || !(answered instanceof HTMLFormElement)) throw new Error("no calculation in the reply");
    answered.dataset.changed = "";
    const faults = fresh.querySelector(".faults");
    faults?.removeAttribute("autofocus");
    // Only what can differ is exchanged: cautions, example and sources stay as the page has them.
    section.querySelector(":scope > .faults")?.remove();
    // The list of faults would push the fields away from under a finger: it comes when somebody asked for the answer.
    if (faults && asked) form.before(faults);
    keepTyping(form, answered, body);
    const active = document.activeElement;
    const back = selectorOf(active);
    const [from, to] = active instanceof HTMLInputElement && active.type === "text" ? [active.selectionStart, active.selectionEnd] : [];
    form.replaceWith(answered);
    const target = asked && faults ? faults : back && answered.querySelector(back);
    if (target instanceof HTMLElement) target.focus({ preventScroll: !(asked && faults) });
    if (target instanceof HTMLInputElement && target.type === "text") target.setSelectionRange(from ?? null, to ?? null);
    say(fresh.dataset.say ?? "");
    const question = section.querySelector("header :is(h1, h2, h3)")?.textContent ?? "";
    if (asked && !faults) used({ path: `${location.pathname.slice(1)}#${section.id}`, title: question, place: document.querySelector("h1")?.textContent ?? "" });
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return;
    const sentence = "The calculating part is not answering. What you typed is kept; press Work it out to ask again.";
    const answer = section.querySelector(".answer");
    const note = answer?.querySelector(".silent") ?? document.createElement("p");
    note.className = "silent";
    note.textContent = sentence;
    answer?.prepend(note);
    say(sentence);
  } finally {
    window.clearTimeout(slow);
    section.querySelector(".answer")?.removeAttribute("aria-busy");
    if (running.get(section.id) === control) running.delete(section.id);
  }
}

/** The pairs a form would post. @param {HTMLFormElement} form */
export function posted(form) {
  const body = new URLSearchParams();
  for (const [name, value] of new FormData(form)) body.append(name, String(value));
  return body;
}

/** @param {HTMLFormElement} form @param {HTMLElement | null} submitter */
function send(form, submitter) {
  const body = posted(form);
  const button = submitter instanceof HTMLButtonElement ? submitter : null;
  if (button) body.append(button.name, button.value);
  return ask(form, body, button?.value === "work");
}

/** @param {EventTarget | null} target @returns {HTMLFormElement | null} */
const formOf = (target) => (target instanceof Element ? target.closest("form.work") : null);

document.addEventListener("submit", (event) => {
  const form = formOf(event.target);
  if (!form) return;
  // A change of units turns the whole page, its head too.
  if (event.submitter instanceof HTMLButtonElement && event.submitter.value.startsWith("turn ")) return;
  event.preventDefault();
  send(form, event.submitter);
});

document.addEventListener("change", (event) => {
  const form = formOf(event.target);
  if (form) send(form, null);
});

document.addEventListener("keydown", (event) => {
  const field = event.target;
  const form = formOf(field);
  if (!form || !(field instanceof HTMLInputElement)) return;
  if (event.key === "Escape") {
    field.value = field.defaultValue;
    return;
  }
  const verb = STEP_KEYS.get(event.key);
  const button = verb && form.querySelector(`button[value="${CSS.escape(`${verb} ${field.name}`)}"]`);
  if (!(button instanceof HTMLButtonElement)) return;
  event.preventDefault();
  const by = document.createElement("button");
  by.name = button.name;
  by.value = event.shiftKey ? `${button.value} 10` : button.value;
  send(form, by);
});

// A stepper that is held goes on stepping.
document.addEventListener("pointerdown", (event) => {
  const button = event.target instanceof Element ? event.target.closest(".dimension button, .count button") : null;
  if (!(button instanceof HTMLButtonElement)) return;
  const { value } = button;
  /** @type {number | undefined} */
  let timer;
  const again = () => {
    const now = document.querySelector(`button[value="${CSS.escape(value)}"]`);
    if (now instanceof HTMLButtonElement && now.form) send(now.form, now);
    timer = window.setTimeout(again, HOLD_NEXT);
  };
  timer = window.setTimeout(again, HOLD_FIRST);
  const stop = () => window.clearTimeout(timer);
  for (const end of ["pointerup", "pointercancel", "blur"]) window.addEventListener(end, stop, { once: true });
});
