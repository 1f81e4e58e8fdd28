// What was lately used on this device, newest first: calculations that were worked out, places that were found and opened.

const KEPT = "benchleaf.recent";
const MOST = 6;

/** @typedef {{ path: string, title: string, place: string }} Place */

/** @returns {Place[]} */
export function lately() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEPT) ?? "[]");
    return Array.isArray(kept) ? kept : [];
  } catch {
    return [];
  }
}

/** @param {Place} place */
export function used(place) {
  try {
    localStorage.setItem(KEPT, JSON.stringify([place, ...lately().filter((one) => one.path !== place.path)].slice(0, MOST)));
  } catch {
    // A browser that keeps nothing has no list.
  }
}
