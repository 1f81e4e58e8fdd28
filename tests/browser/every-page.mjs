// Every page of the handbook, each loaded once and looked at in every way: it answers, keeps to this machine, breaks no
// accessibility rule, never scrolls sideways, has targets for a gloved finger, and warns on paper as it does on the screen.

import assert from "node:assert/strict";
import { PHONE, TABLET, everyCalculation, everyPage, isChapter, open, unfold, violations } from "./handbook.mjs";

/** Widths at which nothing may scroll sideways. A page of 1280 px at 400 % has the room of one 320 px wide (WCAG 2.2, success criterion 1.4.10). */
const SCREENS = [PHONE, { width: 320, height: 256 }, TABLET];
/** Between the width of the text on A4 and on Letter: what is wider would make the browser shrink every sheet. */
const PAPER = { width: 680, height: 960 };

const over = (page) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Controls that are smaller than a gloved finger needs, on a tablet. */
const small = (page) => page.$$eval("button, a.btn, input:not([type=hidden]), select, summary", (controls) => controls.flatMap((control) => {
  const label = control.closest("label");
  const box = (label && (control.type === "checkbox" || control.type === "radio") ? label : control).getBoundingClientRect();
  const hidden = box.width === 0 || control.classList.contains("unseen") || control.closest(".unseen");
  return hidden || (box.width >= 48 && box.height >= 48) ? [] : [`${control.tagName} ${control.name ?? ""} ${control.textContent.slice(0, 20)}: ${box.width.toFixed(0)} x ${box.height.toFixed(0)}`];
}));

/** Signal panels, and notes that stop the work or ask for another look, that cannot be seen. */
const unseen = (page) => page.$$eval(".signal, .notes > li", (all) => all.filter((one) => !one.checkVisibility({ visibilityProperty: true, opacityProperty: true }) || one.getBoundingClientRect().height < 8).map((one) => one.textContent.trim().slice(0, 60)));

/** How many lines of drawings have the colour of the ground behind them. */
const lost = (page) => page.$$eval("svg.drawing .heavy, svg.drawing .cut", (lines) => {
  const probe = document.createElement("p");
  probe.style.color = "Canvas";
  document.body.append(probe);
  const ground = getComputedStyle(probe).color;
  probe.remove();
  return lines.filter((line) => getComputedStyle(line).stroke === ground).length;
});

/** Looks at every page in one unit system and one light; with the calculations' own pages, or in the system's own colours as well. */
export async function lookAtEveryPage(browser, address, { units, light, calculations = false, forced = false }) {
  const { context, page, wrong } = await open(browser, address);
  await context.addCookies([{ name: "units", value: units, url: address }, { name: "light", value: light, url: address }]);
  const pages = await everyPage(address);
  const alone = await everyCalculation(address);
  assert.ok(pages.length > 30, `only ${pages.length} pages were found`);
  assert.ok(alone.length > 60, `only ${alone.length} calculations were found`);
  const broken = [];
  let warned = 0;
  // Calculations stand in chapters too, so their own pages are looked at once.
  for (const path of calculations ? [...pages, ...alone] : pages) {
    const say = (lines) => broken.push(...lines.map((line) => `${path} (${units}, ${light}): ${line}`));
    const reply = await page.goto(path);
    assert.equal(reply.status(), 200, path);
    await unfold(page);
    say(await violations(page));
    say(await small(page));
    for (const screen of SCREENS) {
      await page.setViewportSize(screen);
      const by = await over(page);
      if (by > 0) say([`${by} px too wide at ${screen.width}`]);
    }
    say((await unseen(page)).map((words) => `not seen: ${words}`));
    await page.emulateMedia({ media: "print" });
    say((await unseen(page)).map((words) => `not on paper: ${words}`));
    if (isChapter(path)) {
      await page.setViewportSize(PAPER);
      const by = await over(page);
      if (by > 0) say([`${by} px wider than paper`]);
      await page.setViewportSize(TABLET);
    }
    await page.emulateMedia({ media: null });
    warned += await page.locator(".signal").count();
    if (forced && !path.startsWith("/practice/")) {
      await page.emulateMedia({ forcedColors: "active", reducedMotion: "reduce", colorScheme: "dark" });
      say((await violations(page)).map((line) => `in the system's colours: ${line}`));
      const lines = await lost(page);
      if (lines > 0) say([`${lines} lines in the colour of the ground`]);
      await page.emulateMedia({ forcedColors: null, reducedMotion: null, colorScheme: null });
    }
  }
  assert.deepEqual([...new Set(broken)].slice(0, 40), []);
  assert.deepEqual(wrong, []);
  assert.ok(warned > 50, `only ${warned} signal panels were seen`);
  await context.close();
}
