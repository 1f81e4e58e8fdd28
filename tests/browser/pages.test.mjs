// Every page of the handbook: it answers, keeps to this machine, breaks no accessibility rule, never scrolls sideways.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { PHONE, TABLET, everyCalculation, everyPage, open, startBrowser, startHandbook, unfold, violations } from "./handbook.mjs";

let handbook, browser;
before(async () => { handbook = await startHandbook(); browser = await startBrowser(); });
after(async () => { await browser?.close(); await handbook?.stop(); });

test("every page keeps the rules in both lights and both unit systems", async () => {
  const { page, wrong } = await open(browser, handbook.address);
  const paths = await everyPage(page);
  const alone = await everyCalculation(page);
  assert.ok(paths.length > 30, `only ${paths.length} pages were found`);
  assert.ok(alone.length > 60, `only ${alone.length} calculations were found`);
  const broken = [];
  for (const [units, light] of [["imperial", "day"], ["metric", "lamp"]]) {
    await page.context().addCookies([{ name: "units", value: units, url: handbook.address }, { name: "light", value: light, url: handbook.address }]);
    // Calculations stand in chapters too, so their own pages are looked at once.
    for (const path of light === "day" ? [...paths, ...alone] : paths) {
      const reply = await page.goto(path);
      assert.equal(reply.status(), 200, path);
      await unfold(page);
      for (const violation of await violations(page)) broken.push(`${path} (${units}, ${light}): ${violation}`);
    }
  }
  assert.deepEqual(broken, []);
  assert.deepEqual(wrong, []);
});

test("no page scrolls sideways on a phone or a tablet", async () => {
  const { page } = await open(browser, handbook.address);
  const paths = [...await everyPage(page), ...await everyCalculation(page)];
  const wide = [];
  for (const size of [PHONE, TABLET]) {
    await page.setViewportSize(size);
    for (const path of paths) {
      await page.goto(path);
      await unfold(page);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      if (over > 0) wide.push(`${path} at ${size.width}: ${over} px`);
    }
  }
  assert.deepEqual(wide, []);
});

test("what is pressed with a gloved finger is large enough", async () => {
  const { page } = await open(browser, handbook.address, { viewport: TABLET });
  const paths = [...await everyPage(page), ...await everyCalculation(page)];
  const small = [];
  for (const path of paths) {
    await page.goto(path);
    await unfold(page);
    small.push(...await page.$$eval("button, a.btn, input:not([type=hidden]), select, summary", (controls) => controls.flatMap((control) => {
      const label = control.closest("label");
      const box = (label && (control.type === "checkbox" || control.type === "radio") ? label : control).getBoundingClientRect();
      const hidden = box.width === 0 || control.classList.contains("unseen") || control.closest(".unseen");
      return hidden || (box.width >= 48 && box.height >= 48) ? [] : [`${control.tagName} ${control.name ?? ""} ${control.textContent.slice(0, 20)}: ${box.width.toFixed(0)} x ${box.height.toFixed(0)}`];
    })).then((lines) => lines.map((line) => `${path}: ${line}`)));
  }
  assert.deepEqual([...new Set(small)].slice(0, 20), []);
});
