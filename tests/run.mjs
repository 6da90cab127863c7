/**
 * `npm test`: sets up what is missing, then types, lint, build (and the tests that judge it) and the unit, property and reference tests
 * side by side, and then real-browser tests: beside others both take longer than one after the other.
 * `npm run check` does all but the last, and leaves the unit tests that take longest (`long-files.json`) to `npm test`. Browser tests that fail are tried once more; which passed only then is said at the end.
 */
import { spawn } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { ensureChromium, ensurePackages, top } from "./setup.mjs";

const isQuick = process.argv.includes("--quick");

ensurePackages();
const chromium = isQuick ? null : ensureChromium();
mkdirSync(`${top}.cache`, { recursive: true });

/** Runs a command. @returns its exit status and what it said, where that was not shown at once */
function run(words, stdio, env = {}) {
  return new Promise((resolve) => {
    const child = spawn("npx", words, { cwd: top, stdio, env: { ...process.env, ...env } });
    let said = "";
    for (const stream of [child.stdout, child.stderr]) stream?.on("data", (text) => (said += text));
    child.on("error", (error) => resolve({ status: 1, said: error.message }));
    child.on("close", (code, signal) => resolve({ status: code ?? signal, said }));
  });
}

const counts = { passed: 0, failed: 0 };
/** One line for each test that failed first and passed then. */
const secondTry = [];

/** A step that passes or fails as a whole; what it says comes in one piece, since others run beside it. */
async function step(name, words) {
  const { status, said } = await run(words, ["ignore", "pipe", "pipe"]);
  console.log(`\n== ${name}\n${said.trimEnd()}`);
  if (status !== 0) console.error(`npx ${words.join(" ")} ended with ${status}`);
  counts[status === 0 ? "passed" : "failed"]++;
}

const firstLine = (text) => text.split("\n")[0];

/** Runs one vitest suite and counts its tests. */
async function suite(name, words) {
  console.log(`\n== ${name} tests`);
  const file = `${top}.cache/tests-${name}.json`;
  rmSync(file, { force: true });
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile=${file}`];
  const { status } = await run(
    ["vitest", "run", ...reporters, ...words],
    "inherit",
    chromium ? { CHROMIUM: chromium } : {},
  );
  let [passed, failed] = [0, 0];
  try {
    const report = JSON.parse(readFileSync(file, "utf8"));
    passed = report.numPassedTests;
    failed = report.numFailedTests;
    for (const { name: path, assertionResults } of report.testResults)
      for (const test of assertionResults)
        if (test.status === "passed" && test.failureMessages.length > 0)
          secondTry.push(
            `${path.replace(top, "")}: ${test.fullName} (at first: ${firstLine(test.failureMessages[0])})`,
          );
  } catch (error) {
    console.error(`the ${name} tests left no report: ${error.message}`);
  }
  // A suite that ended badly has failed even when no single test says so.
  if (status !== 0 && failed === 0) failed = 1;
  counts.passed += passed;
  counts.failed += failed;
}

const UNIT = ["--config", "tests/vitest.config.ts"];
/** Unit tests that judge what was built. */
const OF_BUILD = ["tests/house/build-budget.test.ts", "tests/house/headers.test.ts"];
const LONG = JSON.parse(readFileSync(`${top}tests/long-files.json`, "utf8"));
for (const file of LONG) if (!existsSync(`${top}${file}`)) throw new Error(`there is no long file ${file}`);
const left = [...OF_BUILD, ...(isQuick ? LONG : [])];

const first = [
  // what was found the last time is gone on from
  step("types", ["tsc", "--noEmit", "--incremental", "--tsBuildInfoFile", ".cache/types.tsbuildinfo"]),
  step("lint", ["biome", "check", "."]),
  step("build", ["vite", "build", "--logLevel", "warn"]).then(() => suite("build", [...UNIT, ...OF_BUILD])),
];
await Promise.all([suite("unit", [...UNIT, ...left.map((file) => `--exclude=${file}`)]), ...first]);
if (!isQuick) await suite("browser", ["--config", "tests/browser/vitest.config.ts"]);
if (secondTry.length > 0)
  console.log(`\npassed at the second try:\n${secondTry.map((line) => `  ${line}`).join("\n")}`);
console.log(`\n${counts.passed} passed, ${counts.failed} failed`);
process.exitCode = counts.failed === 0 ? 0 : 1;
