// Pages at work: laid out late, by keyboard, spoken, on paper.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { PHONE, TABLET, open, startBrowser, startHandbook } from "./handbook.mjs";

let handbook, browser;
before(async () => { handbook = await startHandbook(); browser = await startBrowser(); });
after(async () => { await browser?.close(); await handbook?.stop(); });

test("a long page is ready before all of it is laid out, and soon holds all of it: for links, searches, screen readers, paper", async () => {
  const { context, page } = await open(browser, handbook.address);
  const skips = () => page.$$eval("main *", (all) => all.filter((one) => getComputedStyle(one).contentVisibility === "auto").length);
  // Before its script has run, a page skips what is far out of sight, and a link still leads there.
  await page.route("**/lay-out.js", (route) => route.abort());
  await page.goto("/layout.html");
  assert.ok(await skips() > 5, "long parts wait");
  const last = await page.$$eval("section.calculation", (all) => all.at(-1).id);
  const question = await page.textContent(`#${last}-question`);
  await page.goto("/glossary.html");
  await page.goto(`/layout.html#${last}`);
  const top = () => page.$eval(`#${last}`, (part) => Math.abs(part.getBoundingClientRect().top));
  await page.waitForFunction((id) => Math.abs(document.getElementById(id).getBoundingClientRect().top) < 120, last, { timeout: 3000 }).catch(() => {});
  assert.ok(await top() < 120, `the link leads to ${await top()} px from the top`);
  await page.goto("/layout.html?");
  assert.ok(await page.evaluate((words) => globalThis.find(words), question), "the browser's own search finds it");
  await page.emulateMedia({ media: "print" });
  assert.equal(await skips(), 0, "on paper everything is laid out");
  await page.emulateMedia({ media: "screen" });
  await page.unroute("**/lay-out.js");
  await page.goto("/layout.html");
  await page.waitForFunction(() => !("lay" in document.documentElement.dataset));
  assert.equal(await skips(), 0, "soon nothing is skipped");
  const watch = await context.newCDPSession(page);
  const { nodes } = await watch.send("Accessibility.getFullAXTree");
  const read = nodes.filter((node) => node.role?.value === "heading" && !node.ignored).map((node) => node.name.value.replace(/\s+/g, " ").trim());
  const written = await page.$$eval("h1, h2, h3, h4", (all) => all.map((one) => one.textContent.replace(/\s+/g, " ").trim()));
  assert.equal(read.length, written.length, "every heading is read out");
  await context.close();
});

/** What has the focus: whether its ring is drawn, and whether any of it can be seen (WCAG 2.2, success criteria 2.4.7 and 2.4.11). */
function focused() {
  const active = document.activeElement;
  if (!active || active === document.body) return null;
  if (active.dataset.stop) return null;
  active.dataset.stop = "yes";
  const shown = (/^(radio|checkbox)$/.test(active.type) && active.closest("label")) || active;
  const box = shown.getBoundingClientRect();
  const inset = (length) => Math.min(6, length / 2);
  const places = [[box.left + inset(box.width), box.top + inset(box.height)], [box.left + box.width / 2, box.top + box.height / 2], [box.right - inset(box.width), box.bottom - inset(box.height)]];
  const seen = places.some(([x, y]) => { const on = document.elementFromPoint(x, y); return on && (shown.contains(on) || on.contains(shown)); });
  const ringed = [shown, active, active.nextElementSibling].some((one) => one && getComputedStyle(one).outlineStyle !== "none" && parseFloat(getComputedStyle(one).outlineWidth) >= 2);
  return { name: `${active.tagName} ${active.getAttribute("aria-label") ?? active.name ?? ""} ${active.textContent.trim().slice(0, 30)}`, seen, ringed };
}

test("by keyboard alone: what has the focus has a ring and lies behind no bar", async () => {
  for (const viewport of [TABLET, PHONE, { width: 1180, height: 820 }]) {
    const { context, page } = await open(browser, handbook.address, { viewport });
    for (const path of ["/survey.html", "/work/equal-bays", "/wall?wall=b", "/wall?wall=b&view=numbers"]) {
      await page.goto(path);
      if (path === "/wall?wall=b") await page.evaluate(() => { document.querySelector("details.survey").open = true; });
      const wrong = [];
      let stops = 0;
      for (;; stops += 1) {
        await page.keyboard.press("Tab");
        const stop = await page.evaluate(focused);
        if (!stop) break;
        if (!stop.seen) wrong.push(`${stop.name}: hidden`);
        if (!stop.ringed) wrong.push(`${stop.name}: no ring`);
      }
      assert.ok(stops > 15, `${path}: only ${stops} stops`);
      assert.deepEqual(wrong, [], `${path} at ${viewport.width}`);
    }
    await context.close();
  }
});

test("Enter in a field works it out, and leaves the units as they are", async () => {
  const { context, page } = await open(browser, handbook.address);
  await context.addCookies([{ name: "units", value: "metric", url: handbook.address }]);
  for (const [path, field] of [["/work/equal-bays", "#equal-bays input[name='/run']"], ["/wall?wall=a", "#wall-form input[name='/scheme/target_bay']"]]) {
    await page.goto(path);
    await page.evaluate(() => { for (const fold of document.querySelectorAll("details.survey")) fold.open = true; });
    const asked = page.waitForRequest((request) => request.method() === "POST" && new URLSearchParams(request.postData() ?? "").get("do") === "work");
    await page.fill(field, "330 mm");
    await page.keyboard.press("Enter");
    await asked;
    await page.waitForFunction(() => document.getElementById("said").textContent.length > 5);
    assert.equal(await page.getAttribute("html", "data-units"), "metric", path);
  }
  await context.close();
});

test("the place where answers are announced is on every page before it is needed", async () => {
  const { context, page } = await open(browser, handbook.address);
  await page.goto("/work/equal-bays");
  const said = page.locator("#said[role=status][aria-live=polite]");
  assert.equal(await said.textContent(), "");
  await page.click("button.main[value=work]");
  await page.waitForFunction(() => document.getElementById("said").textContent.length > 5);
  assert.equal(await page.locator("#said").count(), 1);
  await page.fill("#equal-bays input[name='/run']", "no length");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => /another look/.test(document.getElementById("said").textContent));
  const field = page.locator("#equal-bays input[name='/run']");
  assert.equal(await field.getAttribute("aria-invalid"), "true");
  const why = await field.getAttribute("aria-describedby");
  assert.ok((await page.textContent(`#${why}`)).length > 20, "what is wrong stands beside the field and belongs to it");
  await context.close();
});

test("a chapter prints with its calculations on half the paper that its screen would take", async () => {
  const { context, page } = await open(browser, handbook.address);
  for (const [path, most] of [["/cut.html", 16], ["/stock.html", 7], ["/work/cutting-plan", 2]]) {
    await page.goto(path);
    await page.evaluate(() => document.fonts.ready);
    for (const format of ["A4", "Letter"]) {
      const paper = await page.pdf({ format });
      const sheets = paper.toString("latin1").match(/\/Type\s*\/Page[^s]/g) ?? [];
      assert.ok(sheets.length > 0 && sheets.length <= most, `${path} takes ${sheets.length} sheets of ${format}`);
    }
    // Buttons and what a press would unfold stay off the paper; what was given is on it.
    await page.emulateMedia({ media: "print" });
    const pressed = await page.$$eval(".calculation :is(button, .btn, .hint)", (all) => all.filter((one) => one.getClientRects().length > 0 && !one.classList.contains("unseen")).length);
    assert.equal(pressed, 0, `${path}: something to press is printed`);
    const clipped = await page.$$eval(".calculation .given input[type=text], .calculation .given input:not([type])", (all) => all.filter((one) => one.getClientRects().length > 0 && one.scrollWidth > one.clientWidth).map((one) => one.value));
    assert.deepEqual(clipped, [], `${path}: values are cut off`);
    await page.emulateMedia({ media: null });
  }
  await context.close();
});
