// The wall sheet, worked as a person works it: by touch on a tablet, by keyboard, and with scripts off.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { TABLET, open, startBrowser, startHandbook } from "./handbook.mjs";

let handbook, browser;
before(async () => { handbook = await startHandbook(); browser = await startBrowser(); });
after(async () => { await browser?.close(); await handbook?.stop(); });

const SURVEY = "details.survey > summary";
const marks = (page) => page.$$eval("ol.wallmarks >> nth=0", ([list]) => [...list.querySelectorAll("li:not(.proof) .figure")].map((figure) => figure.textContent.replace(/\s+/g, " ").trim()));
const openings = (page) => page.$$eval("[name^='/survey/openings/'][name$='/left']", (fields) => fields.length);

/** Waits until the sheet has been drawn anew. */
async function drawn(page, act) {
  const before = await page.$("#wall-sheet");
  await act();
  await page.waitForFunction((old) => !old.isConnected && document.querySelector("#wall-sheet h1"), before);
}

async function addWindow(page, press) {
  await press(page.locator(SURVEY));
  const before = await openings(page);
  await drawn(page, () => press(page.locator("button[value='add /survey/openings']")));
  assert.equal(await openings(page), before + 1);
  const fill = async (name, text) => { await page.fill(`[name='/survey/openings/${before}/${name}']`, text); };
  for (const [name, text] of [["left", "40 in"], ["right", "70 in"], ["bottom", "30 in"], ["top", "80 in"]]) {
    await drawn(page, async () => { await fill(name, text); await page.keyboard.press("Tab"); });
  }
  await drawn(page, () => press(page.locator("button.main[value='work']")));
}

test("by touch: add a window, take layout 2, turn to millimetres, print", async () => {
  const { context, page, wrong } = await open(browser, handbook.address, { viewport: TABLET, hasTouch: true });
  const press = (locator) => locator.first().tap();
  await page.goto("/wall?wall=a");
  const plain = await marks(page);
  assert.equal(plain.length, 12, "the plain wall has twelve boards");
  await addWindow(page, press);
  const withWindow = await marks(page);
  assert.notDeepEqual(withWindow, plain, "a window moves boards");
  assert.equal(await page.locator(".faults").count(), 0);
  await drawn(page, () => press(page.locator("button[name='show'][value='2']")));
  assert.equal(await page.locator(".way.chosen h3").textContent(), "Layout 2");
  await Promise.all([page.waitForNavigation(), press(page.locator("button[name='turn'][value='metric']"))]);
  assert.equal(await page.getAttribute("html", "data-units"), "metric");
  assert.match((await marks(page))[0], /mm/);
  assert.equal(await openings(page), 1, "the window came along");
  // 40 in is 1016 mm by definition (international inch, 1959).
  assert.match(await page.inputValue("[name='/survey/openings/0/left']"), /^1016( mm)?$/);
  const metric = await marks(page);
  await Promise.all([page.waitForNavigation(), press(page.locator("button[name='turn'][value='imperial']"))]);
  assert.match(await page.inputValue("[name='/survey/openings/0/left']"), /^40( in)?$/);
  await Promise.all([page.waitForNavigation(), press(page.locator("button[name='turn'][value='metric']"))]);
  assert.deepEqual(await marks(page), metric, "there and back nothing changed");
  const paper = await page.pdf({ format: "A4" });
  assert.ok(paper.length > 20_000, "a printed sheet");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("by keyboard alone: the same wall, the same plan", async () => {
  const { context, page, wrong } = await open(browser, handbook.address, { viewport: TABLET });
  await page.goto("/wall?wall=a");
  const press = async (locator) => { await locator.first().focus(); await page.keyboard.press("Enter"); };
  await addWindow(page, press);
  await drawn(page, () => press(page.locator("button[name='show'][value='2']")));
  assert.equal(await page.locator(".way.chosen h3").textContent(), "Layout 2");
  const focused = await page.evaluate(() => document.activeElement !== document.body);
  assert.ok(focused, "focus is not lost when the sheet is drawn anew");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("with scripts off: forms post, and the sheet comes back as a page", async () => {
  const { context, page } = await open(browser, handbook.address, { javaScriptEnabled: false });
  await page.goto("/wall?wall=b");
  assert.equal(await page.locator("ol.wallmarks").first().locator("li:not(.proof)").count(), 14);
  await page.click("button[name='show'][value='2']");
  assert.equal(await page.locator(".way.chosen h3").textContent(), "Layout 2");
  await page.click("button[name='view'][value='numbers']");
  assert.match(await page.locator("h1").textContent(), /At the wall/);
  await page.click("button[name='turn'][value='metric']");
  assert.equal(await page.getAttribute("html", "data-units"), "metric");
  await page.click("button[name='view'][value='sheet']");
  assert.equal(await page.locator(".faults").count(), 0, "the survey came along through every part");
  assert.equal(await page.locator(".way.chosen h3").textContent(), "Layout 2");
  await context.close();
});

test("a bay that cannot be says so beside its field, and nothing typed is lost", async () => {
  const { context, page } = await open(browser, handbook.address);
  await page.goto("/wall?wall=b");
  await page.click(SURVEY);
  await drawn(page, async () => { await page.fill("[name='/survey/openings/0/right']", "3,750"); await page.keyboard.press("Tab"); });
  await page.waitForSelector(".faults");
  assert.match(await page.locator(".faults").textContent(), /comma/);
  assert.equal(await page.inputValue("[name='/survey/openings/0/right']"), "3,750");
  assert.equal(await page.locator("ol.wallmarks").count(), 0, "no half plan that looks whole");
  await context.close();
});

test("what was typed is kept in the browser and taken up again by a button", async () => {
  const { context, page, wrong } = await open(browser, handbook.address);
  await page.goto("/wall?wall=new");
  assert.ok(await page.locator("#kept").isHidden(), "nothing is kept yet");
  await drawn(page, async () => { await page.fill("[name='/survey/name']", "Attic"); await page.keyboard.press("Tab"); });
  await drawn(page, async () => { await page.fill("[name='/survey/lengths/0/length']", "150 1/2 in"); await page.keyboard.press("Tab"); });
  const left = await marks(page);
  await page.goto("/wall?wall=b");
  const take = page.locator("#kept button", { hasText: "Attic" });
  await drawn(page, () => take.click());
  assert.equal(await page.inputValue("[name='/survey/lengths/0/length']"), "150 1/2 in");
  assert.deepEqual(await marks(page), left);
  await page.goto("/wall?wall=b");
  await page.locator("#kept button[value='forget']").click();
  assert.ok(await page.locator("#kept").isHidden());
  assert.deepEqual(wrong, []);
  await context.close();
});

test("on a wide page the drawing stays in sight and changes while the survey is edited", async () => {
  const { context, page } = await open(browser, handbook.address, { viewport: { width: 1440, height: 900 } });
  await page.goto("/wall?wall=b");
  await page.click(SURVEY);
  const field = page.locator("[name='/survey/openings/1/right']");
  await field.scrollIntoViewIfNeeded();
  const drawing = () => page.locator(".picture .draw svg").first();
  const inSight = async () => {
    const box = await drawing().boundingBox();
    return box.y >= -1 && box.y + box.height <= 901;
  };
  assert.ok(await inSight(), "the drawing is in sight beside the second window's fields");
  const before = await drawing().innerHTML();
  await drawn(page, async () => { await field.fill("160 in"); await page.keyboard.press("Tab"); });
  assert.ok(await inSight());
  assert.notEqual(await drawing().innerHTML(), before);
  await context.close();
});

test("the saw's sheet of the plain wall fits one page of A4 and one of Letter", async () => {
  const { context, page } = await open(browser, handbook.address);
  await page.goto("/wall?wall=a&view=saw");
  for (const format of ["A4", "Letter"]) {
    const paper = (await page.pdf({ format })).toString("latin1");
    const pages = paper.match(/\/Type\s*\/Page[^s]/g) ?? [];
    assert.equal(pages.length, 1, format);
  }
  await context.close();
});

test("a corridor of 60 m is drawn in stretches that stay on the page", async () => {
  const { context, page, wrong } = await open(browser, handbook.address);
  await page.goto("/wall?wall=new");
  await drawn(page, async () => { await page.fill("[name='/survey/lengths/0/length']", "60 m"); await page.keyboard.press("Tab"); });
  await drawn(page, async () => { await page.fill("[name='/scheme/target_bay']", "136 mm"); await page.keyboard.press("Tab"); });
  const boards = await page.locator("ol.wallmarks").first().locator("li:not(.proof)").count();
  assert.ok(boards > 290, `${boards} boards`);
  assert.ok(await page.locator(".picture svg svg").count() >= 5, "several stretches");
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.ok(over <= 0, `${over} px too wide`);
  assert.deepEqual(wrong, []);
  await context.close();
});
