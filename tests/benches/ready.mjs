// When a page is loaded and ready to use, on a mid-range tablet as Chromium imitates one: processor slowed four times,
// 10 Mbit/s, 20 ms of latency, nothing in the cache. Prints a table; nothing here gates.
//
//   node tests/benches/ready.mjs                  every page, slowest first
//   node tests/benches/ready.mjs /wall /06-stock.html

import { TABLET, everyPage, startBrowser, startHandbook } from "../browser/handbook.mjs";

const TIMES = 5;
const SLOWED = 4;
const BYTES_PER_SECOND = 10_000_000 / 8;
const LATENCY_MS = 20;

// BOOK names a folder laid over the book in the binary, so that a change is measured without a build.
const handbook = await startHandbook(undefined, ["serve", "--port", "0", ...(process.env.BOOK ? ["--book", process.env.BOOK] : [])]);
const browser = await startBrowser();

/** Milliseconds from asking for a page to each of its moments, in a browser that has seen nothing yet. */
async function moments(path) {
  const context = await browser.newContext({ viewport: TABLET, baseURL: handbook.address });
  const page = await context.newPage();
  const device = await context.newCDPSession(page);
  await device.send("Network.enable");
  await device.send("Performance.enable");
  await device.send("Network.emulateNetworkConditions", { offline: false, latency: LATENCY_MS, downloadThroughput: BYTES_PER_SECOND, uploadThroughput: BYTES_PER_SECOND });
  await device.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  const reply = await page.goto(path, { waitUntil: "load" });
  if (!reply.ok()) throw new Error(`${path} is answered with ${reply.status()}`);
  await page.evaluate(() => document.fonts.ready);
  const found = await page.evaluate(() => {
    const [visit] = performance.getEntriesByType("navigation");
    const paint = performance.getEntriesByName("first-contentful-paint")[0];
    // The last byte of what the page asked for before it was loaded; fonts that the first view needs are among it.
    const last = Math.max(visit.responseEnd, ...performance.getEntriesByType("resource").map((entry) => entry.responseEnd));
    return { answered: visit.responseStart, paint: paint?.startTime ?? NaN, interactive: visit.domInteractive, load: visit.loadEventEnd, last, ready: Math.max(visit.loadEventEnd, last), bytes: visit.encodedBodySize, whole: visit.decodedBodySize, elements: document.querySelectorAll("*").length };
  });
  const { metrics } = await device.send("Performance.getMetrics");
  const spent = (name) => 1000 * (metrics.find((one) => one.name === name)?.value ?? NaN);
  await context.close();
  return { ...found, style: spent("RecalcStyleDuration"), layout: spent("LayoutDuration"), script: spent("ScriptDuration"), work: spent("TaskDuration") };
}

// Whatever else this machine does only adds to a time.
const least = (numbers) => Math.min(...numbers);

try {
  let paths = process.argv.slice(2);
  if (paths.length === 0) paths = await everyPage(await browser.newPage({ baseURL: handbook.address }));
  const rows = [];
  for (const path of paths) {
    const seen = [];
    for (let time = 0; time < TIMES; time += 1) seen.push(await moments(path));
    rows.push({ path, ...Object.fromEntries(Object.keys(seen[0]).map((key) => [key, Math.round(least(seen.map((one) => one[key])))])) });
  }
  rows.sort((one, other) => other.ready - one.ready);
  console.table(Object.fromEntries(rows.map(({ path, ...row }) => [path, row])));
} finally {
  await browser.close();
  await handbook.stop();
}
