// The README's first command, typed by a stranger on a fresh clone: it builds, says where it is, and works a wall.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { test } from "node:test";
import { startHandbook } from "./handbook.mjs";

const root = fileURLToPath(new URL("../..", import.meta.url));

test("the first command on a fresh clone opens the handbook and works a wall", async () => {
  const clone = mkdtempSync(join(tmpdir(), "benchleaf-clone-"));
  try {
    execFileSync("git", ["clone", "--quiet", "--depth", "1", `file://${root}`, clone]);
    const commands = [...readFileSync(join(clone, "README.md"), "utf8").matchAll(/```sh\n(.*?)\n```/gs)].map((block) => block[1]);
    assert.equal(commands.length, 2, "exactly two commands");
    // Crates that are built already are used again; the workspace itself is built anew from the clone.
    const env = { ...process.env, CARGO_TARGET_DIR: join(root, "target") };
    const [program, ...words] = commands[0].split(" ");
    const handbook = await startHandbook(program, words, { cwd: clone, env });
    try {
      const front = await (await fetch(`${handbook.address}/`)).text();
      assert.match(front, /A method book/);
      const card = await (await fetch(`${handbook.address}/api/calculators/wall-plan`)).json();
      const reply = await fetch(`${handbook.address}/api/calculators/wall-plan`, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(card.example.input) });
      assert.equal(reply.status, 200);
      assert.ok((await reply.json()).result.layouts[0].cut_list.length > 10);
    } finally {
      await handbook.stop();
    }
  } finally {
    rmSync(clone, { recursive: true, force: true });
  }
});
