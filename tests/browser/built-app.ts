/**
 * The built app (`npm run build` first; `npm test` does) in Chromium: one server and one browser a test file, a fresh
 * profile a test. Nothing may be asked of any other origin; what was is in `foreign`. `BUILT_APP` names another folder than
 * dist/ that holds a build.
 */
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import AxeBuilder from "@axe-core/playwright";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { type PreviewServer, preview } from "vite";
import { openBrowser } from "./support.ts";

const REPOSITORY = fileURLToPath(new URL("../..", import.meta.url));
const BUILT = process.env.BUILT_APP ?? `${REPOSITORY}/dist`;

export interface Visit {
  readonly page: Page;
  /** Uncaught exceptions and `console.error`, in order. */
  readonly errors: readonly string[];
  /** Addresses asked for outside the app's own origin. */
  readonly foreign: readonly string[];
  readonly close: () => Promise<void>;
}

export interface BuiltApp {
  readonly visit: (options?: BrowserContextOptions) => Promise<Visit>;
  readonly close: () => Promise<void>;
}

/** @throws when there is no built app */
export async function serveBuiltApp(): Promise<BuiltApp> {
  if (!existsSync(`${BUILT}/index.html`))
    throw new Error(`there is no built app in ${BUILT}: run \`npm run build\` first`);
  const server = await preview({
    configFile: `${REPOSITORY}/vite.config.ts`,
    logLevel: "error",
    build: { outDir: BUILT },
    preview: { port: 0, strictPort: false },
  });
  const browser = await openBrowser();
  return {
    visit: (options) => visit(browser, server, options),
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

async function visit(
  browser: Browser,
  server: PreviewServer,
  options: BrowserContextOptions = {},
): Promise<Visit> {
  const address = server.resolvedUrls?.local[0];
  if (!address) throw new Error("the server of the built app has no address");
  const context = await browser.newContext({
    viewport: { width: 1200, height: 720 },
    locale: "en-GB",
    reducedMotion: "reduce",
    ...options,
  });
  const page = await context.newPage();
  const errors: string[] = [];
  const foreign: string[] = [];
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(message.text());
  });
  page.on("request", (request) => {
    const { protocol, origin } = new URL(request.url());
    if (protocol.startsWith("http") && origin !== new URL(address).origin) foreign.push(request.url());
  });
  await page.goto(address);
  await page.waitForSelector(".stage[data-state=ready] canvas", { state: "attached" });
  await page.waitForSelector(".recipe");
  return { page, errors, foreign, close: () => context.close() };
}

/** What axe finds serious or critical, one line each. */
export async function seriousFindings(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"])
    .analyze();
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.target.join(" ")} ${node.failureSummary ?? ""}`),
    );
}

/** Opens a sheet of the menu by the menu's word for it. */
export async function openFromMenu(page: Page, words: string): Promise<void> {
  await page.locator(".head").getByRole("button", { name: "More", exact: true }).click();
  await page.getByRole("menuitem", { name: words }).click();
}
