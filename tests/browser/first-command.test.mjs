// The README's first command, as a stranger types it after a fresh clone: it builds from nothing but what is committed, says where
// it is, and works a wall.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { test } from "node:test";
import { startHandbook } from "./handbook.mjs";

const root = fileURLToPath(new URL("../..", import.meta.url));
const target = process.env.CARGO_TARGET_DIR ?? join(root, "target");

test("the README's first command opens the handbook and works a wall", async () => {
  const commands = [...readFileSync(join(root, "README.md"), "utf8").matchAll(/```sh\n(.*?)\n```/gs)].map((block) => block[1]);
  assert.equal(commands.length, 2, "exactly two commands");
  assert.equal(commands[1], "tests/run");
  const [program, ...words] = commands[0].split(" ");
  const handbook = await startHandbook(program, words, { cwd: root });
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
});

test("the program is built from nothing but what is committed", () => {
  const committed = new Set(execFileSync("git", ["ls-files", "-z"], { cwd: root }).toString().split("\0"));
  // Cargo writes down every file that it read for the program, the chapters and the theme in it among them.
  const read = readFileSync(join(target, "release/benchleaf.d"), "utf8").split(": ")[1].trim().split(/(?<!\\) /).map((file) => file.replaceAll("\\ ", " "));
  const own = read.filter((file) => file.startsWith(root)).map((file) => file.slice(root.length));
  assert.ok(own.length > 300 && own.includes("book/chapters/SUMMARY.md"), `only ${own.length} files were read`);
  const settings = ["Cargo.toml", "Cargo.lock", "rust-toolchain.toml", ".cargo/config.toml", ".cargo/rustc"];
  // A folder is read whole: nothing may lie in it that is not committed.
  const inside = (folder) => execFileSync("git", ["ls-files", "-z", "--others", "--", folder], { cwd: root }).toString().split("\0").filter(Boolean);
  const isFolder = (path) => statSync(join(root, path)).isDirectory();
  assert.deepEqual([...own, ...settings].flatMap((path) => (isFolder(path) ? inside(path) : committed.has(path) ? [] : [path])), []);
});

test("the program holds no path of the machine that built it, and no symbols", () => {
  const program = readFileSync(join(target, "release/benchleaf")).toString("latin1");
  const cargo = process.env.CARGO_HOME ?? join(process.env.HOME, ".cargo");
  for (const path of [root, cargo, process.env.HOME + "/"]) assert.ok(path === "//" || !program.includes(path), path);
  assert.ok(program.includes("cargo/registry"), "where a fault in a library lies is still told");
  // The section of symbols is gone with them (ELF).
  if (process.platform === "linux") assert.ok(!program.includes("\0.symtab\0"));
});
