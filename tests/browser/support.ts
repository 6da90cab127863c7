/**
 * A real browser for tests: Chromium with WebGL in software, and a Vite server that serves the working tree.
 * Everything started here is ended by `close()`.
 */
import { fileURLToPath } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { createServer, type ViteDevServer } from "vite";
import { bareFonts } from "./bare-fonts.ts";

const REPOSITORY = fileURLToPath(new URL("../..", import.meta.url));

/** WebGL without a graphics card, and no talk with the outside. */
const FLAGS = [
  "--no-sandbox",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
  "--disable-quic",
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
  readonly colorScheme?: "light" | "dark";
  readonly deviceScaleFactor?: number;
  /** A device that can't draw in 3D: the app says so and the rest works, far faster in software. */
  readonly without3d?: boolean;
}

/** Chromium, from `CHROMIUM` or where Debian puts it, on a machine without typefaces of its own. */
export const openBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: FLAGS,
    env: { ...process.env, ...bareFonts() },
  });

/** Opens a page of the repository, by its path from the top (`tests/browser/look-page.html`). */
export const openPage = (path: string, options: OpenOptions = {}): Promise<OpenPage> =>
  open(REPOSITORY, path, options);

/** Opens the application itself; `path` may carry a query or a hash (`?lang=de`, `#look`). */
export const openApp = (path = "", options: OpenOptions = {}): Promise<OpenPage> =>
  open(`${REPOSITORY}/src`, path, options);

async function open(root: string, path: string, options: OpenOptions): Promise<OpenPage> {
  const server = await createServer({
    configFile: `${REPOSITORY}/vite.config.ts`,
    root,
    logLevel: "error",
    server: { port: 0, hmr: false, watch: null, fs: { allow: [REPOSITORY] } },
  });
  await server.listen();
  const browser = await openBrowser();
  const page = await browser.newPage({
    viewport: { width: options.width ?? 1280, height: options.height ?? 800 },
    colorScheme: options.colorScheme ?? "light",
    deviceScaleFactor: options.deviceScaleFactor ?? 1,
  });
  if (options.without3d) await page.addInitScript(NO_3D);
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(message.text());
  });
  await page.goto(addressOf(server, path), { waitUntil: "load" });
  const close = async () => {
    await browser.close();
    await server.close();
  };
  return { page, errors, close };
}

function addressOf(server: ViteDevServer, path: string): string {
  const base = server.resolvedUrls?.local[0];
  if (!base) throw new Error("the page server has no address");
  return base + path;
}
