/** The quick start from the bundle says exactly what the sources say, whichever start comes first. */
import { execFile } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { expect, it } from "vitest";
import { plan, tier } from "../core/plan/sample.ts";

const exec = promisify(execFile);
const folder = mkdtempSync(join(tmpdir(), "glintwright-start-"));
const good = join(folder, "good.json");
const bad = join(folder, "bad.json");
writeFileSync(
  good,
  JSON.stringify(
    plan([tier("a", 0, 12, { rule: "edge", mm: 3 }), tier("b", 40, 12, { rule: "close", to: "a" }, 15)]),
  ),
);
writeFileSync(bad, '{"format":"glintwright-plan","version":1}');

const quick = (...words: string[]) => exec("node", ["src/cli/run.mjs", ...words], { maxBuffer: 2 ** 24 });
const plain = (...words: string[]) =>
  exec("node", ["--import", "tsx", "src/cli/main.ts", ...words], { maxBuffer: 2 ** 24 });

it("prints the same report from the bundle as from the sources, also when several start at once", async () => {
  const [one, two, source] = await Promise.all([
    quick("report", good),
    quick("report", good),
    plain("report", good),
  ]);
  expect(JSON.parse(one.stdout).facets).toHaveLength(24);
  expect(one.stdout).toBe(source.stdout);
  expect(two.stdout).toBe(source.stdout);
  expect(one.stderr).toBe("");
});

it("refuses a plan that can't be read with one line on standard error and exit code 2", async () => {
  const failed = await quick("report", bad).catch(
    (error: { code: number; stdout: string; stderr: string }) => error,
  );
  expect(failed).toMatchObject({ code: 2, stdout: "" });
  expect(failed.stderr).toMatch(/^[^\n]*name: missing[^\n]*\n$/);
});

it("takes an option's value that begins with a minus sign", async () => {
  const out = join(folder, "look.pfm");
  const done = await quick(
    "render",
    good,
    "--out",
    out,
    "--size",
    "8",
    "--samples",
    "1",
    "--from",
    "-30,-20",
  );
  expect(done.stdout).toBe("");
});
