// The handbook as it runs, and a real browser to look at it with.

import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const root = fileURLToPath(new URL("../..", import.meta.url));
export const binary = process.env.BENCHLEAF ?? `${root}target/release/benchleaf`;
const axeSource = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

export const TABLET = { width: 820, height: 1180 };
export const PHONE = { width: 390, height: 844 };

/** Starts the binary on a free port and waits until it says where it is. */
export async function startHandbook(command = binary, words = ["serve", "--port", "0"], options = {}) {
  if (command === binary && !existsSync(binary)) throw new Error(`build it first: cargo build --release (${binary} is missing)`);
  const child = spawn(command, words, { stdio: ["ignore", "pipe", "inherit"], ...options });
  const address = await new Promise((resolve, reject) => {
    let said = "";
    child.stdout.on("data", (bytes) => {
      said += bytes;
      const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(said);
      if (found) resolve(found[0].replace(/\/$/, ""));
    });
    child.on("exit", (code) => reject(new Error(`the handbook ended with ${code}: ${said}`)));
  });
  return { address, stop: () => new Promise((done) => { child.once("exit", done); child.kill("SIGINT"); }) };
}

/** A browser that may not leave this machine without being told on. */
export async function startBrowser() {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
  });
}

/** A page that collects requests to elsewhere, errors and refused content. */
export async function open(browser, address, options = {}) {
  const context = await browser.newContext({ viewport: TABLET, baseURL: address, ...options });
  const page = await context.newPage();
  const wrong = [];
  page.on("request", (request) => {
    if (!request.url().startsWith(`${address}/`) && !request.url().startsWith("data:")) wrong.push(`asked for ${request.url()}`);
  });
  page.on("pageerror", (error) => wrong.push(`failed: ${error.message}`));
  page.on("console", (message) => {
    // A form with a fault in it is answered with status 422, which the browser notes as an error.
    if (message.type() === "error" && !/422/.test(message.text())) wrong.push(`said: ${message.text()}`);
  });
  return { context, page, wrong };
}

/**
 * Violations of the accessibility rules on the page as it stands, one line each.
 *
 * Contrast takes most of the time, so it is left out here: it is worked out for every pair of colours in contrast.test.mjs, and
 * looked at there on pages of every kind.
 */
export async function violations(page, { contrast = false } = {}) {
  await layOut(page);
  await page.evaluate(axeSource);
  const rules = Object.fromEntries(["color-contrast", "color-contrast-enhanced"].map((rule) => [rule, { enabled: contrast && rule === "color-contrast" }]));
  const found = await page.evaluate((rules) => globalThis.axe.run(document, { resultTypes: ["violations"], rules }), rules);
  return found.violations.flatMap((rule) => rule.nodes.map((node) => `${rule.id}: ${node.target.join(" ")}: ${node.failureSummary?.split("\n")[1] ?? rule.help}`));
}

/** Addresses of every page of the handbook that a link leads to, the wall sheet's walls and parts among them. */
export async function everyPage(address) {
  const seen = new Set(["/"]);
  const waiting = ["/"];
  while (waiting.length > 0) {
    const from = new URL(waiting.shift(), address);
    const html = await (await fetch(from)).text();
    for (const [, link] of html.matchAll(/<a\b[^>]*?\shref="([^"]*)"/g)) {
      const url = new URL(link.replaceAll("&amp;", "&"), from);
      const path = url.pathname + (url.pathname === "/wall" ? url.search : "");
      if (url.origin === from.origin && !seen.has(path) && !/\.(json|css|svg|woff2|txt)$/.test(path)) {
        seen.add(path);
        waiting.push(path);
      }
    }
  }
  // Exercises are one page with other words: three stand for all.
  for (const path of [...seen].filter((path) => path.startsWith("/practice/")).slice(3)) seen.delete(path);
  for (const wall of ["a", "b", "c"]) for (const view of ["numbers", "saw", "client", "lists", "pole"]) seen.add(`/wall?wall=${wall}&view=${view}`);
  return [...seen];
}

/** A chapter's address, or the front page's. */
export const isChapter = (path) => /^\/([a-z-]+\.html)?$/.test(path);

/** Addresses of the calculations' own pages, as the API lists them. */
export async function everyCalculation(address) {
  const list = await (await fetch(`${address}/api/calculators`)).json();
  return list.map((calculator) => `/work/${calculator.id}`);
}

/** Lays out what is not in sight as well: a part that is skipped is neither measured nor looked at. */
export async function layOut(page) {
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync("* { content-visibility: visible !important; contain: none !important; }");
    document.adoptedStyleSheets = [sheet];
  });
}

/** Opens every fold and lays everything out, so that what stands in folds and out of sight is looked at too. */
export async function unfold(page) {
  await layOut(page);
  await page.evaluate(() => { for (const fold of document.querySelectorAll("details")) fold.open = true; });
  // What was folded may ask for a font of its own; until it is there a formula is as wide as its stand-in.
  await page.evaluate(async () => {
    document.body.getBoundingClientRect();
    await document.fonts.ready;
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  });
}
