// Search from the first letter typed, in the book's own list, which is fetched when the field is first used. Without this script,
// or where the list cannot be had, pressing Find asks the server, which ranks in the same way. What was lately used stands on top.

import { lately, used } from "./recent.js";

/** @typedef {{ path: string, title: string, place: string, also: string, text: string }} Findable */
/** @typedef {{ ignored: string[], same: string[][], items: Findable[] }} Index */

const MOST = 12;
const form = document.querySelector("form.ask");
const input = form?.querySelector("input");
const root = form instanceof HTMLFormElement ? new URL(".", form.action).href : "";

/** @type {Promise<Index> | undefined} */
let index;

function fetched() {
  index ??= fetch(`${root}find.json`).then((reply) => (reply.ok ? reply.json() : Promise.reject(new Error("no list"))));
  return index;
}

/** Words in lower case, a plural's s cut off. @param {string} text */
function wordsOf(text) {
  const words = text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return words.map((word) => (word.length > 3 && /[^s]s$/.test(word) ? word.slice(0, -1) : word));
}

/** The query's words, each with the other words for it behind it. @param {string[]} words @param {Index} index */
function wantedOf(words, { ignored, same }) {
  // A measure tells what one has, not what one looks for.
  const told = words.filter((word) => !ignored.includes(word) && !/^[0-9]/.test(word));
  return (told.length > 0 ? told : words).map((word) => [word, ...same.filter((group) => group.includes(word)).flat().filter((other) => other !== word)]);
}

/** @param {Findable} item @param {string[][]} wanted @param {string[]} said */
function score(item, wanted, said) {
  const title = wordsOf(item.title);
  /** @type {[string[], number][]} */
  const fields = [[title, 12], [wordsOf(item.also), 8], [wordsOf(item.place), 3], [wordsOf(item.text), 2]];
  // A whole word counts twice what the beginning of one does.
  const fit = (/** @type {string} */ one, /** @type {string} */ word) => (one === word ? 2 : one.startsWith(word) ? 1 : 0);
  const found = (/** @type {string} */ word) => fields.reduce((sum, [words, weight]) => sum + words.reduce((most, one) => Math.max(most, fit(one, word)), 0) * weight, 0);
  const fits = wanted.reduce((sum, [own, ...others]) => {
    const best = Math.max(found(own ?? "") * 2, ...others.map(found));
    return sum + (best > 0 ? best + 400 : 0);
  }, 0);
  if (fits === 0) return 0;
  // What works a thing out comes before what speaks of it, and a title that says the same, small words and all, before others.
  const works = item.place.startsWith("Calculation") ? 32 : 0;
  const same = said.length > 1 && ` ${title.join(" ")} `.includes(` ${said.join(" ")} `);
  return fits + works + (same ? 80 : 0);
}

/** @param {string} tag @param {string} text */
function element(tag, text) {
  const made = document.createElement(tag);
  made.textContent = text;
  return made;
}

/** One thing found, as the server prints it. @param {{ path: string, title: string, place: string }} item */
function hit(item) {
  const link = document.createElement("a");
  link.href = root + item.path;
  const place = element("span", item.place);
  place.className = "place";
  link.append(element("strong", item.title), place);
  link.addEventListener("click", () => used({ path: item.path, title: item.title, place: item.place }));
  const row = document.createElement("li");
  row.append(link);
  return row;
}

/** Where the list of what was found stands, made once below the form. */
function found() {
  let place = document.getElementById("found");
  if (!place) {
    place = document.createElement("div");
    place.id = "found";
    place.setAttribute("aria-live", "polite");
    form?.after(place);
  }
  return place;
}

/** @param {{ path: string, title: string, place: string }[]} items @param {string} heading */
function show(items, heading) {
  const rows = document.createElement("ol");
  rows.className = "hits";
  rows.append(...items.map(hit));
  const head = element("p", heading);
  head.className = "lettering";
  found().replaceChildren(...(items.length === 0 ? [] : heading ? [head, rows] : [rows]));
}

async function look() {
  if (!input) return;
  const query = input.value;
  if (query.trim() === "") {
    show(lately(), "Lately used");
    return;
  }
  try {
    const all = await fetched();
    if (input.value !== query) return;
    const said = wordsOf(query).slice(0, 12);
    const wanted = wantedOf(said, all);
    const recent = new Set(lately().map((one) => one.path));
    const scored = all.items.map((item) => ({ item, score: score(item, wanted, said) })).filter((one) => one.score > 0);
    scored.sort((one, other) => other.score + (recent.has(other.item.path) ? 60 : 0) - one.score - (recent.has(one.item.path) ? 60 : 0));
    show(scored.slice(0, MOST).map((one) => one.item), "");
  } catch {
    index = undefined;
  }
}

input?.addEventListener("focus", () => fetched().catch(() => { index = undefined; }), { once: true });
input?.addEventListener("input", look);
input?.addEventListener("focus", () => { if (input.value === "") look(); });

// Down from the field into what was found, up again past the first.
document.addEventListener("keydown", (event) => {
  if (event.key !== "ArrowDown" && event.key !== "ArrowUp") return;
  const links = [...found().querySelectorAll("a")];
  const at = links.indexOf(/** @type {HTMLAnchorElement} */ (document.activeElement));
  if (at < 0 && document.activeElement !== input) return;
  event.preventDefault();
  const next = at + (event.key === "ArrowDown" ? 1 : -1);
  (next < 0 ? input : links[Math.min(next, links.length - 1)])?.focus();
});

// A search that brought its words along shows the server's list until something is typed.
if (input && input.value === "" && location.pathname.endsWith("/find")) look();
