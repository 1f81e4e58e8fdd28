// Every page by lamplight in metric units, and in the system's own colours.

import { after, before, test } from "node:test";
import { lookAtEveryPage } from "./every-page.mjs";
import { startBrowser, startHandbook } from "./handbook.mjs";

let handbook, browser;
before(async () => { handbook = await startHandbook(); browser = await startBrowser(); });
after(async () => { await browser?.close(); await handbook?.stop(); });

test("every page keeps the rules by lamp, and in the system's own colours without motion", async () => {
  await lookAtEveryPage(browser, handbook.address, { units: "metric", light: "lamp", forced: true });
});
