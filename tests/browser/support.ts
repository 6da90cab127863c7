/**
 * A real browser for tests: one Chromium with WebGL in software for all that run in one process, and pages of the repository
 * bundled as they are asked for. The browser ends with the process.
 */
import { once } from "node:events";
import { existsSync, mkdirSync, readdirSync, rmSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { basename, join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { type Browser, chromium, type Page } from "playwright-core";
import { build, type InlineConfig } from "vite";
import { folderServer } from "../../src/cli/serve.ts";
import { findChromium } from "../setup.mjs";
import { bareFonts } from "./bare-fonts.ts";
import { PATIENCE_MS } from "./patience.ts";

const REPOSITORY = fileURLToPath(new URL("../..", import.meta.url));

/**
 * Parts of the browser that no test sees. What drops from the address line is two pages of the browser's own in each new window,
 * which cost it as much as the app does; the others would ask other places or wait for them. (Given here the list stands for
 * Playwright's own, which names the others.)
 */
const WITHOUT = [
  "WebUIOmniboxPopup",
  "WebUIOmniboxAimPopup",
  "WebUIOmniboxFullPopup",
  "AimEnabled",
  "AvoidCorsURLLoaderRestartOnRedirect",
  "AvoidUnnecessaryBeforeUnloadCheckSync",
  "DestroyProfileOnBrowserClose",
  "HttpsFirstBalancedModeAutoEnable",
  "HttpsUpgrades",
  "LensOverlay",
  "MediaRouter",
  "NetworkTimeServiceQuerying",
  "OptimizationHints",
  "PaintHolding",
  "PreconnectToSearch",
  "ThirdPartyStoragePartitioning",
];

/**
 * Scripts are compiled at once and plainly, and only what runs very often once more: a page of a test lives for seconds, and on two
 * cores a third of its processor time went into compiling it better beside itself. What is measured, and is no test, has the browser
 * as people have it.
 */
const FOR_SHORT_LIVES = process.env.VITEST
  ? ["--js-flags=--always-sparkplug --no-maglev --invocation-count-for-turbofan=20000"]
  : [];

/**
 * WebGL without a graphics card, and no talk with the outside. The page beside it is painted by the processor itself: through
 * WebGL in software each sheet that opens costs two seconds of it, and each second of rest nearly half of one.
 */
const FLAGS = [
  "--no-sandbox",
  "--disable-gpu-compositing",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
  "--disable-quic",
  ...FOR_SHORT_LIVES,
  `--disable-features=${WITHOUT}`,
];

/** Runs before a page's own scripts: a device that can't draw in 3D. */
export const NO_3D = `{
  const draw = HTMLCanvasElement.prototype.getContext;
  HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
    return kind.startsWith("webgl") ? null : draw.call(this, kind, ...rest);
  };
  globalThis.OffscreenCanvas = undefined;
}`;

export interface OpenPage {
  readonly page: Page;
  /** Errors the page reported, in order: uncaught exceptions and `console.error`. */
  readonly errors: readonly string[];
  readonly close: () => Promise<void>;
}

export interface OpenOptions {
  readonly width?: number;
  readonly height?: number;
  /** A device that can't draw in 3D: the app says so and the rest works, far faster in software. */
  readonly without3d?: boolean;
}

/** A Chromium of one's own, on a machine without typefaces of its own. */
export const openBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: findChromium(Boolean(process.env.VITEST)),
    args: FLAGS,
    env: { ...process.env, ...bareFonts() },
  });

let running: Promise<Browser> | undefined;

/** Ends it, for a program that goes on or ends by itself; under the test runner it ends with the process. */
export const endBrowser = async (): Promise<void> => (await running)?.close();

/** The browser that all share; another one should it have died. */
export async function sharedBrowser(): Promise<Browser> {
  const found = await running?.catch(() => undefined);
  if (found?.isConnected()) return found;
  running = openBrowser();
  return running;
}

const servers = new Map<string, Promise<string>>();

/** Address of the very server that people start, for a folder. It doesn't keep the process alive. */
export function serve(folder: string): Promise<string> {
  const begin = async () => {
    const server = folderServer(folder).listen(0, "localhost");
    await once(server, "listening");
    server.unref();
    return `http://localhost:${(server.address() as AddressInfo).port}/`;
  };
  const address = servers.get(folder) ?? begin();
  servers.set(folder, address);
  return address;
}

/** Bundles for tests, each in a folder named for the run that made it. */
const PAGES = `${REPOSITORY}/.cache/pages`;
/** All that the test runner has started are one run: what one of them has bundled serves the others. */
const RUN = process.env.VITEST ? process.ppid : process.pid;

const isAlive = (pid: number): boolean => {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
};

/** Takes away what runs that are over have left: the test runner gives its processes no time to do it. */
function sweepPages(): void {
  mkdirSync(PAGES, { recursive: true });
  for (const name of readdirSync(PAGES))
    if (!isAlive(Number.parseInt(name, 10))) rmSync(join(PAGES, name), { recursive: true, force: true });
}

const bundles = new Map<string, Promise<string>>();

/** Makes a folder unless it is there. @returns whether it was made */
function claimed(folder: string): boolean {
  try {
    mkdirSync(folder);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  }
}

const ASK_AGAIN_MS = 100;

/** Does something once in a run; whoever asks for it meanwhile waits until it is done, and takes its turn should it have failed. */
async function onceInRun(name: string, deed: () => Promise<unknown>): Promise<void> {
  const [begun, done] = [`${name}.begun`, `${name}.done`];
  while (!existsSync(done))
    if (claimed(begun))
      try {
        await deed();
        mkdirSync(done);
      } catch (error) {
        rmSync(begun, { recursive: true });
        throw error;
      }
    else await setTimeout(ASK_AGAIN_MS);
}

/** Bundles something once and for the tests' own use. @returns the folder that holds it */
function bundled(name: string, config: InlineConfig): Promise<string> {
  const begin = async () => {
    sweepPages();
    const outDir = join(PAGES, `${RUN}-${basename(name, ".html")}`);
    await onceInRun(outDir, () =>
      build({ ...config, logLevel: "error", build: { ...config.build, outDir, minify: false } }),
    );
    return outDir;
  };
  const folder = bundles.get(name) ?? begin();
  bundles.set(name, folder);
  return folder;
}

/** Opens a page of the repository, by its path from the top (`tests/browser/look-page.html`, a `#` with it), in a profile of its own. */
export async function openPage(address: string, options: OpenOptions = {}): Promise<OpenPage> {
  const [path] = address.split("#");
  const folder = await bundled(path, {
    configFile: false,
    root: REPOSITORY,
    base: "./",
    publicDir: false,
    plugins: [react()],
    worker: { format: "es" },
    build: { target: "es2022", rolldownOptions: { input: `${REPOSITORY}/${path}` } },
  });
  return open((await serve(folder)) + address, options);
}

/** The application as it is developed: React looks closely there, and says what it finds as an error. @returns the folder that holds it */
export const developedApp = (): Promise<string> =>
  bundled("app", {
    configFile: `${REPOSITORY}/vite.config.ts`,
    mode: "development",
    define: { "process.env.NODE_ENV": '"development"' },
  });

async function open(address: string, options: OpenOptions): Promise<OpenPage> {
  const browser = await sharedBrowser();
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1280, height: options.height ?? 800 },
    // pages of tests bring their own style, and are asked by text
    bypassCSP: true,
  });
  context.setDefaultTimeout(PATIENCE_MS);
  if (options.without3d) await context.addInitScript(NO_3D);
  const page = await context.newPage();
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(message.text());
  });
  await takeFileDialogs(page);
  await page.goto(address, { waitUntil: "load" });
  return { page, errors, close: () => context.close() };
}

/** The browser hands file dialogs over from now on; told to it before anything is pressed, so that none opens before. */
export async function takeFileDialogs(page: Page): Promise<void> {
  page.on("filechooser", () => undefined);
  // what is asked after it is answered after it
  await page.evaluate(() => undefined);
}
