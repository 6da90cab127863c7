/**
 * Profiles of the one browser. One that a visit has left is emptied, its page with it, and serves the next visit that begins alike:
 * what was fetched, parsed and compiled there stays, and neither a window nor a process has to begin, which together are three
 * quarters of the processor time of a visit.
 */
import type { BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { PATIENCE_MS } from "./patience.ts";
import { NO_3D, sharedBrowser } from "./support.ts";

/** How a visit begins, besides what a browser's context takes. */
export interface ProfileOptions extends BrowserContextOptions {
  /** Runs in the page before anything of the app does, with every load. */
  readonly before?: () => void;
  /** A device that can't draw in 3D: the app says so and the rest works, far faster in software. */
  readonly without3d?: boolean;
}

export interface Profile {
  readonly context: BrowserContext;
  /** Its one page, on which nothing was opened yet. */
  readonly page: Page;
  /** Leaves its page empty, and closes all others. */
  readonly leave: () => Promise<void>;
}

/** Profiles that nobody visits with, each with how it was begun and its one page, empty; the one left last at the end. */
const left: { readonly key: string; readonly context: BrowserContext; readonly page: Page }[] = [];
/** More of them cost memory and are seldom asked for. */
const LEFT_AT_MOST = 4;
/** What a visit listens to on its page. */
const HEARD = ["console", "dialog", "download", "filechooser", "pageerror", "request"] as const;
/** What an empty page shows, of the site itself: so it stays in its process, and what its tab alone keeps can be cleared. */
const EMPTY = "/icon.svg";

function forget(context: BrowserContext): void {
  const at = left.findIndex((one) => one.context === context);
  if (at !== -1) left.splice(at, 1);
}

/** Ends those that nobody visits with, so that the next visit is in one that is new. */
export async function forgetProfiles(): Promise<void> {
  for (const { context } of left.splice(0)) await context.close();
}

/** Takes from a page what a visit has set on it, and all that it shows. */
async function leaveEmpty(page: Page, origin: string): Promise<void> {
  await page.mouse.move(0, 0);
  for (const heard of HEARD) page.removeAllListeners(heard);
  await page.unrouteAll();
  await page.goto(origin + EMPTY);
  await page.evaluate(() => sessionStorage.clear());
}

/** One that was left, with nothing kept in it, if there is one whose clock is still the machine's. */
async function emptied(key: string, origin: string): Promise<[BrowserContext, Page] | null> {
  const found = left.findLast((one) => one.key === key);
  if (!found) return null;
  const { context, page } = found;
  forget(context);
  if (await page.evaluate("'__pwClock' in globalThis")) {
    await context.close();
    return null;
  }
  const devtools = await context.newCDPSession(page);
  await devtools.send("Storage.clearDataForOrigin", { origin, storageTypes: "all" });
  await devtools.send("Page.resetNavigationHistory");
  await devtools.detach();
  return [context, page];
}

/** @param origin of the one site that is visited with it */
export async function openProfile(
  origin: string,
  { before, without3d = false, viewport, ...options }: ProfileOptions,
): Promise<Profile> {
  // a page's own size can be changed but where it says that it is a phone
  const asBegun = options.isMobile ? { ...options, viewport } : options;
  const key = JSON.stringify([origin, without3d, asBegun]);
  const begin = async (): Promise<[BrowserContext, Page]> => {
    const context = await (await sharedBrowser()).newContext(asBegun);
    context.once("close", () => forget(context));
    if (without3d) await context.addInitScript(NO_3D);
    return [context, await context.newPage()];
  };
  const [context, page] = (await emptied(key, origin)) ?? (await begin());
  context.setDefaultTimeout(PATIENCE_MS);
  const script = before && (await context.addInitScript(before));
  if (viewport && !options.isMobile) await page.setViewportSize(viewport);
  await page.emulateMedia({ colorScheme: options.colorScheme ?? "light" });
  let isDead = false;
  const die = () => {
    isDead = true;
  };
  page.on("crash", die);
  const leave = async () => {
    page.off("crash", die);
    // what a service worker keeps, and being without a network, is not undone
    if (options.serviceWorkers === "allow" || isDead || page.isClosed()) return context.close();
    await script?.dispose();
    for (const one of context.pages()) if (one !== page) await one.close();
    try {
      await leaveEmpty(page, origin);
    } catch (error) {
      // seen where another window of the same process had just been closed: the next visit begins in a profile that is new
      console.warn(`a page could not be emptied and is closed: ${error}`);
      return context.close();
    }
    left.push({ key, context, page });
    if (left.length > LEFT_AT_MOST) await left[0].context.close();
  };
  return { context, page, leave };
}
