// Ticks stay where they were made, in this browser. A step whose checks are all ticked gets its tick on the story pole.

const KEPT = "benchleaf.ticks";

/** @returns {Record<string, boolean>} */
function kept() {
  try {
    return JSON.parse(localStorage.getItem(KEPT) ?? "{}");
  } catch {
    return {};
  }
}

/** @param {Record<string, boolean>} ticks */
function keep(ticks) {
  try {
    localStorage.setItem(KEPT, JSON.stringify(ticks));
  } catch {
    // A browser that keeps nothing still shows the tick on the page.
  }
}

/** @type {HTMLInputElement[]} */
const boxes = [...document.querySelectorAll("input[data-tick]")].filter((box) => box instanceof HTMLInputElement);
const ticks = kept();

function markSteps() {
  for (const mark of document.querySelectorAll("[data-step]")) {
    const path = mark instanceof HTMLElement ? mark.dataset.step ?? "" : "";
    mark.classList.toggle("done", ticks[`${path.replace(".html", "")}/`] === true);
  }
}

for (const box of boxes) {
  const key = box.dataset.tick ?? "";
  box.checked = ticks[key] === true;
  box.addEventListener("change", () => {
    if (box.checked) ticks[key] = true;
    else delete ticks[key];
    const chapter = `${key.split("/")[0]}/`;
    if (boxes.every((one) => one.checked)) ticks[chapter] = true;
    else delete ticks[chapter];
    keep(ticks);
    markSteps();
  });
}
markSteps();
