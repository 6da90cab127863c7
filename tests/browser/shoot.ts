/**
 * `npm run shoot -- FOLDER [--sizes 390x844,1440x900] [--themes light,dark] [--languages en,de] [--only PART]`: a picture of
 * every place, part and sheet of the built app, of what opens on them, and of its states, at every size, by day and by lamp,
 * in both languages, for people to look at. The folder is not to lie in the repository. Prints one JSON object: how many
 * pictures there are, and what the page reported as wrong.
 */
import { mkdirSync } from "node:fs";
import { join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import type { Page } from "playwright-core";
import { benchWords } from "../../src/ui/messages/bench.ts";
import { lapWords } from "../../src/ui/messages/lap.ts";
import { lookWords } from "../../src/ui/messages/look.ts";
import { shellWords } from "../../src/ui/messages/shell.ts";
import type { Language } from "../../src/words/language.ts";
import { RIG_PLAN } from "./bench-plan.ts";
import { dropFile, serveBuiltApp } from "./built-app.ts";
import { guideTo, walkEverywhere } from "./everywhere.ts";
import type { ProfileOptions } from "./profiles.ts";
import { endBrowser } from "./support.ts";

type Theme = "light" | "dark";
type LookRound = (where: string) => Promise<void>;
interface Size {
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

/** Sizes that are looked at in one visit, since a window can be made larger but not turned into a phone. */
const HANDS: readonly { readonly options: ProfileOptions; readonly sizes: readonly string[] }[] = [
  { options: { hasTouch: true, isMobile: true }, sizes: ["390x844", "844x390", "820x1180"] },
  { options: {}, sizes: ["1280x800", "1440x900", "1920x1080"] },
  // what a window of 1440 by 900 shows at 200 per cent
  { options: { deviceScaleFactor: 2 }, sizes: ["720x450"] },
];

/** Until letters, drawings and lists stand where they stay. */
const SETTLED_MS = 250;
/** Noise is gone far enough to judge a screen by. */
const SAMPLES = 8;
const TRACED_MS = 20_000;

const sizeOf = (name: string): Size => {
  const [width, height] = name.split("x").map(Number);
  return { name, width, height };
};

/** What waits for the worker, or on Look for the tracer, is let come; a picture that takes too long is shot as it is. */
async function settle(page: Page): Promise<void> {
  await page.waitForTimeout(SETTLED_MS);
  await page
    .waitForFunction(
      (samples) =>
        document.querySelector(".waiting") === null &&
        [...document.querySelectorAll(".frame[data-place=look] .traced")].every(
          (traced) =>
            Number(traced.getAttribute("data-samples")) >= samples ||
            traced.getAttribute("data-phase") === "failed",
        ),
      SAMPLES,
      { timeout: TRACED_MS },
    )
    .catch(() => process.stderr.write("shot before its picture was clean\n"));
}

/** What the walk doesn't pass: large drawings, open lists, the other column, a comparison, the lap, and plans in trouble. */
async function walkBeside(page: Page, language: Language, look: LookRound): Promise<void> {
  const guide = guideTo(page, language);
  const lookSaid = lookWords[language];
  const [bench, lap] = [benchWords[language], lapWords[language]];

  await guide.openMenu();
  await page.getByRole("menu").waitFor();
  await look("Menu");
  await page.keyboard.press("Escape");

  await dropFile(page, "rig.glintwright.json", JSON.stringify(RIG_PLAN));
  await page
    .locator(".tier")
    .nth(RIG_PLAN.tiers.length - 1)
    .waitFor();
  await page.getByRole("button", { name: guide.shell.close, exact: true }).first().click();
  await page.locator(".tier-name").nth(2).focus();
  await look("Tier picked");
  await page.locator(".tier-head").first().getByRole("button").click();
  await page.getByRole("menu").waitFor();
  await look("Menu of a tier");
  await page.keyboard.press("Escape");
  for (const name of ["profile", "skin"] as const) {
    await showLarge(page, guide.shell.strip[name], guide.shell.enlarge(guide.shell.strip[name]));
    await look(`${name} large`);
  }
  await showLarge(page, guide.shell.strip.piece, guide.shell.shrink);

  await guide.goTo("look");
  await page.locator(".look-parts").waitFor();
  await look("Look with a tier picked");
  await page.getByText(lookSaid.recipe, { exact: true }).first().click();
  await look("Look with the recipe");
  await guide.goTo("bench");
  await page.locator(".bench-parts").waitFor();
  await look("Bench in trouble");
  await page.getByRole("button", { name: bench.toLap, exact: true }).click();
  await page.locator(".lap").waitFor();
  await look("Lap");
  await page.getByRole("button", { name: lap.close, exact: true }).click();
  await guide.goTo("plan");
  await guide.openMenu();
  await page.getByRole("menuitem", { name: guide.shell.menu.fresh }).click();
  // the recipe beside the traced piece, out of sight, still stands as it was
  await page.waitForFunction(
    () => ![...document.querySelectorAll(".tier")].some((tier) => tier.checkVisibility()),
  );
  await look("Uncut");
}

/** On a phone a picture is chosen by its name, elsewhere it is made large from the strip. */
async function showLarge(page: Page, name: string, enlarge: string): Promise<void> {
  const byName = page.locator(".picture-names").getByRole("button", { name, exact: true });
  if (await byName.isVisible()) await byName.click();
  else await page.getByRole("button", { name: enlarge, exact: true }).click();
}

interface Wanted {
  readonly folder: string;
  readonly sizes: readonly string[];
  readonly themes: readonly Theme[];
  readonly languages: readonly Language[];
  /** Only stations whose name holds this. */
  readonly only: string;
}

async function shoot({ folder, sizes, themes, languages, only }: Wanted) {
  const app = await serveBuiltApp();
  const wrong: string[] = [];
  let pictures = 0;
  for (const language of languages)
    for (const hand of HANDS) {
      const own = hand.sizes.filter((name) => sizes.includes(name)).map(sizeOf);
      if (own.length === 0) continue;
      const { page, errors, close } = await app.visit({
        ...hand.options,
        viewport: own[0],
        locale: language === "de" ? "de-DE" : "en-GB",
      });
      const look: LookRound = async (where) => {
        if (!where.includes(only)) return;
        const station = where.toLowerCase().replace(/[^a-z0-9äöü]+/g, "-");
        for (const size of own) {
          await page.setViewportSize(size);
          for (const theme of themes) {
            await page.emulateMedia({ colorScheme: theme });
            await settle(page);
            const path = join(folder, `${station}.${size.name}.${theme}.${language}.png`);
            await page.screenshot({ path, animations: "disabled" });
            pictures++;
          }
        }
        await page.setViewportSize(own[0]);
      };
      await look("Offer of the way round");
      await page.getByRole("button", { name: shellWords[language].guideOffer.no, exact: true }).click();
      await walkEverywhere(page, look, language);
      await walkBeside(page, language, look);
      wrong.push(...errors);
      await close();
    }
  await app.close();
  return { folder, pictures, wrong };
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sizes: { type: "string", default: HANDS.flatMap(({ sizes }) => sizes).join(",") },
    themes: { type: "string", default: "light,dark" },
    languages: { type: "string", default: "en,de" },
    only: { type: "string", default: "" },
  },
});
const REPOSITORY = fileURLToPath(new URL("../..", import.meta.url));
const folder = resolve(positionals[0] ?? REPOSITORY);
if (!relative(REPOSITORY, folder).startsWith("..")) {
  process.stderr.write("npm run shoot -- FOLDER, where FOLDER lies outside the repository\n");
  process.exitCode = 2;
} else {
  mkdirSync(folder, { recursive: true });
  const answer = await shoot({
    folder,
    sizes: values.sizes.split(","),
    themes: values.themes.split(",") as Theme[],
    languages: values.languages.split(",") as Language[],
    only: values.only,
  });
  await endBrowser();
  process.stdout.write(`${JSON.stringify(answer, null, 1)}\n`);
  process.exitCode = answer.wrong.length === 0 ? 0 : 1;
}
