// A long page is ready before all of it is laid out: what is far out of sight waits. As soon as the page is loaded and has a moment,
// part by part is laid out, so that a screen reader's lists, the scroll bar and a search have all of it.

const parts = [...document.querySelectorAll(".section, .calculation, .wallsheet section, .how")];

/** @param {() => void} act */
const soon = (act) => { if ("requestIdleCallback" in window) window.requestIdleCallback(act, { timeout: 300 }); else setTimeout(act, 30); };

function next() {
  const part = parts.shift();
  if (part instanceof HTMLElement) {
    part.style.contentVisibility = "visible";
    soon(next);
    return;
  }
  delete document.documentElement.dataset.lay;
}

if (document.readyState === "complete") soon(next);
else window.addEventListener("load", () => soon(next), { once: true });
