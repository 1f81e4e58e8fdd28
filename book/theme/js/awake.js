// The screen stays lit while marks are read off it one by one, where the browser can do that; it is let go with the part.

/** @type {WakeLockSentinel | undefined} */
let held;

async function settle() {
  const wanted = document.visibilityState === "visible" && document.querySelector("[data-awake]") !== null;
  try {
    if (wanted && (held === undefined || held.released)) held = await navigator.wakeLock?.request("screen");
    if (!wanted) await held?.release();
  } catch {
    // A browser that refuses dims the screen as it always does.
  }
}

document.addEventListener("visibilitychange", settle);
document.addEventListener("sheet-drawn", settle);
settle();
