/** `bench`, `fit` and `sheet` as the command line gives them. */
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Plan } from "../../src/core/plan/document.ts";
import { plan, RIG, tier } from "../core/bench/plans.ts";
import { answer } from "./in-process.ts";

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "bench-cli-"));
});
afterAll(async () => {
  await rm(folder, { recursive: true });
});

async function saved(own: Plan, name = "plan.json"): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, JSON.stringify(own));
  return path;
}

const STAGES = [
  { id: "s1", name: "Coarse", grainUm: 75, calibration: [{ strokes: 20, widthMm: 6 }] },
  { id: "s2", name: "Fine", grainUm: 15 },
];
const own = plan(
  [
    tier({ depth: { rule: "edge", mm: 3 }, asCut: { widthMm: 6.9, heightMm: 10.4 } }),
    tier({ id: "upper", armAngleDeg: 45, startDeg: 15, depth: { rule: "close", to: "belt" } }),
  ],
  { ...RIG, stages: STAGES },
);

describe("command line of the bench", () => {
  it("prints the bench as one JSON object with the agreed fields", async () => {
    const { status, out, err } = await answer("bench", await saved(own));
    expect([status, err]).toEqual([0, ""]);
    const bench = JSON.parse(out);
    expect(Object.keys(bench)).toEqual(["tiers", "order", "findings"]);
    expect(bench.tiers[0]).toMatchObject({ tier: "belt", armAngleDeg: 20, reachable: true, reasons: [] });
    for (const field of ["pivotHeightMm", "armLengthMm", "contactRadiusMm", "dipAtTouchDeg", "speedMs"])
      expect(bench.tiers[0][field]).toEqual(expect.any(Number));
    expect(bench.tiers[0].stages.map((s: { stage: string }) => s.stage)).toEqual(["s1", "s2"]);
    expect(bench.tiers[0].stages[1]).toEqual(
      expect.objectContaining({
        depthMm: expect.any(Number),
        widthMm: expect.any(Number),
        gapMm: expect.any(Number),
        strokes: null,
      }),
    );
    expect(bench.tiers[0].facets[1]).toMatchObject({ facet: "belt/2", wheelStop: 8 });
    expect(bench.tiers[0].facets[1].stages[0].strokes).toBeGreaterThan(0);
  });

  it("prints the price with the agreed fields, and says what is guessed", async () => {
    const offer = { currency: "EUR", hourly: 60, glassPerKg: 40, roundTo: 5 };
    const { status, out, err } = await answer(
      "offer",
      await saved({ ...own, offer }, "offer.json"),
      "--json",
    );
    expect([status, err]).toEqual([0, ""]);
    const priced = JSON.parse(out);
    expect(Object.keys(priced).join(" ")).toBe(
      "minutes labour glass consumables blank overhead sum tax price guesses",
    );
    expect(priced.labour).toBeCloseTo(priced.minutes, 9);
    expect(priced.price).toBe(5 * Math.ceil((priced.minutes + priced.glass) / 5));
    expect(priced.guesses).toEqual([expect.stringMatching(/^The minutes are a guess: .* Fine\.$/)]);
  });

  it("says that a plan asks for nothing, where a price is wanted of it", async () => {
    const { status, out, err } = await answer("offer", await saved(own));
    expect([status, out]).toEqual([2, ""]);
    expect(err).toMatch(/plan\.json: offer: missing/);
  });

  it("prints the fit with a plan that can be read again", async () => {
    const { status, out } = await answer("fit", await saved(own));
    expect(status).toBe(0);
    const fit = JSON.parse(out);
    expect(fit.tiers).toHaveLength(1);
    expect(fit.tiers[0]).toMatchObject({
      tier: "belt",
      armAngleSdDeg: expect.any(Number),
      depthSdMm: expect.any(Number),
    });
    expect(fit.adjusted).toMatchObject({ meets: true, lost: [] });
    expect(fit.adjusted.plan.tiers[0]).toEqual(fit.resolved.tiers[0]);
    const again = await answer("solve", await saved(fit.resolved, "resolved.json"));
    expect(again.status).toBe(0);
  });

  it("writes the sheet and says nothing", async () => {
    const page = join(folder, "sheet.html");
    const said = await answer(
      "sheet",
      await saved(own),
      "--out",
      page,
      "--language",
      "de",
      "--paper",
      "letter",
    );
    expect(said).toMatchObject({ status: 0, out: "", err: "" });
    expect(await readFile(page, "utf8")).toMatch(/^<!doctype html><html lang="de">/);
  });

  it("refuses unknown words and places with one line", async () => {
    const path = await saved(own);
    for (const extra of [
      ["--out", join(folder, "x.html"), "--unit", "ell"],
      ["--out", join(folder, "none", "x.html")],
    ]) {
      const { status, out, err } = await answer("sheet", path, ...extra);
      expect([status, out]).toEqual([2, ""]);
      expect(err.trim().split("\n")).toHaveLength(1);
    }
  });
});
