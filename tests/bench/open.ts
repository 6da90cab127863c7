/**
 * How long the built app takes to open, in Chromium on this machine (WebGL in software): from the address to the recipe on
 * screen, to the cut piece drawn beside it, and to the piece rendered as glass. A fresh profile each time, one visit before them that is not counted.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { build, preview } from "vite";
import { openBrowser } from "../browser/support.ts";

const CONFIG = fileURLToPath(new URL("../../vite.config.ts", import.meta.url));
const VISITS = 7;
const LIMIT_MS = 2000;

const PARTS = {
  recipe: ".tier-sentence",
  piece: ".piece-drawing .drawn-facet, .piece-canvas[data-state=ready] canvas",
  glass: ".piece-canvas[data-state=ready] canvas",
} as const;
type Part = keyof typeof PARTS;
type Times = Record<Part, number>;

declare global {
  interface Window {
    opened: Partial<Record<Part, number>>;
  }
}

/** Runs before the page's own scripts: notes when each part is there and the frame that shows it has gone out. */
function watchOpening(parts: Record<string, string>): void {
  window.opened = {};
  new MutationObserver(() => {
    for (const name of Object.keys(parts) as Part[]) {
      if (window.opened[name] !== undefined || !document.querySelector(parts[name])) continue;
      window.opened[name] = Number.NaN;
      requestAnimationFrame(() =>
        setTimeout(() => {
          window.opened[name] = performance.now();
        }),
      );
    }
  }).observe(document, { subtree: true, childList: true, attributes: true });
}

async function openOnce(browser: Browser, address: string): Promise<Times> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await context.addInitScript(watchOpening, PARTS);
  const page = await context.newPage();
  await page.goto(address);
  await page.waitForFunction(
    (count) => Object.values(window.opened).filter(Boolean).length === count,
    Object.keys(PARTS).length,
  );
  const times = await page.evaluate(() => window.opened);
  await context.close();
  return times as Times;
}

const summary = (times: readonly number[]) => {
  const sorted = [...times].sort((a, b) => a - b);
  const median = sorted[Math.floor(sorted.length / 2)];
  return {
    medianMs: Math.round(median),
    leastMs: Math.round(sorted[0]),
    ofLimit: Number((median / LIMIT_MS).toPrecision(2)),
  };
};

export async function bench(): Promise<object> {
  const outDir = mkdtempSync(join(tmpdir(), "glintwright-open-"));
  const setUp = { configFile: CONFIG, logLevel: "error" as const, build: { outDir } };
  await build(setUp);
  const server = await preview({ ...setUp, preview: { port: 0, strictPort: false } });
  const browser = await openBrowser();
  try {
    const address = server.resolvedUrls?.local[0] ?? "";
    await openOnce(browser, address);
    const visits: Times[] = [];
    for (let i = 0; i < VISITS; i++) visits.push(await openOnce(browser, address));
    return {
      bench: "open",
      browser: browser.version(),
      cpu: cpus()[0]?.model ?? "unknown",
      cores: cpus().length,
      loadAverage: loadavg()[0],
      visits: VISITS,
      limitMs: LIMIT_MS,
      ...Object.fromEntries(
        (Object.keys(PARTS) as Part[]).map((part) => [part, summary(visits.map((visit) => visit[part]))]),
      ),
    };
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  }
}
