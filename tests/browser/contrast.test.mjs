// Contrast: worked out for every pair of colours that the style sheet can put together, and looked at on pages of every kind.
//
// Ratio and luminance: WCAG 2.2, "contrast ratio" and "relative luminance". Text at least 4.5 : 1 (success criterion 1.4.3), lines
// that mean something at least 3 : 1 (1.4.11).

import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { after, before, test } from "node:test";
import { open, startBrowser, startHandbook, unfold, violations } from "./handbook.mjs";

const folder = fileURLToPath(new URL("../../book/theme/css/", import.meta.url));
const sheets = readdirSync(folder).map((name) => [name, readFileSync(folder + name, "utf8").replace(/\/\*.*?\*\//gs, "")]);
const sheet = (name) => sheets.find(([other]) => other === name)[1];

const GROUNDS = ["paper", "sheet", "tint", "wall", "board", "glass", "wash"];
const TEXTS = ["ink", "ink2", "pencil"];
const LINES = ["line"];
const SIGNALS = [["signal-red", "signal-light"], ["signal-orange", "signal-dark"], ["signal-yellow", "signal-dark"], ["signal-blue", "signal-light"]];

function luminance(colour) {
  const digits = colour.length === 4 ? [...colour.slice(1)].map((digit) => digit + digit) : colour.slice(1).match(/../g);
  const [red, green, blue] = digits.map((pair) => parseInt(pair, 16) / 255).map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function ratio(one, other) {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

/** Colours by their roles, in every block of a sheet that sets them: later blocks stand on the first. */
function lights() {
  const of = (text) => Object.fromEntries([...text.matchAll(/--([a-z0-9-]+):\s*(#[0-9a-f]{3}(?:[0-9a-f]{3})?);/g)].map(([, role, colour]) => [role, colour]));
  const blocks = [...`${sheet("2-tokens.css")}${sheet("b-print.css")}`.matchAll(/:root[^{]*\{([^}]*)\}/g)].map(([, body]) => of(body)).filter((roles) => roles.paper);
  const [day] = blocks;
  return blocks.map((roles) => ({ ...day, ...roles }));
}

test("the ratio is the standard's own", () => {
  assert.equal(ratio("#000", "#fff"), 21);
  assert.equal(ratio("#fff", "#ffffff"), 1);
  // The lightest grey that passes on white is widely printed as #767676: 4.54.
  assert.equal(ratio("#767676", "#fff").toFixed(2), "4.54");
  assert.ok(ratio("#777", "#fff") < 4.5);
});

test("every text on every ground, every line on every ground, every signal word in its panel", () => {
  const all = lights();
  assert.ok(all.length >= 4, "day, lamp twice, and paper");
  for (const roles of all) {
    const pairs = [
      ...GROUNDS.flatMap((ground) => TEXTS.map((text) => [text, ground, 4.5])),
      ...GROUNDS.flatMap((ground) => LINES.map((line) => [line, ground, 3])),
      ["onsolid", "solid", 4.5],
      ["paper", "ink2", 4.5],
      ...SIGNALS.map(([ground, text]) => [text, ground, 4.5]),
    ];
    for (const [one, other, least] of pairs) {
      const found = ratio(roles[one], roles[other]);
      assert.ok(found >= least, `${one} ${roles[one]} on ${other} ${roles[other]}: ${found.toFixed(2)}`);
    }
  }
});

test("parts use the roles: no colour of their own, and text only in a colour that was paired", () => {
  const allowed = new RegExp(`^(var\\(--(${[...TEXTS, "onsolid", "solid", "paper", "signal-(red|blue|dark|light)"].join("|")})\\)|inherit|currentcolor|transparent|[A-Z][A-Za-z]+)$`);
  let looked = 0;
  for (const [name, text] of sheets) {
    // On paper everything is black on white; its own greys stand in the blocks looked at above or are text of #000 and #222 on #fff.
    if (name === "2-tokens.css" || name === "1-fonts.css") continue;
    const raw = [...text.matchAll(/#[0-9a-f]{3,8}\b|\b(?:rgb|hsl|lab|lch|oklch|color-mix)a?\(/gi)].map(([colour]) => colour);
    const print = /print/.test(name) || name === "e-packs.css";
    assert.deepEqual(raw.filter((colour) => !(print && /^#(000|222|555|999|fff|e9e9e9)$/.test(colour))), [], `${name} has colours of its own`);
    for (const [, colour] of text.matchAll(/(?<![-\w])color:\s*([^;}]+)/g)) {
      looked += 1;
      assert.ok(allowed.test(colour.trim()) || (print && /^#(000|222)$/.test(colour.trim())), `${name}: text in ${colour}`);
    }
  }
  assert.ok(looked > 40, `only ${looked} colours of text were found`);
});

/** A page of every kind: front, chapters with drawings, tables, checks and cautions, calculations, practice, search, the wall sheet. */
const PAGES = [
  "/", "/survey.html", "/layout.html", "/cut.html", "/spray.html", "/safety.html", "/glossary.html", "/find?q=nail", "/practice",
  "/work/equal-bays", "/work/cutting-plan", "/work/noise-dose", "/wall?wall=b", "/wall?wall=c&view=numbers", "/wall?wall=b&view=saw", "/no-such-page.html",
];

let handbook, browser;
before(async () => { handbook = await startHandbook(); browser = await startBrowser(); });
after(async () => { await browser?.close(); await handbook?.stop(); });

for (const light of ["day", "lamp"]) {
  test(`pages of every kind have contrast enough in the light of ${light}`, async () => {
    const { context, page } = await open(browser, handbook.address);
    await context.addCookies([{ name: "light", value: light, url: handbook.address }]);
    const broken = [];
    for (const path of PAGES) {
      await page.goto(path);
      await unfold(page);
      broken.push(...(await violations(page, { contrast: true })).map((violation) => `${path}: ${violation}`));
    }
    assert.deepEqual(broken, []);
    await context.close();
  });
}
