// The pack of a wall, written from the command line: it is whole, and it says how many findings must be settled first, if any.

import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { binary } from "./handbook.mjs";

/** A level wall of 4 m, open at both ends, with these parts to be kept clear. */
const wall = (keepClear) => ({
  survey: {
    name: "X", datum: 1000, lengths: [{ height: 0, length: 4000 }],
    stations: [{ at: 0, datum_to_floor: 1000 }, { at: 4000, datum_to_floor: 1000 }],
    base: { height: 140, thickness: 18 }, left: { kind: "open-bay" }, right: { kind: "open-bay" }, keep_clear: keepClear,
  },
  scheme: { board_width: 64, board_thickness: 18, target_bay: 330, rails: { width: 90, top: 1575 }, tape: "1 mm" },
});

function pack(input) {
  const folder = mkdtempSync(join(tmpdir(), "benchleaf-pack-"));
  try {
    writeFileSync(join(folder, "wall.json"), JSON.stringify(input));
    const run = spawnSync(binary, ["wall", join(folder, "wall.json"), "--out", join(folder, "pack"), "--units", "metric"], { encoding: "utf8" });
    assert.equal(run.status, 0, run.stderr);
    const plan = JSON.parse(readFileSync(join(folder, "pack/plan.json"), "utf8"));
    const pages = ["wall", "marks", "saw", "client", "lists", "pole"].map((name) => readFileSync(join(folder, `pack/${name}.html`), "utf8"));
    return { said: run.stderr, plan, pages, drawing: readFileSync(join(folder, "pack/drawing.svg"), "utf8") };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

test("a pack is whole and says what must be settled, and only that", () => {
  // Nobody has read the label of the vent: the work stops. On the bare wall there is none.
  const vent = { kind: "vent", left: 300, right: 400, bottom: 700, top: 800 };
  for (const [parts, stops] of [[[], false], [[vent], true]]) {
    const { said, plan, pages, drawing } = pack(wall(parts));
    const settle = plan.result.layouts[0].conflicts.filter((finding) => finding.severity === "settle").length;
    assert.equal(settle > 0, stops);
    assert.equal(/must be settled/.test(said), stops, said);
    if (stops) assert.match(said, new RegExp(`^${settle} findings? must be settled`, "m"));
    assert.match(drawing, /^<svg .*xmlns=/);
    for (const page of pages) assert.match(page, /<\/html>\s*$/);
    const letters = (html) => html.replace(/<[^>]*>/g, "").replace(/\s+/g, " ");
    assert.match(letters(pages[0]), /[Cc]ables and pipes/, "cautions stand in the pack");
    assert.match(letters(pages[2]), /blade/i);
  }
});
