/**
 * The built app (`npm run build` first; `npm test` does) in Chromium, an empty profile a visit. Nothing may be asked of any other
 * origin; what was is in `foreign`. `BUILT_APP` names another folder than dist/ that holds a build.
 */
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import AxeBuilder from "@axe-core/playwright";
import type { BrowserContext, FileChooser, Locator, Page } from "playwright-core";
import { forgetProfiles, openProfile, type ProfileOptions } from "./profiles.ts";
import { serve, takeFileDialogs } from "./support.ts";

const REPOSITORY = fileURLToPath(new URL("../..", import.meta.url));
export const BUILT = process.env.BUILT_APP ?? `${REPOSITORY}/dist`;

export interface Visit {
  readonly page: Page;
  /** Uncaught exceptions, each with where it was thrown, and `console.error`, in order. */
  readonly errors: readonly string[];
  /** Addresses asked for outside the app's own origin. */
  readonly foreign: readonly string[];
  readonly close: () => Promise<void>;
}

export interface BuiltApp {
  readonly visit: (options?: ProfileOptions) => Promise<Visit>;
  /** The app in another window of the same browser, with the same storage. */
  readonly beside: (first: Page, before?: () => void) => Promise<Visit>;
  /** Ends all visits. What one that failed has left no other begins with. */
  readonly close: (isWell?: boolean) => Promise<void>;
}

/** @param folder one that holds a build  @throws when there is no built app */
export async function serveBuiltApp(folder = BUILT): Promise<BuiltApp> {
  if (!existsSync(`${folder}/index.html`))
    throw new Error(`there is no built app in ${folder}: run \`npm run build\` first`);
  const address = await serve(folder);
  const contexts = new Set<BrowserContext>();
  return {
    visit: (options) => visit(address, contexts, options),
    beside: async (first, before) => {
      const page = await first.context().newPage();
      if (before) await page.addInitScript(before);
      const watched = watch(page, new URL(address).origin);
      await takeFileDialogs(page);
      await page.goto(address);
      await page.waitForSelector(".recipe");
      return { page, ...watched, close: () => page.close() };
    },
    close: async (isWell = true) => {
      for (const context of contexts) await context.close();
      if (!isWell) await forgetProfiles();
    },
  };
}

/** What the 3D library says of a device that can't draw in 3D; the app tells the person itself. */
const EXPECTED_WITHOUT_3D = /Error creating WebGL context/;

/** What a page says went wrong, and what it asked of others, from now on. */
function watch(page: Page, origin: string): Pick<Visit, "errors" | "foreign"> {
  const errors: string[] = [];
  const foreign: string[] = [];
  page.on("pageerror", (error) => errors.push(error.stack ?? error.message));
  page.on("console", (message) => {
    if (message.type() === "error" && !EXPECTED_WITHOUT_3D.test(message.text())) errors.push(message.text());
  });
  page.on("request", (request) => {
    const asked = new URL(request.url());
    if (asked.protocol.startsWith("http") && asked.origin !== origin) foreign.push(request.url());
  });
  return { errors, foreign };
}

async function visit(
  address: string,
  contexts: Set<BrowserContext>,
  options: ProfileOptions = {},
): Promise<Visit> {
  const { origin } = new URL(address);
  const { context, page, leave } = await openProfile(origin, {
    viewport: { width: 1200, height: 720 },
    locale: "en-GB",
    reducedMotion: "reduce",
    // it fetches everything at once beside the page: only what is about it waits for that
    serviceWorkers: "block",
    ...options,
  });
  contexts.add(context);
  const watched = watch(page, origin);
  await takeFileDialogs(page);
  await page.goto(address);
  if (!options.without3d)
    await page.waitForSelector(".piece-canvas[data-state=ready] canvas", { state: "attached" });
  await page.waitForSelector(".recipe");
  const close = async () => {
    contexts.delete(context);
    await leave();
  };
  return { page, ...watched, close };
}

/** The rules of axe-core that look at colours: all that can differ from one theme to another. */
const COLOUR_RULES = ["color-contrast", "link-in-text-block"];

/** A theme comes over a moment's fading, in which no colour is that of either. What never ends is not waited for. */
const colourChangesEnd = async () => {
  const ends = document
    .getAnimations()
    .filter(({ effect }) => Number.isFinite(effect?.getComputedTiming().endTime));
  await Promise.allSettled(ends.map(({ finished }) => finished));
};

const ALL_RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** What axe finds serious or critical, one line each: all of WCAG 2.2 A and AA and good practice, or what its colours alone can break. */
export async function seriousFindings(page: Page, what: "all" | "colours" = "all"): Promise<string[]> {
  await page.evaluate(colourChangesEnd);
  // half a megabyte to read: handed over once to a page that goes on
  const isThere = await page.evaluate("'axe' in window");
  const axe = new AxeBuilder(isThere ? { page, axeSource: ";" } : { page });
  axe.options({ resultTypes: ["violations"] });
  // in the page itself: there are no frames to gather from
  axe.setLegacyMode(true);
  if (what === "all") axe.withTags(ALL_RULES);
  else axe.withRules(COLOUR_RULES);
  const { violations } = await axe.analyze();
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.target.join(" ")} ${node.failureSummary ?? ""}`),
    );
}

/** What is serious on the page as it stands, by day, and what its colours break by lamp. */
export async function seriousInBothThemes(page: Page): Promise<string[]> {
  await page.emulateMedia({ colorScheme: "light" });
  const byDay = await seriousFindings(page);
  await page.emulateMedia({ colorScheme: "dark" });
  return [...byDay, ...(await seriousFindings(page, "colours")).map((finding) => `dark: ${finding}`)];
}

/** Opens a sheet of the menu by the menu's word for it. */
export async function openFromMenu(page: Page, words: string): Promise<void> {
  await page.locator(".head").getByRole("button", { name: "More", exact: true }).click();
  await page.getByRole("menuitem", { name: words }).click();
}

/** Gives the plan on the bench a name, which keeps it on this device. */
export async function renamePlan(page: Page, name: string): Promise<void> {
  const field = nameField(page);
  await field.fill(name);
  await field.press("Enter");
}
export const nameField = (page: Page) => page.getByRole("textbox", { name: "Name of the plan" });

/** Closes the sheet that lies over the bench. */
export async function closeSheet(page: Page): Promise<void> {
  await page.getByRole("dialog").getByRole("button", { name: "Close" }).click();
  await page.getByRole("dialog").waitFor({ state: "detached" });
}

/** The file that a deed hands to the browser. */
export async function fileOf(
  page: Page,
  deed: () => Promise<unknown>,
): Promise<{ name: string; bytes: Buffer }> {
  const [file] = await Promise.all([page.waitForEvent("download"), deed()]);
  return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
}

/** Hands a file to the dialog that a deed opens. */
export async function giveFile(
  page: Page,
  deed: () => Promise<unknown>,
  file: { readonly name: string; readonly mimeType: string; readonly buffer: Buffer },
): Promise<void> {
  const [dialog]: [FileChooser, unknown] = await Promise.all([page.waitForEvent("filechooser"), deed()]);
  await dialog.setFiles(file);
}

/** A plan, or what is to be taken for one, as the file that a dialog takes. */
export const planFile = (plan: object | string, name = "plan.json") => ({
  name,
  mimeType: "application/json",
  buffer: Buffer.from(typeof plan === "string" ? plan : JSON.stringify(plan)),
});

/** What is drawn in a place, once two looks in a row see the same. */
export async function pictureAtRest(place: Locator): Promise<Buffer> {
  for (let seen = await place.screenshot(); ; ) {
    const now = await place.screenshot();
    if (now.equals(seen)) return now;
    seen = now;
  }
}

/** A plan file let fall on the page. */
export const dropFile = (page: Page, name: string, text: string): Promise<void> =>
  page.evaluate(
    ([name, text]) => {
      const data = new DataTransfer();
      data.items.add(new File([text], name, { type: "application/json" }));
      for (const type of ["dragenter", "dragover", "drop"])
        document
          .querySelector(".drop")
          ?.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }));
    },
    [name, text],
  );
