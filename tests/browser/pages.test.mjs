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

test("with the system's own colours and without motion every chapter still keeps the rules, and drawings take the colours", async () => {
  const { page } = await open(browser, handbook.address);
  const paths = await everyPage(page);
  await page.emulateMedia({ forcedColors: "active", reducedMotion: "reduce", colorScheme: "dark" });
  const broken = [];
  for (const path of paths.filter((path) => !path.startsWith("/practice/"))) {
    await page.goto(path);
    for (const violation of await violations(page)) broken.push(`${path}: ${violation}`);
    // The colours a drawing's lines have must not be those of the ground behind them.
    const lost = await page.$$eval("svg.drawing .heavy, svg.drawing .cut", (lines) => {
      const probe = document.createElement("p");
      probe.style.color = "Canvas";
      document.body.append(probe);
      const ground = getComputedStyle(probe).color;
      probe.remove();
      return lines.filter((line) => getComputedStyle(line).stroke === ground).length;
    });
    if (lost > 0) broken.push(`${path}: ${lost} lines in the colour of the ground`);
  }
  assert.deepEqual(broken, []);
});

test("no page scrolls sideways on a phone, on a tablet, or at 400 %", async () => {
  const { page } = await open(browser, handbook.address);
  const paths = [...await everyPage(page), ...await everyCalculation(page)];
  const wide = [];
  // A page of 1280 px at 400 % has the room of one 320 px wide (WCAG 2.2, success criterion 1.4.10).
  for (const size of [PHONE, TABLET, { width: 320, height: 256 }]) {
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
