/** `npm test`: sets up what is missing, then types, lint, build, unit and property and reference tests, real-browser tests. */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { ensureChromium, ensurePackages, must, top } from "./setup.mjs";

/** Runs one vitest suite and counts its tests. */
function suite(name, args) {
  const file = `${top}.cache/tests-${name}.json`;
  rmSync(file, { force: true });
  const done = spawnSync(
    "npx",
    ["vitest", "run", "--reporter=default", "--reporter=json", `--outputFile=${file}`, ...args],
    {
      cwd: top,
      stdio: "inherit",
      env: { ...process.env, CHROMIUM: chromium },
    },
  );
  const counts = { passed: 0, failed: 0 };
  try {
    const report = JSON.parse(readFileSync(file, "utf8"));
    counts.passed = report.numPassedTests;
    counts.failed = report.numFailedTests;
  } catch (error) {
    console.error(`the ${name} tests left no report: ${error.message}`);
  }
  // A suite that ended badly has failed even when no single test says so.
  if (done.status !== 0 && counts.failed === 0) counts.failed = 1;
  return counts;
}

ensurePackages();
const chromium = ensureChromium();
mkdirSync(`${top}.cache`, { recursive: true });
let passed = 0;
let failed = 0;
for (const [name, command] of [
  ["types", ["tsc", "--noEmit"]],
  ["lint", ["biome", "check", "."]],
  ["build", ["vite", "build"]],
]) {
  console.log(`\n== ${name}`);
  try {
    must("npx", command);
    passed++;
  } catch (error) {
    console.error(error.message);
    failed++;
  }
}
for (const [name, args] of [
  ["unit", []],
  ["browser", ["--config", "tests/browser/vitest.config.ts"]],
]) {
  console.log(`\n== ${name} tests`);
  const counts = suite(name, args);
  passed += counts.passed;
  failed += counts.failed;
}
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
