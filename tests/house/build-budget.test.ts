/** What a first visit has to load, held to a budget on the built app (`npm run build` first; `npm test` does; `BUILT_APP` names another folder). */
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { expect, it } from "vitest";

const dist = process.env.BUILT_APP ?? fileURLToPath(new URL("../../dist", import.meta.url));
const FIRST_VIEW_BYTES = 400_000;
const CHUNK_BYTES = 500_000;

const gzipped = (path: string) => gzipSync(readFileSync(path), { level: 9 }).length;

/** Scripts and styles that the page names or preloads, and what those import before anything shows. */
function firstFiles(): string[] {
  const html = readFileSync(join(dist, "index.html"), "utf8");
  const queue = [...html.matchAll(/(?:src|href)="\.?\/?(assets\/[^"]+\.(?:js|css))"/g)].map((m) => m[1]);
  const seen = new Set<string>();
  while (queue.length > 0) {
    const file = queue.pop();
    if (!file || seen.has(file)) continue;
    seen.add(file);
    if (!file.endsWith(".js")) continue;
    const code = readFileSync(join(dist, file), "utf8");
    for (const m of code.matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/g)) queue.push(`assets/${m[1]}`);
  }
  return [...seen];
}

it("has a built app to judge", () => {
  expect(existsSync(join(dist, "index.html")), "run `npm run build` first").toBe(true);
});

it("loads the shell and the first 3D view in less than 400 kB gzipped", () => {
  const files = firstFiles();
  const total = files.reduce((sum, file) => sum + gzipped(join(dist, file)), 0);
  // the chunk that draws the piece is asked for by the page itself
  expect(files.some((file) => file.includes("/canvas-"))).toBe(true);
  expect(total, files.map((f) => `${f} ${gzipped(join(dist, f))}`).join("\n")).toBeLessThan(FIRST_VIEW_BYTES);
});

it("has no chunk over 500 kB gzipped", () => {
  const large = readdirSync(join(dist, "assets"))
    .filter((f) => f.endsWith(".js") && statSync(join(dist, "assets", f)).size > CHUNK_BYTES)
    .filter((f) => gzipped(join(dist, "assets", f)) > CHUNK_BYTES);
  expect(large).toEqual([]);
});
