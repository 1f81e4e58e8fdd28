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
