// What a page weighs on its first visit: everything it asks for, as it comes over the wire, fonts included.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { everyPage, isChapter, open, startBrowser, startHandbook } from "./handbook.mjs";

/** A tablet on a building site's telephone; a promise of this book. */
const MOST = 300_000;

let handbook, browser;
before(async () => { handbook = await startHandbook(); browser = await startBrowser(); });
after(async () => { await browser?.close(); await handbook?.stop(); });

/** Bytes that came over the wire for one page in a browser that has seen nothing yet. */
async function firstLoad(path) {
  const { context, page } = await open(browser, handbook.address);
  const watch = await context.newCDPSession(page);
  await watch.send("Network.enable");
  let bytes = 0, requests = 0;
  watch.on("Network.loadingFinished", (event) => { bytes += event.encodedDataLength; requests += 1; });
  await page.goto(path, { waitUntil: "networkidle" });
  await page.evaluate(() => document.fonts.ready);
  await context.close();
  return { bytes, requests };
}

test("no page of the handbook weighs more than three hundred kilobytes", async () => {
  const paths = (await everyPage(handbook.address)).filter(isChapter);
  assert.ok(paths.length > 20, `only ${paths.length} pages were found`);
  const heavy = [];
  for (const path of paths) {
    const { bytes, requests } = await firstLoad(path);
    assert.ok(requests > 3, `${path}: only ${requests} requests were seen`);
    if (bytes > MOST) heavy.push(`${path}: ${bytes} bytes`);
  }
  assert.deepEqual(heavy, []);
});
