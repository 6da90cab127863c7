/**
 * Look as a person uses it, in the built app with WebGL in software: one page, as small as a phone's, with a plan that
 * traces quickly. Pictures are compared by the means of their parts, which say what changed and pass over noise.
 */
import { decode } from "fast-png";
import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { serializePlan } from "../../src/core/plan/file.ts";
import { COUNTS } from "../../src/core/plan/limits.ts";
import { EXAMPLES } from "../../src/ui/examples.ts";
import { dropFile, fileOf, openFromMenu, seriousInBothThemes } from "./built-app.ts";
import { handedOver, takeFiles } from "./hand-over.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

/** Parts across and down. */
const PARTS = 10;
/** Steps of eight bits by which some part has to change for the eye to see another picture; noise stays well below. */
const SEEN = 4;

const openLook = async (page: Page) => {
  await page.getByRole("navigation").getByText("Look", { exact: true }).click();
  await page.locator(".look-page").waitFor();
};
const untilFine = (page: Page) => page.getByText(/Getting cleaner: \d+ of|Clean: \d+/).waitFor();
/** Samples of the picture after the last change: enough that the means of its parts stand still. */
const ENOUGH = 16;
const untilSettled = (page: Page) =>
  page.waitForFunction(
    (enough) => Number(document.querySelector<HTMLElement>(".traced")?.dataset.samples) >= enough,
    ENOUGH,
  );
/** Waits for what software takes its time for. */
const soon = <T>(read: () => T) => expect.poll(read);
const phase = (page: Page) => page.locator(".traced").getAttribute("data-phase");

/** What the traced picture shows: the means of its parts, 0 .. 255, three channels each. */
async function parts(page: Page): Promise<number[]> {
  await untilSettled(page);
  return meansOf(await page.locator(".traced-canvas").screenshot());
}
function meansOf(png: Uint8Array): number[] {
  const { width, height, channels, data } = decode(png);
  const sums = new Array<number>(3 * PARTS * PARTS).fill(0);
  const counts = new Array<number>(PARTS * PARTS).fill(0);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const part = Math.floor((y * PARTS) / height) * PARTS + Math.floor((x * PARTS) / width);
      counts[part]++;
      for (let c = 0; c < 3; c++) sums[3 * part + c] += data[channels * (y * width + x) + c];
    }
  return sums.map((sum, k) => sum / counts[Math.floor(k / 3)]);
}
const farthest = (a: readonly number[], b: readonly number[]): number =>
  Math.max(...a.map((v, k) => Math.abs(v - b[k])));
/** How far what shows is from a picture before. Asked until it is so: the one from before stays while a change's programs compile. */
const farFrom = async (page: Page, before: readonly number[]) => farthest(before, await parts(page));

const choose = async (page: Page, label: string, words: string) => {
  await page.locator(".look-part .choice").filter({ hasText: label }).locator(".choice-button").click();
  await page.getByRole("option", { name: words }).click();
  await page.getByRole("option").first().waitFor({ state: "detached" });
};

/** Sixteen pixels of plain RGBE, brighter to the right. */
function smallHdr(): Buffer {
  const [width, height] = [4, 4];
  const pixels = Array.from({ length: width * height }, (_, i) => [128, 128, 128, 127 + (i % width)]);
  const head = `#?RADIANCE\nFORMAT=32-bit_rle_rgbe\n\n-Y ${height} +X ${width}\n`;
  return Buffer.concat([Buffer.from(head), Buffer.from(pixels.flat())]);
}

const app = sharedApp();

it("says in plain words why there is no traced picture on a device without WebGL 2", async () => {
  const { page, close } = await app.visit({ without3d: true });
  await openLook(page);
  const alert = page.locator(".look-unable");
  await alert.getByText("This device can't trace light, so the drawn piece is shown instead.").waitFor();
  await alert.getByText("The browser offers no WebGL 2.").waitFor();
  await close();
});

describe("the look", () => {
  const visit = sharedVisit(
    app,
    { viewport: { width: 360, height: 480 }, reducedMotion: "no-preference" },
    {
      prepare: async (page) => {
        await openFromMenu(page, "Examples");
        await page.getByRole("button", { name: /Open Skylight/ }).click();
        await page.getByRole("dialog").waitFor({ state: "detached" });
        await openLook(page);
      },
      expected: /CONTEXT_LOST/,
    },
  );
  let page: Page;
  beforeEach(() => {
    page = visit.page;
  });

  it("shows a picture, says in words how far it is, and lets go of the drawn one", async () => {
    await page.locator(".traced[data-shows]").waitFor();
    await untilFine(page);
    const drawn = page.locator(".piece-canvas canvas");
    expect(await drawn.evaluate((canvas) => getComputedStyle(canvas).visibility)).toBe("hidden");
  });

  it("is turned by the arrow keys, and slowly by itself while asked to", async () => {
    await page.getByText("Recipe", { exact: true }).click();
    await page.getByRole("spinbutton", { name: "Arm angle" }).first().focus();
    const marks = page.locator(".tier-mark-inner");
    await soon(() => marks.getAttribute("d")).toMatch(/^M-?\d/);
    const at = () => marks.getAttribute("d");
    const [before, picture] = [await at(), await parts(page)];
    await page.locator("[role=application]").focus();
    for (let press = 0; press < 3; press++) await page.keyboard.press("ArrowRight");
    await soon(at).not.toBe(before);
    await soon(() => farFrom(page, picture)).toBeGreaterThan(SEEN);
    await page.getByText("Light and picture", { exact: true }).click();
    const still = await at();
    await page.getByText("Turn slowly").click();
    await soon(at).not.toBe(still);
    await page.getByText("Turn slowly").click();
  });

  it("draws the piece in the light that it is traced in, and on Plan in the workshop's", async () => {
    const drawn = page.locator(".piece-canvas");
    const place = (words: string) => page.getByRole("navigation").getByText(words, { exact: true }).click();
    const tag = await page.addStyleTag({
      content:
        ".traced, .traced * { visibility: hidden !important } .piece-canvas canvas { visibility: visible !important }",
    });
    const picture = async () => meansOf(await drawn.screenshot());
    const [byWindow, byLamp] = [await picture(), async () => farthest(byWindow, await picture())];
    await choose(page, "In the light of", "one lamp in a dark room");
    await soon(byLamp).toBeGreaterThan(SEEN);
    await place("Plan");
    await page.locator(".recipe").waitFor();
    const onPlan = await picture();
    await place("Look");
    await choose(page, "In the light of", "a north window");
    await soon(byLamp).toBeLessThan(SEEN);
    await place("Plan");
    await page.locator(".recipe").waitFor();
    expect(farthest(onPlan, await picture())).toBeLessThan(SEEN);
    await place("Look");
    await tag.evaluate((element) => element.parentNode?.removeChild(element));
  });

  it("writes over the picture only on paper of its own", async () => {
    const grounds = await page
      .locator(".look-status")
      .evaluateAll((all) => all.map((one) => getComputedStyle(one).backgroundColor));
    expect(grounds).toHaveLength(1);
    for (const ground of grounds) expect(ground).not.toMatch(/transparent|, 0\)|\/ 0/);
  });

  it.each([
    ["light", "In the light of", "one lamp in a dark room", "a north window"],
    ["glass", "Glass", "soda-lime", "as planned"],
    ["finish", "Facets", "all ground", "as each tier says"],
  ])("changes with the choice of %s, and back", async (_, label, other, first) => {
    const before = await parts(page);
    await choose(page, label, other);
    await soon(() => farFrom(page, before)).toBeGreaterThan(SEEN);
    await choose(page, label, first);
    await soon(() => farFrom(page, before)).toBeLessThan(SEEN);
  });

  it("changes with what is inside and with the exposure", async () => {
    const before = await parts(page);
    await page.getByText("Show what is inside").click();
    await soon(() => farFrom(page, before)).toBeGreaterThan(SEEN);
    await page.getByText("Show what is inside").click();
    await soon(() => farFrom(page, before)).toBeLessThan(SEEN);
    const mean = async () => (await parts(page)).reduce((sum, v) => sum + v, 0);
    const plain = await mean();
    await page.getByRole("slider", { name: "Exposure" }).fill("-2");
    await soon(mean).toBeLessThan(plain);
    await page.getByRole("slider", { name: "Exposure" }).fill("0");
  });

  it("compares with the uncut ball by a line that keys and hand move", async () => {
    await page.getByText("the uncut ball").click();
    const line = page.getByRole("slider", { name: "Dividing line" });
    await line.focus();
    for (let press = 0; press < 3; press++) await page.keyboard.press("ArrowLeft");
    expect(await line.getAttribute("aria-valuenow")).toBe("44");
    const box = await page.locator(".traced").boundingBox();
    if (!box) throw new Error("the traced picture has no box");
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + 0.44 * box.width, y);
    await page.mouse.down();
    await page.mouse.move(box.x + 0.7 * box.width, y, { steps: 3 });
    await page.mouse.up();
    expect(Number(await line.getAttribute("aria-valuenow"))).toBeCloseTo(70, -1);
  });

  it("compares two plans, and says what is wrong with a file that holds none", async () => {
    const files = page.locator('.look-page input[type="file"][accept^=".json"]');
    await files.setInputFiles({ name: "no.json", mimeType: "application/json", buffer: Buffer.from("{}") });
    await page.getByRole("alert").getByText("no.json can't be compared").waitFor();
    const buffer = Buffer.from(serializePlan({ ...EXAMPLES[0], name: "The other one" }));
    await files.setInputFiles({ name: "other.json", mimeType: "application/json", buffer });
    await page.locator(".divider-names").getByText("The other one").waitFor();
    await page.getByText("side by side").click();
    await page.getByRole("slider", { name: "Dividing line" }).waitFor({ state: "detached" });

    // each side is saved as what it is, under its own name
    await page.getByRole("button", { name: /On the right: Glass/ }).click();
    await page.getByRole("option", { name: "Soda-lime" }).click();
    const saving = page.locator(".look-part").last();
    await saving.getByRole("spinbutton").fill("128");
    await page.keyboard.press("Tab");
    await saving.getByText(/^draft/).click();
    const saved = async (side: string) => {
      await saving.getByText(side, { exact: true }).click();
      return fileOf(page, () => saving.getByRole("button", { name: "Save PNG" }).click());
    };
    const right = await saved("On the right");
    const left = await saved("On the left");
    expect(right.name).toMatch(/the-other-one.*soda-lime.*\.png$/i);
    expect(left.name).not.toMatch(/the-other-one|soda-lime/i);
    expect(Buffer.compare(right.bytes, left.bytes)).not.toBe(0);
    const compared = page
      .locator(".look-part")
      .filter({ has: page.getByRole("heading", { name: "Compare" }) });
    await compared.getByText("nothing", { exact: true }).click();
    await page.locator(".divider-names").waitFor({ state: "detached" });
  });

  it("strips the piece as one walks past: nine pictures with numbers, and one chosen turns the piece there", async () => {
    await page.getByRole("button", { name: "Trace the strip" }).click();
    await page.locator(".walk-step").nth(8).waitFor({ timeout: 120_000 });
    const said = await page.locator(".walk-step").allTextContents();
    for (const words of said)
      expect(words).toMatch(/inside.*\d+ % sends light back.*\d+ % lets one see through/);
    const pictures = await page
      .locator(".walk-step img")
      .evaluateAll((all) => all.map((one) => (one as HTMLImageElement).src));
    expect(new Set(pictures).size).toBe(9);
    // a fine picture stays; from another side it begins anew
    await untilFine(page);
    const samples = async () => Number(await page.locator(".traced").getAttribute("data-samples"));
    const before = await samples();
    await page.getByRole("button", { name: "Turn the piece to 20°" }).click();
    await soon(samples).toBeLessThan(before);
  });

  it("saves a PNG of the size asked for, on nothing, with a caption below, and hands it over", async () => {
    await takeFiles(page);
    const size = page.locator(".look-part").last().getByRole("spinbutton");
    await size.fill("128");
    await size.press("Tab");
    await page.getByText(/^draft/).click();
    await page.getByText("Transparent background").click();
    await page.getByText("Caption below").click();
    const file = await fileOf(page, () => page.getByRole("button", { name: "Save PNG" }).click());
    expect(file.name).toMatch(/\.png$/);
    await page.getByRole("button", { name: "Send it" }).click();
    await expect.poll(() => handedOver(page)).toEqual([[file.name, "image/png", file.bytes.length]]);
    const picture = decode(file.bytes);
    expect(picture.width).toBe(128);
    expect(picture.height).toBeGreaterThan(128);
    const alpha = (x: number, y: number) => picture.data[4 * (y * picture.width + x) + 3];
    expect(alpha(1, 1)).toBe(0);
    // the ribbon hides the page but for what its glow leaves by other ways; the glass around it lets the page through
    expect(alpha(64, 64)).toBeGreaterThan(240);
    const row = Array.from({ length: 70 }, (_, k) => alpha(29 + k, 64));
    expect(Math.min(...row)).toBeLessThan(128);
  });

  it("stops a picture under way when told to", async () => {
    await page.getByText(/^best/).click();
    await page.getByRole("button", { name: "Save PNG" }).click();
    await page.getByText(/Tracing the picture: \d+ %/).waitFor();
    await page.getByText(/^About \d+ (s|min) left\.$/).waitFor();
    await page.getByRole("button", { name: "Cancel" }).click();
    await page.getByRole("button", { name: "Save PNG" }).waitFor();
    expect(await page.getByText("The picture could not be made").count()).toBe(0);
  });

  it("takes a person's own .hdr picture for a light, and says why another file is none", async () => {
    const before = await parts(page);
    const files = page.locator('.look-page input[type="file"][accept=".hdr"]');
    await files.setInputFiles({ name: "note.hdr", mimeType: "", buffer: Buffer.from("no picture") });
    await page.getByRole("alert").getByText("note.hdr can't be used as a light").waitFor();
    await files.setInputFiles({ name: "yard.hdr", mimeType: "", buffer: smallHdr() });
    await page.locator(".choice-button").getByText("yard.hdr").waitFor();
    await page.getByRole("alert").waitFor({ state: "detached" });
    await soon(() => farFrom(page, before)).toBeGreaterThan(SEEN);
  });

  it("traces a plan of many facets with all that may be inside, and goes on", async () => {
    const rings = [40, 52, 64].map((armAngleDeg, k) => ({
      ...EXAMPLES[0].tiers[0],
      id: `ring${k}`,
      name: `Ring ${k}`,
      side: "front" as const,
      armAngleDeg,
      count: 100,
      depth: { rule: "depth" as const, mm: 0.1 },
    }));
    const grains = Array.from({ length: COUNTS.inside }, (_, k) => ({
      kind: "bubble" as const,
      diameterMm: 1,
      atMm: [k - 6, 0, 0] as const,
    }));
    const piece = { diameterMm: 34, glass: "borosilicate" as const, inside: grains };
    await dropFile(page, "many.json", serializePlan({ ...EXAMPLES[0], name: "Many", piece, tiers: rings }));
    await soon(() => page.getByRole("textbox", { name: "Name of the plan" }).inputValue()).toBe("Many");
    await openLook(page);
    await untilFine(page);
    await openFromMenu(page, "Examples");
    await page.getByRole("button", { name: /Open Skylight/ }).click();
    await page.getByRole("dialog").waitFor({ state: "detached" });
    await openLook(page);
    await untilFine(page);
  });

  describe("when the graphics card is lost", () => {
    const drawn = () => page.locator(".piece-canvas");
    const line = () => page.locator(".piece-failed");
    const settled = async () => {
      await line().waitFor({ state: "detached" });
      await soon(() => drawn().getAttribute("data-state")).toBe("ready");
    };
    /** All contexts of the page, as when a driver starts anew. */
    const lose = () =>
      page.evaluate(() => {
        const cards = [...document.querySelectorAll("canvas")].flatMap(
          (canvas) => canvas.getContext("webgl2")?.getExtension("WEBGL_lose_context") ?? [],
        );
        Object.assign(window, {
          giveBack: () => {
            for (const card of cards) card.restoreContext();
          },
        });
        for (const card of cards) card.loseContext();
        return cards.length;
      });
    const giveBack = () => page.evaluate("giveBack()");

    it("says so on Look, and when it is given back the lines go and it traces again", async () => {
      expect(await lose()).toBe(2);
      await soon(() => phase(page)).toBe("lost");
      expect(await page.locator(".look-status").textContent()).toContain("comes back by itself");
      await line().waitFor();
      await giveBack();
      await settled();
      await untilSettled(page);
      expect(await phase(page)).toMatch(/tracing|clean/);
    });

    it("traces again when it was lost while a program compiled", async () => {
      const before = await parts(page);
      await choose(page, "Facets", "all ground");
      for (const pause of [0, 4, 12]) {
        await lose();
        await soon(() => phase(page)).toBe("lost");
        await giveBack();
        await soon(() => phase(page)).not.toBe("lost");
        await page.waitForTimeout(pause);
      }
      await settled();
      await untilSettled(page);
      await soon(() => farFrom(page, before)).toBeGreaterThan(SEEN);
      expect(await page.locator(".look-unable").count()).toBe(0);
      await choose(page, "Facets", "as each tier says");
      await soon(() => farFrom(page, before)).toBeLessThan(SEEN);
    });

    it("says so on Plan, and when it is given back the glass stands there as before", async () => {
      await page.getByRole("navigation").getByText("Plan", { exact: true }).click();
      await drawn().scrollIntoViewIfNeeded();
      const shot = async () => decode(await page.locator(".piece-canvas canvas").screenshot()).data;
      const before = await shot();
      await lose();
      await line().waitFor();
      await giveBack();
      await settled();
      await soon(async () => Math.max(...(await shot()).map((v, k) => Math.abs(v - before[k])))).toBeLessThan(
        SEEN,
      );
      await openLook(page);
      await untilFine(page);
    });
  });

  it("has nothing serious for axe, in either theme", async () => {
    expect(await seriousInBothThemes(page)).toEqual([]);
  });
});
