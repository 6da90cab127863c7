/**
 * Starts the command line quickly without a build: the sources are bundled once into .cache (again whenever one changes) and
 * run from there. A folder that can't be written has no cache: there the sources run through tsx.
 */
import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readdirSync, renameSync, rmSync, statSync } from "node:fs";
import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const top = fileURLToPath(new URL("../..", import.meta.url));
const MAIN = join(top, "src/cli/main.ts");
/** Threads are started from files of their own. */
const THREADS = ["render-worker.ts", "ideas-worker.ts"].map((name) => join(top, "src/cli", name));

/** A name that changes with any source: paths, sizes and times of all files that a command may load. */
function stampOfSources() {
  const hash = createHash("sha1");
  for (const folder of ["src/cli", "src/core", "src/sheet", "src/words", "src/worker"])
    for (const entry of readdirSync(join(top, folder), { recursive: true, withFileTypes: true })) {
      if (!entry.isFile()) continue;
      const path = join(entry.parentPath ?? entry.path, entry.name);
      const { mtimeMs, size } = statSync(path);
      hash.update(`${path} ${size} ${mtimeMs}\n`);
    }
  hash.update(String(statSync(join(top, "package-lock.json")).mtimeMs));
  return hash.digest("hex").slice(0, 16);
}

/** The bundle of the sources as they are; made in a folder of its own and moved in place, so that two starts never meet. */
async function bundle() {
  const home = join(top, ".cache/cli");
  const place = join(home, stampOfSources());
  const entry = join(place, "main.js");
  if (existsSync(entry)) return entry;
  await mkdir(home, { recursive: true });
  const { build } = await import("esbuild");
  const making = mkdtempSync(join(home, "making-"));
  await build({
    entryPoints: [MAIN, ...THREADS],
    outdir: making,
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    target: "node20",
    packages: "external",
    // but for this one: to find and load its hundred files took a fifth of a start
    alias: { "zod/mini": fileURLToPath(import.meta.resolve("zod/mini")) },
    logLevel: "error",
  });
  try {
    renameSync(making, place);
  } catch (error) {
    // Another start has put the same bundle there meanwhile.
    if (!existsSync(entry)) throw error;
    rmSync(making, { recursive: true });
  }
  return entry;
}

/** The bundler tells faults of writing and of the sources alike; the sources' own come again when they run unbundled. */
const isUnwritable = (error) =>
  ["EACCES", "EROFS", "EPERM", "ENOSPC", "EDQUOT"].includes(error?.code) || Array.isArray(error?.errors);

async function entryOf() {
  try {
    return await bundle();
  } catch (error) {
    if (!isUnwritable(error)) throw error;
    return null;
  }
}

const entry = await entryOf();
if (entry === null) {
  const { register } = await import("tsx/esm/api");
  register();
}
await import(pathToFileURL(entry ?? MAIN).href);
