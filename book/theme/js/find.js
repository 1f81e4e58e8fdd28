// Search as you type, from the book's own list. The list is fetched when the field is first used; without this script, or
// where the list cannot be had, pressing Find asks the server, which ranks in the same way.

/** @typedef {{ path: string, title: string, place: string, also: string, text: string }} Findable */

const MOST = 12;
const form = document.querySelector("form.ask");
const input = form?.querySelector("input");

/** @type {Promise<Findable[]> | undefined} */
let list;

/** Words in lower case, a plural's s cut off. @param {string} text */
function wordsOf(text) {
  const words = text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return words.map((word) => (word.length > 3 && /[^s]s$/.test(word) ? word.slice(0, -1) : word));
}

/** @param {Findable} item @param {string[]} wanted */
function score(item, wanted) {
  /** @type {[string, number][]} */
  const fields = [[item.title, 12], [item.also, 8], [item.place, 3], [item.text, 2]];
  return wanted.reduce((sum, word) => {
    const found = fields.reduce((part, [text, weight]) => part + (wordsOf(text).some((one) => one.startsWith(word)) ? weight : 0), 0);
    return sum + (found > 0 ? found + 100 : 0);
  }, 0);
}

/** @param {string} tag @param {string} text */
function element(tag, text) {
  const made = document.createElement(tag);
  made.textContent = text;
  return made;
}

/** One thing found, as the server prints it. @param {Findable} item @param {string} root */
function hit(item, root) {
  const link = document.createElement("a");
  link.href = root + item.path;
  const place = element("span", item.place);
  place.className = "place";
  link.append(element("strong", item.title), place);
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

async function look() {
  if (!(form instanceof HTMLFormElement) || !input) return;
  const root = new URL(".", form.action).href;
  list ??= fetch(`${root}find.json`).then((reply) => (reply.ok ? reply.json() : Promise.reject(new Error("no list"))));
  const wanted = wordsOf(input.value);
  try {
    const all = await list;
    const scored = all.map((item) => ({ item, score: score(item, wanted) })).filter((one) => one.score > 0);
    scored.sort((one, other) => other.score - one.score);
    const rows = document.createElement("ol");
    rows.className = "hits";
    rows.append(...scored.slice(0, MOST).map((one) => hit(one.item, root)));
    found().replaceChildren(...(wanted.length > 0 && scored.length > 0 ? [rows] : []));
  } catch {
    list = undefined;
  }
}

/** @type {number | undefined} */
let soon;
input?.addEventListener("input", () => {
  window.clearTimeout(soon);
  soon = window.setTimeout(look, 120);
});
