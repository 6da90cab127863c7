/**
 * How long one move of a drag takes, in Chromium on this machine: median and 95th percentile of solving, exact cutting,
 * reporting, clipping the mesh and drawing profile and skin, at 25, 60 and 120 facets. Prints nothing: one plain object.
 */
import { cpus, loadavg } from "node:os";
import { openPage } from "../browser/support.ts";
import type {} from "./drag/page.tsx";

const PATIENCE_MS = 300_000;

export async function bench() {
  const { page, errors, close } = await openPage("tests/bench/drag/page.html", { width: 1440, height: 720 });
  try {
    await page.waitForSelector(".skin svg", { timeout: PATIENCE_MS });
    const facets = await page.evaluate(() => window.runDragBench());
    return {
      bench: "drag",
      unit: "ms a move",
      browser: page.context().browser()?.version() ?? "",
      cpu: cpus()[0]?.model ?? "",
      cores: cpus().length,
      loadAverage: loadavg()[0],
      facets,
      errors,
    };
  } finally {
    await close();
  }
}
