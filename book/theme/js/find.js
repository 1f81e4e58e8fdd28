// Search from the first letter typed, in the book's own list, which is fetched when the field is first used. Without this script,
// or where the list cannot be had, pressing Find asks the server, which ranks in the same way. What was lately used stands on top.

import { lately, used } from "./recent.js";

/** @typedef {{ path: string, title: string, place: string, also: string, text: string }} Findable */
/** @typedef {{ ignored: string[], spelt: string[][], same: string[][], items: Findable[] }} Index */

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

/** @typedef {{ item: Findable, title: string[], fields: Set<string>[] }} Read */
/** @typedef {{ own: string[], others: string[], rarity: number }} Wish */

// The numbers of the server's ranking; see find.rs.
const FOUND = 60;
const ANSWER = 20;
const SAME_TITLE = 80;
const WEIGHTS = [12, 8, 3, 2];

/** @type {Read[] | undefined} */
let read;

/** A thing to be found with its words. @param {Findable} item @returns {Read} */
function readOf(item) {
  const title = wordsOf(item.title);
  return { item, title, fields: [title, wordsOf(item.also), wordsOf(item.place), wordsOf(item.text)].map((words) => new Set(words)) };
}

/** How well a word fits: whole, as the beginning of another, not at all. @param {Set<string>} words @param {string} word */
function fit(words, word) {
  if (words.has(word)) return 2;
  for (const other of words) if (other.startsWith(word)) return 1;
  return 0;
}

/** @param {Read} one @param {string} word */
const holds = (one, word) => one.fields.some((words) => fit(words, word) > 0);

/** @param {Read} one @param {string} word */
const foundIn = (one, word) => one.fields.reduce((sum, words, at) => sum + fit(words, word) * (WEIGHTS[at] ?? 0), 0);

/** Letters to change, take out, put in or change over until one word is the other. @param {string} one @param {string} other */
function apart(one, other) {
  /** @type {number[][]} */
  const rows = [Array.from({ length: other.length + 1 }, (_, at) => at)];
  for (let i = 1; i <= one.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= other.length; j += 1) {
      const at = (/** @type {number} */ up, /** @type {number} */ left) => rows[i - up]?.[j - left] ?? Infinity;
      let least = Math.min(at(1, 0) + 1, (row[j - 1] ?? Infinity) + 1, at(1, 1) + (one[i - 1] === other[j - 1] ? 0 : 1));
      if (i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]) least = Math.min(least, at(2, 2) + 1);
      row.push(least);
    }
    rows.push(row);
  }
  return rows[one.length]?.[other.length] ?? Infinity;
}

/** The words of the book that are spelt most like one it does not know. @param {string} word @param {Index} index @param {Read[]} all */
function nearest(word, { spelt, same }, all) {
  if (word.length < 4) return [];
  const most = word.length < 6 ? 1 : 2;
  /** @type {Map<string, number>} */
  const known = new Map([...spelt, ...same].flat().map((other) => [other, 0]));
  for (const one of all) for (const other of new Set(one.fields.flatMap((words) => [...words]))) known.set(other, (known.get(other) ?? 0) + 1);
  const near = [...known]
    .filter(([other]) => Math.abs(other.length - word.length) <= most)
    .map(([other, places]) => ({ other, places, off: apart(word, other) }))
    .filter((one) => one.off <= most);
  const least = Math.min(...near.map((one) => one.off));
  const closest = near.filter((one) => one.off === least);
  const alike = closest.filter((one) => one.other[0] === word[0]);
  const kept = alike.length > 0 ? alike : closest;
  kept.sort((one, other) => other.places - one.places || (one.other < other.other ? -1 : 1));
  return kept.slice(0, 3).map((one) => one.other);
}

/** The query's words, each with the other words for it. @param {string[]} words @param {Index} index @param {Read[]} all @returns {Wish[]} */
function wantedOf(words, index, all) {
  const { ignored, spelt, same } = index;
  // A measure tells what one has, not what one looks for; a penny number such as 8d is a name.
  const told = words.filter((word) => !ignored.includes(word) && (!/^[0-9]/.test(word) || /^[0-9]*d$/.test(word)));
  return (told.length > 0 ? told : words).map((word) => {
    const known = all.some((one) => holds(one, word)) || [...spelt, ...same].flat().some((one) => one.startsWith(word));
    const near = known ? [] : nearest(word, index, all);
    const meant = near.length > 0 ? near : [word];
    const own = [...meant, ...spelt.filter((pair) => pair.some((one) => meant.includes(one))).flat().filter((other) => !meant.includes(other))];
    const others = same.filter((group) => group.some((one) => own.includes(one))).flat().filter((other) => !own.includes(other));
    let places = Math.max(1, all.filter((one) => own.some((other) => holds(one, other))).length);
    let rarity = 1;
    for (; places * 2 <= all.length; places *= 2) rarity += 1;
    return { own, others, rarity };
  });
}

/** @param {Read} one @param {Wish[]} wanted @param {string[]} said */
function score(one, wanted, said) {
  const fits = wanted.reduce((sum, { own, others, rarity }) => {
    const best = Math.max(0, ...own.map((word) => foundIn(one, word) * 2), ...others.map((word) => foundIn(one, word)));
    return sum + (best > 0 ? (best + FOUND) * rarity : 0);
  }, 0);
  if (fits === 0) return 0;
  // An answer comes before a page that speaks of it, and a title that says the same, small words and all, before others.
  const answer = one.item.place.startsWith("Calculation") ? ANSWER : one.item.path.startsWith("questions.html#") ? ANSWER / 2 : 0;
  const same = said.length > 1 && ` ${one.title.join(" ")} `.includes(` ${said.join(" ")} `);
  const rarities = wanted.map((wish) => wish.rarity);
  return fits + answer * rarities.reduce((sum, rarity) => sum + rarity, 0) + (same ? SAME_TITLE * Math.max(...rarities) : 0);
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
    const known = (read ??= all.items.map(readOf));
    const wanted = wantedOf(said, all, known);
    const recent = new Set(lately().map((one) => one.path));
    const scored = known.map((one) => ({ item: one.item, score: score(one, wanted, said) })).filter((one) => one.score > 0);
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
