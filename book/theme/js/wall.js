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

/** @type {AbortController | null} */
let running = null;

/** @param {HTMLFormElement} form @param {HTMLElement | null} submitter */
async function send(form, submitter) {
  const sheet = form.closest(".wallsheet");
  if (!sheet) return;
  const body = new URLSearchParams();
  for (const [name, value] of new FormData(form)) body.append(name, String(value));
  if (submitter instanceof HTMLButtonElement) body.append(submitter.name, submitter.value);
  if (form.querySelector("details.survey")?.hasAttribute("open")) body.append("open", "yes");
  running?.abort();
  running = new AbortController();
  const back = selectorOf(document.activeElement);
  try {
    const reply = await fetch("/wall", { method: "POST", body, headers: { Accept: "text/html", "X-Part": "wall" }, signal: running.signal });
    const page = new DOMParser().parseFromString(await reply.text(), "text/html");
    const fresh = page.getElementById("wall-sheet");
    if (!fresh) throw new Error("no sheet in the reply");
    fresh.querySelector("[autofocus]")?.removeAttribute("autofocus");
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
