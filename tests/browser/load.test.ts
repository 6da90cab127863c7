/** Opening the app: a finished piece, nothing asked of the outside, no error, in both languages. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { BUILT, giveFile, planFile } from "./built-app.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

const app = sharedApp();

/** Frames in which a turn that goes on would draw hundreds of parts. */
const FRAMES = 120;

/** Mean colours of a picture's middle and of the ground beside the piece. */
const meansIn = async (png: string): Promise<number[][]> => {
  const picture = await createImageBitmap(await (await fetch(`data:image/png;base64,${png}`)).blob());
  const canvas = new OffscreenCanvas(picture.width, picture.height);
  const pen = canvas.getContext("2d")!;
  pen.drawImage(picture, 0, 0);
  const at = (x: number, y: number) => {
    const pixels = pen.getImageData(x * picture.width - 20, y * picture.height - 20, 40, 40).data;
    const sums = [0, 0, 0];
    for (let i = 0; i < pixels.length; i += 4) for (let k = 0; k < 3; k++) sums[k] += pixels[i + k];
    return sums.map((sum) => (4 * sum) / pixels.length);
  };
  return [at(0.5, 0.75), at(0.06, 0.9)];
};

describe("the first visit", () => {
  describe("all at once", () => {
    const visit = sharedVisit(app, {});

    it("shows a finished example with its recipe, without an error and without asking another origin", async () => {
      const { page, errors, foreign } = visit;
      const sentences = await page.locator(".tier-sentence").count();
      expect(sentences).toBeGreaterThanOrEqual(5);
      expect(await page.getByRole("textbox", { name: "Name of the plan" }).inputValue()).not.toBe("");
      const size = await page.locator(".piece-canvas canvas").boundingBox();
      expect(size?.width).toBeGreaterThan(500);
      expect(foreign).toEqual([]);
      expect(errors).toEqual([]);
    });

    it("draws glass, not an empty canvas: the middle differs from the ground beside it", async () => {
      const { page } = visit;
      const apart = async () => {
        const shot = (await page.locator(".piece-canvas").screenshot()).toString("base64");
        const [middle, corner] = await page.evaluate(meansIn, shot);
        return Math.hypot(...middle.map((value, k) => value - corner[k]));
      };
      await expect.poll(apart).toBeGreaterThan(6);
    });

    it("tells the piece in words to someone who does not see it", async () => {
      const { page } = visit;
      const piece = page.getByRole("application", { name: "The piece" });
      const id = await piece.getAttribute("aria-describedby");
      const words = await page.locator(`[id="${id}"]`).textContent();
      expect(words).toMatch(/marble of Borosilicate/);
      expect(words).toMatch(/Tier 1: 12 facets on the front/);
    });
  });

  it("turns the piece once to show it, and ends that when the piece is out of sight", async () => {
    const before = () => {
      const counted = window as unknown as { pictures: number; atReady?: number };
      counted.pictures = 0;
      new MutationObserver(() => {
        if (document.querySelector(".piece-canvas[data-state=ready]")) counted.atReady ??= counted.pictures;
      }).observe(document, { subtree: true, childList: true, attributes: true });
      const draw = WebGL2RenderingContext.prototype.drawElements;
      WebGL2RenderingContext.prototype.drawElements = function (...given) {
        counted.pictures++;
        draw.apply(this, given);
      };
    };
    const { page, close } = await app.visit({ reducedMotion: "no-preference", before });
    const drawn = () => page.evaluate<number>("pictures");
    const atReady = await page.evaluate<number>("atReady");
    await expect.poll(drawn).toBeGreaterThan(atReady);
    await page.getByRole("button", { name: "Bench", exact: true }).click();
    await page.locator(".bench-parts").waitFor();
    // what was asked for before it went has been drawn
    await page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
    );
    const whenGone = await drawn();
    await page.evaluate(async (frames) => {
      for (let k = 0; k < frames; k++) await new Promise((done) => requestAnimationFrame(done));
    }, FRAMES);
    // frames that were asked for before may still come; a turn would draw hundreds of parts
    expect((await drawn()) - whenGone).toBeLessThanOrEqual(30);
    await close();
  });

  it("speaks English, and says why, where the German words can't be fetched", async () => {
    const { page, close } = await app.visit({ locale: "de-DE", without3d: true });
    // the chunk with a sentence of the shell that is said nowhere else
    const scripts = readdirSync(`${BUILT}/assets`).filter((file) => file.endsWith(".js"));
    const german = scripts.filter((file) =>
      readFileSync(`${BUILT}/assets/${file}`, "utf8").includes("Zum Rezept springen"),
    );
    expect(german).toHaveLength(1);
    await page.route(`**/assets/${german[0]}`, (route) => route.abort());
    await page.reload();
    await page.getByRole("textbox", { name: "Name of the plan" }).waitFor();
    await page.getByRole("alert").getByText("The German words could not be fetched").waitFor();
    expect(await page.evaluate(() => document.documentElement.lang)).toBe("en");
    await close();
  });

  it("speaks German to an Austrian browser: comma, keys, faults of a file, and all of it fits a phone", async () => {
    const { page, close } = await app.visit({ locale: "de-AT", without3d: true });
    const name = page.getByRole("textbox", { name: "Name des Plans" });
    expect(await page.locator(".piece-line").first().textContent()).toMatch(/\d,\d\s?mm/);
    expect(await page.evaluate(() => document.documentElement.lang)).toBe("de");
    await name.fill("Für die Werkstatt");
    await name.press("Enter");
    await page.getByText("Auf diesem Gerät aufgehoben", { exact: true }).first().waitFor();

    await page.setViewportSize({ width: 390, height: 844 });
    // nothing in the head lies on anything else, or runs out of the page
    const head = await page.locator(".head-name, .kept, .head .press").evaluateAll((all) =>
      all
        .filter((element) => element.checkVisibility())
        .map((element) => ({
          words: element.textContent,
          isCut: element.scrollWidth > element.clientWidth,
          from: element.getBoundingClientRect().left,
          to: element.getBoundingClientRect().right,
        })),
    );
    expect(head.length).toBeGreaterThanOrEqual(4);
    head.forEach(({ words, isCut, from, to }, k) => {
      expect(isCut, `${words} is cut`).toBe(false);
      expect(from, `${words} lies on what is before it`).toBeGreaterThanOrEqual(k === 0 ? 0 : head[k - 1].to);
      expect(to).toBeLessThanOrEqual(390);
    });

    await page.locator(".head").getByRole("button", { name: "Mehr", exact: true }).click();
    expect(await page.getByRole("menuitem", { name: "Plan als Datei sichern" }).textContent()).toContain(
      "Strg+S",
    );
    const plan = {
      format: "glintwright-plan",
      version: 1,
      name: "",
      piece: { diameterMm: 1, glass: "soda-lime" },
    };
    await giveFile(
      page,
      () => page.getByRole("menuitem", { name: "Plandatei öffnen" }).click(),
      planFile({ ...plan, rig: { wheelStops: 96 }, tiers: [] }, "klein.json"),
    );
    expect(await page.getByRole("alert").filter({ hasText: "klein.json" }).textContent()).toContain(
      "piece.diameterMm: 1 liegt außerhalb, erlaubt ist 3 bis 300",
    );
    await close();
  });
});
