/** What stands on and beside the drawings: marks of what meets and misses, mends, offers that work, the diary. */
import { describe, expect, it } from "vitest";
import type { Plan, Tier } from "../../src/core/plan/document.ts";
import { middleOf, onDrawings, PLAN, page, planNow, ring, steps } from "./drawings.ts";

onDrawings();

describe("marks on the skin", () => {
  const waist: Tier = { ...ring("waist", 2, 0, { rule: "edge", mm: 5 }), count: 12 };
  const shoulder: Tier = { ...ring("shoulder", 24, 15, { rule: "corners", of: "waist" }), count: 12 };
  const MISSING: Plan = {
    ...PLAN,
    piece: { diameterMm: 38, glass: "borosilicate" },
    tiers: [waist, shoulder],
  };
  const saidOf = () => page.locator(".mark-said").textContent();

  it("give a corner that nearly comes to a point a tail, and say by how much when pressed", async () => {
    await page.evaluate((plan) => window.bench.studio.getState().open({ plan }), MISSING);
    expect(await page.locator(".skin-tail").count()).toBeGreaterThanOrEqual(12);
    await page.mouse.click(...(await middleOf('.skin [data-mark^="miss"] >> nth=3')));
    expect(await saidOf()).toMatch(/nearly come to a point: they miss it by 0\.\d+\smm$/);
  });

  it("say of a gap how wide it is, and choose a facet of it in all pictures", async () => {
    await page.mouse.click(...(await middleOf('.skin [data-mark^="gap high"]')));
    expect(await saidOf()).toMatch(/^high \d and high \d stand \d+\.\d+\smm apart$/);
    expect(await page.locator('.profile [data-tier="high"][data-selected]').count()).toBe(1);
  });

  it("are gone through by keys", async () => {
    await page.locator('.skin [data-tier="low"]').focus();
    const said = new Set<string>();
    for (let i = 0; i < 3; i++) {
      await page.keyboard.press("Enter");
      said.add((await saidOf()) ?? "");
    }
    expect(said.size).toBe(3);
    for (const words of said) expect(words).toMatch(/apart|touch|point/);
  });

  it("show a facet that is ground past the centre", async () => {
    const deep: Tier = { ...ring("deep", 0, 0, { rule: "depth", mm: 18 }), count: 1 };
    await page.evaluate((plan) => window.bench.studio.getState().open({ plan }), { ...PLAN, tiers: [deep] });
    // The cap of h = -3 mm in a radius of 15 mm is (1 + 3/15) / 2 of the round surface.
    const share = await page.evaluate(() => {
      const facet = document.querySelector<SVGPathElement>('.skin [data-facet="deep/1"]')!;
      const sheet = document.querySelector<SVGRectElement>(".skin-sheet")!.getBBox();
      const points = [...(facet.getAttribute("d") ?? "").matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map((m) => [
        +m[1],
        +m[2],
      ]);
      const twice = points.reduce((sum, [x, y], i) => {
        const [u, v] = points[(i + 1) % points.length];
        return sum + x * v - u * y;
      }, 0);
      return Math.abs(twice / 2) / (sheet.width * sheet.height);
    });
    expect(share).toBeCloseTo(0.6, 2);
  });

  it("turn with the strip by keys, and come back with Home", async () => {
    const mark = async () => (await page.locator(".skin-ink line").first().boundingBox())?.x ?? 0;
    await page.locator(".skin-turner").focus();
    await page.keyboard.press("Home");
    const was = await mark();
    await page.keyboard.press("ArrowRight");
    expect(await mark()).not.toBeCloseTo(was, 0);
    await page.keyboard.press("Home");
    expect(await mark()).toBeCloseTo(was, 1);
  });
});

describe("mends", () => {
  it("clear their finding with one press, as one step", async () => {
    const plan: Plan = { ...PLAN, tiers: [{ ...PLAN.tiers[0], count: 14 }] };
    await page.evaluate((p) => window.bench.studio.getState().open({ plan: p }), plan);
    const button = page.locator('[data-code="uneven"] button').first();
    await button.waitFor({ timeout: 60_000 });
    // what it does, what comes of it, and what it costs
    expect((await button.textContent())?.replace(/\s+/g, " ")).toBe(
      "Give low 12 facets: the wheel divides it evenly low 0.12 mm deeper · 0.3 % of the glass goes · narrowest facet 7.6 mm",
    );
    await button.click();
    const codes = await page.evaluate(() =>
      window.bench.report(window.bench.studio.getState().plan).findings.map((f) => f.code),
    );
    expect(codes).not.toContain("uneven");
    expect(await steps()).toBe(1);
  });
});

describe("counts and angles that work", () => {
  it("are listed with pictures, and choosing one applies it", async () => {
    await page.evaluate(() => window.bench.studio.getState().select({ tierId: "high" }));
    await page.getByRole("button", { name: "Counts and angles that work" }).click();
    const offer = page.locator(".offer").first();
    await offer.waitFor({ timeout: 60_000 });
    expect(await offer.locator(".offer-own").getAttribute("d")).toMatch(/^M/);
    const before = JSON.stringify(await planNow());
    await offer.click();
    expect(JSON.stringify(await planNow())).not.toBe(before);
    const stops = await page.evaluate(() => {
      const { findings } = window.bench.report(window.bench.studio.getState().plan);
      return findings.filter((f) => f.severity === "stop").length;
    });
    expect(stops).toBe(0);
  });
});

describe("the diary", () => {
  it("shows the piece after each facet, with the width that the facet has then", async () => {
    await page.getByRole("button", { name: "Diary of the work" }).click();
    await page.getByRole("slider", { name: "Moments of the work" }).focus();
    for (let i = 0; i < 13; i++) await page.keyboard.press("ArrowLeft");
    // Three facets of the first tier are cut.
    expect(await page.locator(".diary-said").textContent()).toMatch(/^low, facet 3: .* wide now/);
    expect(
      await page
        .locator(".skin [data-facet]")
        .evaluateAll((all) => new Set(all.map((e) => e.getAttribute("data-facet"))).size),
    ).toBe(3);
    await page.keyboard.press("Home");
    expect(await page.locator(".skin [data-facet]").count()).toBe(0);
    await page.locator(".diary-moment").nth(1).click();
    expect(await page.locator(".diary-said").textContent()).toMatch(/^low, facet 2: .* wide now/);
    await page.getByRole("button", { name: "Leave the diary" }).click();
    expect(await page.locator(".skin [data-facet]").count()).toBeGreaterThanOrEqual(16);
  });
});
