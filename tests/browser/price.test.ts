/** What the piece costs, on the bench: typed, reckoned as the engine does, and printed as a quote of one page. */
import { expect, it } from "vitest";
import { offerOf } from "../../src/core/offer/offer.ts";
import { parsePlan } from "../../src/core/plan/file.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import { dropFile, fileOf } from "./built-app.ts";
import { guideTo } from "./everywhere.ts";
import { handedOver, takeFiles } from "./hand-over.ts";
import { ON_BENCH } from "./hung-wall.ts";
import { pdfPages } from "./pdf-pages.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();
const HOSTILE = "Half in advance. </style><script>alert(1)</script>";

it("goes from an hour's price to a quote on one page", async () => {
  const { page, errors, foreign, close } = await app.visit({ locale: "en-GB" });
  const guide = guideTo(page);
  await takeFiles(page);
  // clear and with few facets: quickly traced
  await dropFile(page, "plan.json", JSON.stringify(ON_BENCH));
  await page.getByText(`Opened ${ON_BENCH.name}`).waitFor();
  await guide.goTo("bench");
  await page.locator(".bench-parts").getByRole("button", { name: "Price", exact: true }).click();
  const type = async (label: string, text: string) => {
    await page.getByLabel(label, { exact: true }).fill(text);
    await page.getByLabel(label, { exact: true }).press("Enter");
  };
  await type("An hour of yours", "45");
  await type("Tax", "20");
  await type("A kilogram of glass", "38");
  await page.getByLabel("Your terms").fill(HOSTILE);
  await page.getByLabel("Your terms").press("Tab");
  const shown = page.locator(".price-table [data-row=price] td").first();
  await shown.waitFor();

  // the same plan as a file, reckoned apart from the page
  await guide.openMenu();
  const file = await fileOf(page, () => page.getByRole("menuitem", { name: guide.shell.menu.save }).click());
  const { plan } = parsePlan(file.bytes.toString("utf8"));
  expect(plan.offer).toEqual({ currency: "GBP", hourly: 45, taxShare: 0.2, glassPerKg: 38, terms: HOSTILE });
  const price = offerOf(solvePlan(plan))?.price ?? Number.NaN;
  const money = new Intl.NumberFormat("en-GB", { style: "currency", currency: "GBP" }).format(price);
  expect(await shown.textContent()).toBe(money);

  const quote = page.getByRole("document", { name: "The sheet as it will be printed" });
  await quote.getByText("Half in advance. </style>").waitFor();

  // its picture is traced from the plan, and is none of a piece in another glass
  const picture = quote.getByRole("img", { name: "as planned" });
  const trace = page.getByRole("button", { name: "Trace its picture" });
  await trace.click();
  await picture.waitFor();
  const tones = await picture.evaluate(async (img) => {
    if (!(img instanceof HTMLImageElement)) throw new Error("no picture");
    const canvas = new OffscreenCanvas(img.naturalWidth, img.naturalHeight);
    const context = canvas.getContext("2d");
    context?.drawImage(img, 0, 0);
    const { data, width } = context?.getImageData(0, 0, canvas.width, canvas.height) ?? {
      data: [],
      width: 0,
    };
    const middle: number[] = [];
    for (let i = 0; i < data.length; i += 4) {
      const [x, y] = [(i / 4) % width, Math.floor(i / 4 / width)];
      if (Math.hypot(x - width / 2, y - width / 2) < width / 4) middle.push(data[i + 1]);
    }
    const mean = middle.reduce((sum, v) => sum + v, 0) / middle.length;
    return { width, spread: Math.sqrt(middle.reduce((sum, v) => sum + (v - mean) ** 2, 0) / middle.length) };
  });
  expect(tones.width).toBe(330);
  // glass with facets, not an even ground
  expect(tones.spread).toBeGreaterThan(10);
  const pages = await pdfPages(await page.pdf({ preferCSSPageSize: true }));
  expect(pages).toHaveLength(1);
  expect(pages[0].widthMm).toBeCloseTo(210, 0);
  for (const said of [money, "38 mm (1.50 in)", "<script>"]) expect(pages[0].text).toContain(said);
  const kept = await fileOf(page, () => page.getByRole("button", { name: "Save as a file" }).click());
  await page.getByRole("button", { name: "Send it" }).click();
  await expect.poll(() => handedOver(page)).toEqual([[kept.name, "text/html", kept.bytes.length]]);

  await guide.openMenu();
  await page.getByRole("menuitem", { name: guide.shell.menu.piece }).click();
  await page.getByRole("dialog").getByText("Soda-lime", { exact: true }).click();
  await guide.closeSheet();
  await quote.getByText("Glass: Soda-lime").waitFor();
  expect(await picture.count()).toBe(0);

  // another plan has what was asked for last at hand
  await guide.openMenu();
  await page.getByRole("menuitem", { name: guide.shell.menu.fresh }).click();
  await guide.goTo("bench");
  await page.getByRole("button", { name: "As last time: £45.00 an hour" }).click();
  expect(await page.getByLabel("Tax", { exact: true }).inputValue()).toBe("20");

  // beside it the first one, by what is asked for here: the difference is that of the figures as they stand
  await page.getByRole("button", { name: "None The other plan" }).click();
  await page.getByRole("option", { name: plan.name }).click();
  await page.getByText(`${plan.name} takes`).waitFor();
  const figures = async (row: string) =>
    (await page.locator(`.price-beside [data-row=${row}] td`).allTextContents()).map((text) =>
      Number(text.replace(/[^\d.]/g, "")),
    );
  for (const row of ["price", "grams", "facets", "skin"]) {
    const [mine, theirs, more] = await figures(row);
    expect(more, row).toBeCloseTo(Math.abs(theirs - mine), 6);
  }
  expect(errors).toEqual([]);
  expect(foreign).toEqual([]);
  await close();
});
