// Small tasks as a new reader does them: a calculation without scripts, a search, practice, marks at the wall, the pole on paper.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { PHONE, TABLET, open, startBrowser, startHandbook, violations } from "./handbook.mjs";

/** A printed figure such as 12 3/16 in, in inches. */
const inches = (text) => {
  const [, whole, top, bottom] = /^(\d+)(?: (\d+)\/(\d+))?/.exec(text.trim());
  return Number(whole) + (top ? Number(top) / Number(bottom) : 0);
};

let handbook, browser;
before(async () => { handbook = await startHandbook(); browser = await startBrowser(); });
after(async () => { await browser?.close(); await handbook?.stop(); });

test("without scripts a change of units keeps what was typed", async () => {
  const { context, page, wrong } = await open(browser, handbook.address, { javaScriptEnabled: false });
  await page.goto("/work/pieces-per-stick");
  await page.fill("[name='/stick']", "100 in");
  await page.click("header.runhead button[value='turn metric']");
  // 100 in is 2540 mm by definition (international inch, 1959).
  assert.match(await page.inputValue("[name='/stick']"), /^2540( mm)?$/);
  assert.equal(await page.getAttribute("html", "data-units"), "metric");
  assert.equal(await page.getAttribute("header.runhead button[value='turn metric']", "aria-pressed"), "true");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a search answers from the first letter, by keyboard, and what was used stands on top the next time", async () => {
  const { context, page, wrong } = await open(browser, handbook.address, { viewport: PHONE });
  await page.goto("/");
  await page.focus("#ask");
  await page.keyboard.type("n");
  await page.waitForSelector("#found .hits a");
  await page.fill("#ask", "");
  await page.keyboard.type("nail length");
  await page.waitForFunction(() => /nail/i.test(document.querySelector("#found .hits a strong")?.textContent ?? ""));
  await page.keyboard.press("ArrowDown");
  const title = await page.textContent("#found .hits a:focus strong");
  await Promise.all([page.waitForNavigation(), page.keyboard.press("Enter")]);
  assert.match(page.url(), /fix.*nail/);
  await page.goto("/find");
  await page.waitForSelector("#found .hits a");
  assert.equal(await page.textContent("#found .hits a strong"), title, "lately used");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("what a newcomer types leads to the calculation in two taps, on a phone and on a tablet", async () => {
  const asked = [
    ["nail length 18 mm board over 12.5 plasterboard into stud", "fix.html#nail-choice"],
    ["switch box board", "layout.html#plate-clash"],
    ["when can I recoat at 15 °C", "spray.html#recoat-time"],
    ["how much caulk", "caulk.html#caulk"],
    ["which grit next", "fill.html#grit-ladder"],
    ["what to charge", "price.html#price-at-margin"],
  ];
  for (const viewport of [PHONE, TABLET]) {
    const { context, page, wrong } = await open(browser, handbook.address, { viewport, hasTouch: true });
    for (const [words, place] of asked) {
      await page.goto("/");
      await page.tap("#ask");
      await page.keyboard.type(words);
      const hit = page.locator(`#found .hits a >> nth=0`);
      await page.waitForFunction((due) => document.querySelector("#found .hits a")?.getAttribute("href")?.endsWith(due), place).catch(() => undefined);
      assert.ok((await hit.getAttribute("href")).endsWith(place), `«${words}» finds ${await hit.getAttribute("href")} first`);
      const box = await hit.boundingBox();
      assert.ok(box.height >= 48 && box.y + box.height <= viewport.height, "the first hit is in reach");
      await Promise.all([page.waitForNavigation(), hit.tap()]);
      const top = await page.$eval(`#${place.split("#")[1]}`, (section) => section.getBoundingClientRect().top);
      assert.ok(0 <= top && top < viewport.height / 4, `${place} stands at ${top} px`);
    }
    assert.deepEqual(wrong, []);
    await context.close();
  }
});

test("practice names the likely mistake, shows the working, and keeps a record", async () => {
  const { context, page, wrong } = await open(browser, handbook.address);
  // A margin of m leaves cost / (1 - m); a markup of the same figure gives cost x (1 + m). Arithmetic, no source.
  const given = async (label) => Number((await page.textContent(`.given-numbers dt:text-is("${label}") + dd`)).replace(/[^\d.]/g, ""));
  await page.goto("/practice/price-at-margin?seed=1");
  const wrongWay = (await given("Cost")) * (1 + (await given("Margin")) / 100);
  await page.fill("#said-price-at-margin", wrongWay.toFixed(2));
  await Promise.all([page.waitForNavigation(), page.keyboard.press("Enter")]);
  assert.match(await page.textContent(".verdict"), /markup/);
  assert.equal(await page.getAttribute("section.practice", "data-right"), "no");
  assert.ok(await page.isVisible("ol.working"), "the working is shown after an attempt");
  for (let row = 1; row <= 3; row += 1) {
    await Promise.all([page.waitForNavigation(), page.click("a.main:text-is('Another one')")]);
    assert.equal(await page.locator("ol.working").count(), 0, "no working before an attempt");
    const price = (await given("Cost")) / (1 - (await given("Margin")) / 100);
    await page.fill("#said-price-at-margin", price.toFixed(2));
    await Promise.all([page.waitForNavigation(), page.keyboard.press("Enter")]);
    assert.equal(await page.getAttribute("section.practice", "data-right"), "yes");
  }
  await page.goto("/practice");
  assert.match(await page.textContent("li[data-exercise='price-at-margin'] .record"), /learnt/);
  assert.match(await page.textContent("#learnt"), /^1 of \d+ learnt/);
  await page.click("#forget");
  assert.equal(await page.textContent("li[data-exercise='price-at-margin'] .record"), "");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("an exercise in a chapter is answered there, with fresh numbers, and counts in the record", async () => {
  const { context, page, wrong } = await open(browser, handbook.address, { viewport: PHONE });
  await page.goto("/layout.html");
  const exercise = page.locator("#practice-equal-bays");
  const given = (label) => exercise.locator(`.given-numbers dt:text-is("${label}") + dd`).evaluate((figure) => figure.querySelector(".unseen")?.textContent ?? figure.textContent);
  const printed = /id="practice-equal-bays"[^>]*data-seed="(\d+)"/.exec(await (await page.request.get("/layout.html")).text())[1];
  await exercise.scrollIntoViewIfNeeded();
  await page.waitForFunction((old) => document.querySelector("#practice-equal-bays")?.getAttribute("data-seed") !== old, printed);
  // With a board at both ends there is one bay less than boards; as many bays as boards is the usual slip. Arithmetic, no source.
  const [run, boards] = [inches(await given("Run")), Number(await given("Number of boards"))];
  await exercise.locator("input[name=said]").fill(`${(((run - boards * 2.5) / boards) * 25.4).toFixed(3)} mm`);
  await page.keyboard.press("Enter");
  await page.waitForSelector("#practice-equal-bays .verdict");
  assert.match(await exercise.locator(".verdict").textContent(), /one bay less/);
  await exercise.locator("input[name=said]").fill(`${(((run - boards * 2.5) / (boards - 1)) * 25.4).toFixed(3)} mm`);
  await exercise.locator("button").click();
  await page.waitForSelector("#practice-equal-bays[data-right=yes]");
  assert.ok(await exercise.locator("ol.working").isVisible());
  assert.match(page.url(), /layout\.html$/);
  assert.deepEqual(await violations(page, { contrast: true }), []);
  await exercise.locator("a.fresh").click();
  await page.waitForSelector("#practice-equal-bays:not([data-right])");
  assert.match(await page.evaluate(() => localStorage.getItem("benchleaf.practice")), /equal-bays/);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("without scripts an exercise in a chapter is marked on its own page", async () => {
  const { context, page, wrong } = await open(browser, handbook.address, { javaScriptEnabled: false });
  await page.goto("/layout.html");
  const run = await page.locator('#practice-equal-bays .given-numbers dt:text-is("Run") + dd').textContent();
  await page.fill("#said-equal-bays", "1 in");
  await page.click("#practice-equal-bays button");
  assert.match(page.url(), /\/practice\/equal-bays$/);
  assert.equal(await page.locator('.given-numbers dt:text-is("Run") + dd').textContent(), run, "the numbers are those of the chapter");
  assert.match(await page.textContent(".verdict"), /Not yet/);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("an answer that cannot be read is kept and told beside its box", async () => {
  const { context, page, wrong } = await open(browser, handbook.address, { javaScriptEnabled: false });
  await page.goto("/practice/equal-bays?seed=3");
  await page.fill("#said-equal-bays", "about a foot");
  await page.click("button:text-is('Check it')");
  assert.equal(await page.inputValue("#said-equal-bays"), "about a foot");
  assert.equal(await page.getAttribute("#said-equal-bays", "aria-invalid"), "true");
  assert.ok((await page.textContent("#fault-equal-bays")).length > 20);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("at the wall: one mark after the other, large enough for two metres, with one thumb", async () => {
  for (const viewport of [TABLET, PHONE]) {
    const { context, page, wrong } = await open(browser, handbook.address, { viewport, hasTouch: true });
    await page.goto("/wall?wall=a&view=numbers");
    const due = await page.$$eval("ol.wallmarks >> nth=0", ([list]) => [...list.querySelectorAll("li:not(.proof) .figure")].map((figure) => figure.textContent.replace(/\s+/g, "")));
    assert.equal(due.length, 12);
    const seen = [];
    for (let n = 0; n < due.length; n += 1) {
      seen.push((await page.textContent(".one .huge")).replace(/\s+/g, ""));
      if (n + 1 < due.length) {
        const before = await page.$(".one");
        await page.tap(".one .turns .main");
        await page.waitForFunction((old) => !old.isConnected, before);
      }
    }
    assert.deepEqual(seen, due, "the marks come in the order of the list");
    // A sign that is read at two metres should stand at least a two-hundredth of the distance high, 10 mm; common practice, no
    // source. A CSS pixel on a tablet of this size is at least 0.16 mm, so digits of 70 px pass with room.
    const size = await page.$eval(".one .huge", (one) => Number.parseFloat(getComputedStyle(one).fontSize));
    assert.ok(size >= 88, `${size} px`);
    const next = await page.locator(".one .turns .main").boundingBox();
    assert.ok(next.height >= 80 && next.width >= viewport.width / 3, "a thumb's target");
    assert.ok(next.y + next.height <= viewport.height, "in reach without scrolling");
    const onTop = await page.evaluate(([x, y]) => document.elementFromPoint(x, y)?.closest(".turns button")?.textContent, [next.x + next.width / 2, next.y + next.height - 4]);
    assert.equal(onTop, "Next mark", "nothing lies over it");
    assert.deepEqual(wrong, []);
    await context.close();
  }
});

test("the story pole stands on paper at full size", async () => {
  const { context, page, wrong } = await open(browser, handbook.address);
  await page.goto("/wall?wall=a&view=pole");
  await page.emulateMedia({ media: "print" });
  // A CSS inch is 96 px and 25.4 mm (CSS Values and Units Level 3, section 5.2).
  const mm = (px) => (px * 25.4) / 96;
  const strips = await page.$$eval(".pole-strip", (list) => list.map((svg) => {
    const bar = [...svg.querySelectorAll("line.heavy")].map((line) => line.getBoundingClientRect()).filter((box) => box.width < 1 && box.height > 50);
    return { width: svg.getBoundingClientRect().width, height: svg.getBoundingClientRect().height, bar: bar[0]?.height ?? 0 };
  }));
  assert.ok(strips.length >= 7);
  for (const strip of strips) {
    assert.ok(Math.abs(mm(strip.width) - 85) < 0.1 && Math.abs(mm(strip.height) - 232) < 0.1, `${mm(strip.width)} x ${mm(strip.height)} mm`);
    assert.ok(Math.abs(mm(strip.bar) - 101.6) < 0.2, `the bar of 4 in is ${mm(strip.bar)} mm`);
  }
  assert.deepEqual(wrong, []);
  await context.close();
});

test("cautions stand on the wall sheet where something can hurt, on the screen and on paper", async () => {
  const { context, page } = await open(browser, handbook.address);
  const told = async (path) => {
    await page.goto(path);
    await page.emulateMedia({ media: "print" });
    const words = await page.$$eval(".wallsheet .signal", (panels) => panels.filter((panel) => panel.checkVisibility()).map((panel) => panel.textContent));
    await page.emulateMedia({ media: "screen" });
    return words.join(" ");
  };
  for (const view of ["sheet", "numbers"]) {
    const words = await told(`/wall?wall=b&view=${view}`);
    assert.match(words, /live parts behind the cover plate/i);
    assert.match(words, /cables and pipes in the fixing line/i);
  }
  assert.match(await told("/wall?wall=b&view=saw"), /blade/i);
  assert.match(await told("/wall?wall=c&view=sheet"), /stair/i);
  await context.close();
});
