/**
 * `npm run planted [-- NAME ...]`: does the suite catch what is broken on purpose? Each `tests/planted/*.patch` is one fault and
 * names the test files that must fail for it. Applied one by one in a scratch copy of the working tree; each file must pass
 * without the fault, too. Prints one JSON object: what was caught, what was not, what no longer applies. Status 1 unless all are caught.
 * `--browser` takes the faults that only a browser shows as well: each costs a build.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const top = fileURLToPath(new URL("../..", import.meta.url));
const here = fileURLToPath(new URL(".", import.meta.url));
const isBrowserTest = (file) => file.startsWith("tests/browser/");

/** What stands above the diff: `Fault:` in words, `Caught by:` test files. */
function faultIn(file) {
  const text = readFileSync(join(here, file), "utf8");
  const said = (word) => new RegExp(`^${word}: (.+)$`, "m").exec(text)?.[1] ?? "";
  return {
    name: file.replace(/\.patch$/, ""),
    patch: join(here, file),
    fault: said("Fault"),
    tests: said("Caught by").split(" "),
  };
}

/** The files that are tracked, and those that would be, with the packages of the original. */
function scratchCopy() {
  const copy = mkdtempSync(join(tmpdir(), "planted-"));
  const list = execFileSync("git", ["ls-files", "-co", "--exclude-standard", "-z"], { cwd: top });
  for (const path of list.toString().split("\0").filter(Boolean)) {
    mkdirSync(dirname(join(copy, path)), { recursive: true });
    cpSync(join(top, path), join(copy, path));
  }
  symlinkSync(join(top, "node_modules"), join(copy, "node_modules"));
  return copy;
}

const copy = scratchCopy();
const quietly = (command, words) => spawnSync(command, words, { cwd: copy, encoding: "utf8" });

/** Whether test files pass in the copy as it stands. */
function passes(tests) {
  const groups = [
    [tests.filter((file) => !isBrowserTest(file)), ["--config", "tests/vitest.config.ts"]],
    [tests.filter(isBrowserTest), ["--config", "tests/browser/vitest.config.ts"]],
  ];
  if (groups[1][0].length > 0 && quietly("npx", ["vite", "build", "--logLevel", "error"]).status !== 0)
    return false;
  return groups.every(
    ([files, config]) =>
      files.length === 0 ||
      quietly("npx", ["vitest", "run", "--bail", "1", ...config, ...files]).status === 0,
  );
}

const wanted = process.argv.slice(2).filter((word) => !word.startsWith("--"));
const withBrowser = process.argv.includes("--browser") || wanted.length > 0;
const faults = readdirSync(here)
  .filter((file) => file.endsWith(".patch"))
  .map(faultIn)
  .filter(({ name }) => wanted.length === 0 || wanted.includes(name))
  .filter(({ tests }) => withBrowser || !tests.some(isBrowserTest));

const sound = new Map();
function isSoundWithout(tests) {
  const key = tests.join(" ");
  if (!sound.has(key)) sound.set(key, passes(tests));
  return sound.get(key);
}

const found = { caught: [], missed: [], failsWithout: [], stale: [] };
try {
  for (const { name, patch, fault, tests } of faults) {
    process.stderr.write(`${name}: ${fault} ... `);
    let verdict = "stale";
    if (!isSoundWithout(tests)) verdict = "failsWithout";
    else if (quietly("git", ["apply", "-C1", patch]).status === 0) {
      verdict = passes(tests) ? "missed" : "caught";
      quietly("git", ["apply", "-C1", "-R", patch]);
    }
    found[verdict].push(name);
    process.stderr.write(`${verdict}\n`);
  }
} finally {
  rmSync(copy, { recursive: true, force: true });
}
console.log(JSON.stringify({ faults: faults.length, ...found }, null, 2));
process.exitCode = found.caught.length === faults.length ? 0 : 1;
