// Every page by day in imperial units, the calculations' own pages among them.

import { after, before, test } from "node:test";
import { lookAtEveryPage } from "./every-page.mjs";
import { startBrowser, startHandbook } from "./handbook.mjs";

let handbook, browser;
before(async () => { handbook = await startHandbook(); browser = await startBrowser(); });
after(async () => { await browser?.close(); await handbook?.stop(); });

test("every page keeps the rules by day", async () => {
  await lookAtEveryPage(browser, handbook.address, { units: "imperial", light: "day", calculations: true });
});
