/**
 * How long one move of a drag takes, in Chromium on this machine: median and 95th percentile of solving, clipping to exact
 * outlines and triangles, reporting and drawing, at 25, 60 and 120 facets. The page is built as the app is: minified, React
 * without its checks. Prints nothing: one plain object.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { build, type InlineConfig, preview } from "vite";
import { openBrowser } from "../browser/support.ts";
import type {} from "./drag/page.tsx";

const PAGE = fileURLToPath(new URL("./drag", import.meta.url));
/** For one part of the work; a machine that takes longer is told so instead of being waited for. */
const PATIENCE_MS = 90_000;

export async function bench() {
  const outDir = mkdtempSync(join(tmpdir(), "glintwright-drag-"));
  const built: InlineConfig = {
    configFile: false,
    root: PAGE,
    base: "./",
    logLevel: "error",
    plugins: [react()],
    build: {
      outDir,
      emptyOutDir: true,
      target: "es2022",
      rolldownOptions: { input: join(PAGE, "page.html") },
    },
  };
  await build(built);
  const server = await preview({ ...built, preview: { port: 0 } });
  const browser = await openBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 720 } });
    page.setDefaultTimeout(PATIENCE_MS);
    const errors: string[] = [];
    page.on("pageerror", (error) => errors.push(error.message));
    await page.goto(`${server.resolvedUrls?.local[0]}page.html`);
    await page.waitForSelector(".skin svg");
    const facets: Record<string, unknown> = {};
    for (const count of await page.evaluate(() => window.dragBench.counts))
      facets[count] = await page.evaluate((n) => window.dragBench.run(n), count);
    return {
      bench: "drag",
      unit: "ms a move",
      parts: {
        solve: "every tier's depth by its rule, exactly",
        clip: "outlines of all facets as lines and arcs, edges, corners, skin; and their triangles for the picture",
        report: "pairs, corners, findings, sizes",
        draw: "React and layout of the profile and the unrolled skin",
      },
      browser: browser.version(),
      cpu: cpus()[0]?.model ?? "",
      cores: cpus().length,
      loadAverage: loadavg()[0],
      facets,
      errors,
    };
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  }
}
