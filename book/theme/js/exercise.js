// An exercise inside a chapter, without a new page: an attempt is sent, the server marks it, and the whole exercise takes the
// place of the old one. When one comes near the reader it asks for fresh numbers, once. Without this script the same form and
// the same link bring a page.

import { take } from "./practice.js";

/** @param {Element} section @returns {HTMLInputElement | null} */
const box = (section) => section.querySelector("input[name='said']");

/**
 * Asks the server for the exercise and puts it in the place of the old one.
 * @param {Element} section
 * @param {string} address
 * @param {RequestInit} how
 */
async function exchange(section, address, how) {
  const reply = await fetch(address, { ...how, headers: { Accept: "text/html", "X-Part": "exercise" } });
  const page = new DOMParser().parseFromString(await reply.text(), "text/html");
  const fresh = page.getElementById(section.id);
  if (!fresh) throw new Error("no exercise in the reply");
  section.replaceWith(fresh);
  attend(fresh);
  return fresh;
}

/** @param {Element} section */
function failed(section) {
  const note = section.querySelector(".silent") ?? document.createElement("p");
  note.className = "silent";
  note.setAttribute("role", "status");
  note.textContent = "The calculating part is not answering. What you typed is kept; press Check it to ask again.";
  section.querySelector("form")?.append(note);
}

/** @param {Element} section */
function attend(section) {
  const form = section.querySelector("form.attempt");
  if (!(form instanceof HTMLFormElement)) return;
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const body = new URLSearchParams();
    for (const [name, value] of new FormData(form)) body.append(name, String(value));
    try {
      const marked = await exchange(section, form.action, { method: "POST", body });
      take(marked);
      const verdict = marked.querySelector(".verdict");
      (verdict instanceof HTMLElement ? verdict : box(marked))?.focus();
    } catch {
      failed(section);
    }
  });
  const other = section.querySelector("a.fresh");
  other?.addEventListener("click", async (event) => {
    event.preventDefault();
    try {
      box(await exchange(section, other.getAttribute("href") ?? "", {}))?.focus();
    } catch {
      failed(section);
    }
  });
}

const near = new IntersectionObserver((seen) => {
  for (const { target, isIntersecting } of seen) {
    if (!isIntersecting) continue;
    near.unobserve(target);
    // Nobody's typing is taken away, and the numbers that were printed will do where none come.
    if (box(target)?.value || target.contains(document.activeElement)) continue;
    exchange(target, target.querySelector("a.fresh")?.getAttribute("href") ?? "", {}).catch(() => undefined);
  }
}, { rootMargin: "400px" });

for (const section of document.querySelectorAll("section.practice.placed")) {
  attend(section);
  near.observe(section);
}
