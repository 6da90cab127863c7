/**
 * `npm run kernel`: compiles the kernel of straight rays anew into the module that is kept beside it. Needed after each change of
 * `rays.as.ts`, and only then: the compiler (102 MB with binaryen, Apache-2.0) is fetched for it and is no dependency.
 */
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const COMPILER = "assemblyscript@0.28.20";
const FLAGS = ["-O3", "--noAssert", "--runtime", "stub", "--enable", "simd"];
const room = fileURLToPath(new URL("../src/core/measure/kernel", import.meta.url));
const source = join(room, "rays.as.ts");

/** What the kept module was made from: compiler, flags and source. */
export const digest = () =>
  createHash("sha256")
    .update([COMPILER, ...FLAGS, readFileSync(source, "utf8")].join("\n"))
    .digest("hex");

/** The module compiled from the source as it is now. */
function compiled() {
  const folder = mkdtempSync(join(tmpdir(), "kernel-"));
  try {
    const file = join(folder, "rays.wasm");
    const call = ["--yes", "--package", COMPILER, "asc", source, "-o", file, ...FLAGS];
    execFileSync("npx", call, { cwd: folder, stdio: "inherit" });
    return readFileSync(file);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const text = `/** Made by \`npm run kernel\` from \`rays.as.ts\`, never by hand. */

/** Of compiler, flags and source: a test holds it to what they are. */
export const MADE_FROM = "${digest()}";
export const MODULE_BASE64 =
  "${compiled().toString("base64")}";
`;
  writeFileSync(join(room, "module.ts"), text);
}
