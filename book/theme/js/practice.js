// What has been learnt, kept on this device: for each exercise how often it was tried, and how many were right in a row.
// The server marks attempts; without this script everything works except the record.

const KEPT = "benchleaf.practice";
const LEARNT = 3;

/** @typedef {{ tried: number, row: number, seed: string }} Record */

/** @returns {{ [exercise: string]: Record }} */
function records() {
  try {
    return JSON.parse(localStorage.getItem(KEPT) ?? "{}") ?? {};
  } catch {
    return {};
  }
}

/** @param {{ [exercise: string]: Record }} all */
function keep(all) {
  try {
    localStorage.setItem(KEPT, JSON.stringify(all));
  } catch {
    // A browser that keeps nothing has no record.
  }
}

/** One question counts once, however often the page is loaded. @param {Element | null} section */
export function take(section) {
  if (!(section instanceof HTMLElement) || section.dataset.right === undefined) return;
  const { exercise = "", seed = "", right } = section.dataset;
  const all = records();
  const before = all[exercise] ?? { tried: 0, row: 0, seed: "" };
  if (before.seed === seed) return;
  all[exercise] = { tried: before.tried + 1, row: right === "yes" ? before.row + 1 : 0, seed };
  keep(all);
}

function show() {
  const rows = document.querySelectorAll("li[data-exercise]");
  if (rows.length === 0) return;
  const all = records();
  let learnt = 0;
  for (const row of rows) {
    if (!(row instanceof HTMLElement)) continue;
    const record = all[row.dataset.exercise ?? ""];
    const place = row.querySelector(".record");
    const done = record !== undefined && record.row >= LEARNT;
    learnt += done ? 1 : 0;
    row.classList.toggle("learnt", done);
    if (place) place.textContent = record ? (done ? "learnt" : `${record.row} of ${LEARNT} in a row`) : "";
  }
  const said = document.getElementById("learnt");
  if (said && Object.keys(all).length > 0) said.textContent = `${learnt} of ${rows.length} learnt. Three right in a row, and a question counts as learnt. The record is kept on this device alone.`;
  const forget = document.getElementById("forget");
  if (!forget) return;
  forget.hidden = Object.keys(all).length === 0;
  forget.addEventListener("click", () => { keep({}); show(); });
}

take(document.querySelector("section.practice[data-right]"));
show();
