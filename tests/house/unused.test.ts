/** No file, package or export lies about that nothing uses, and no package is used that package.json does not name. */
import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { expect, it } from "vitest";

const top = fileURLToPath(new URL("../..", import.meta.url));

it("finds no unused file, package or export and no package that is not named", async () => {
  const run = promisify(execFile)("npx", ["knip", "--no-progress", "--config", ".knip.json"], { cwd: top });
  const said = await run.then(
    () => "",
    (error: { stdout: string; stderr: string }) => error.stdout + error.stderr,
  );
  expect(said).toBe("");
});
