// Search as you type: the page asks the server as its form would, and shows what it found in place.

const form = document.querySelector("form.ask");
const input = form?.querySelector("input");

/** @type {AbortController | undefined} */
let running;

/** The list of what was found, made once below the form. */
function place() {
  let found = document.getElementById("found");
  if (!found) {
    found = document.createElement("div");
    found.id = "found";
    found.setAttribute("aria-live", "polite");
    form?.after(found);
  }
  return found;
}

async function look() {
  if (!(form instanceof HTMLFormElement) || !input) return;
  const query = input.value.trim();
  running?.abort();
  if (query.length < 2) {
    place().replaceChildren();
    return;
  }
  running = new AbortController();
  const address = new URL(form.action);
  address.searchParams.set("q", query);
  try {
    const reply = await fetch(address, { signal: running.signal });
    const page = new DOMParser().parseFromString(await reply.text(), "text/html");
    place().replaceChildren(...(page.getElementById("found")?.childNodes ?? []));
  } catch {
    // Asked again with the next letter, or by pressing Find.
  }
}

/** @type {number | undefined} */
let soon;
input?.addEventListener("input", () => {
  window.clearTimeout(soon);
  soon = window.setTimeout(look, 150);
});
