/**
 * Before the unit tests: Node itself loads the engine's sources, with their types taken off. Through the test runner's own loader
 * each call of a function from another file is a look into that file's exports; what reckons much takes a quarter longer so.
 */
import { readFile } from "node:fs/promises";
import { register } from "node:module";
import { fileURLToPath } from "node:url";
import { isMainThread } from "node:worker_threads";
import { transform } from "esbuild";

/** Node's hook for loading a module, in a thread of its own. */
export async function load(url, context, next) {
  if (!url.startsWith("file:") || !url.endsWith(".ts")) return next(url, context);
  const path = fileURLToPath(url);
  const { code } = await transform(await readFile(path, "utf8"), {
    loader: "ts",
    format: "esm",
    sourcemap: "inline",
    sourcefile: path,
  });
  return { format: "module", source: code, shortCircuit: true };
}

if (isMainThread) register(import.meta.url);
