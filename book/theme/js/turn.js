// What was typed into calculations is carried over a change of units: kept for one page load, then asked for again in the
// new units. The server says every figure anew; nothing is converted here.

import { ask, posted } from "./work.js";

const KEPT = "benchleaf.turned";

document.querySelector("form.choices")?.addEventListener("submit", (event) => {
  const button = /** @type {SubmitEvent} */ (event).submitter;
  if (!(button instanceof HTMLButtonElement) || button.name !== "units") return;
  /** @type {Record<string, string>} */
  const kept = {};
  for (const form of document.querySelectorAll("form.work[data-changed]")) {
    const section = form.closest("section.calculation");
    if (section && form instanceof HTMLFormElement) kept[section.id] = posted(form).toString();
  }
  try {
    sessionStorage.setItem(KEPT, JSON.stringify({ page: location.pathname, kept }));
  } catch {
    // A browser that keeps nothing shows the worked examples again.
  }
});

function bringBack() {
  const text = sessionStorage.getItem(KEPT);
  sessionStorage.removeItem(KEPT);
  const { page, kept } = JSON.parse(text ?? "{}");
  if (page !== location.pathname) return;
  for (const [id, pairs] of Object.entries(kept ?? {})) {
    const form = document.getElementById(id)?.querySelector("form.work");
    if (!(form instanceof HTMLFormElement)) continue;
    const body = new URLSearchParams(String(pairs));
    body.append("do", `turn ${document.documentElement.dataset.units}`);
    ask(form, body, false);
  }
}

try {
  bringBack();
} catch {
  // As above.
}
