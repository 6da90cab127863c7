/** After a slip: the least change of angles is offered under As cut, taken with one press, and undone by its name. */
import { expect, it } from "vitest";
import { adjusted } from "../../src/core/bench/as-cut/adjusted.ts";
import { fitAsCut } from "../../src/core/bench/as-cut/as-cut.ts";
import type { Plan, Tier } from "../../src/core/plan/document.ts";
import { pressPart, SLOW, severeFindings, sharedBench } from "./bench-page.ts";
import { BENCH_PLAN } from "./bench-plan.ts";

const ring = (
  id: string,
  count: number,
  armAngleDeg: number,
  startDeg: number,
  depth: Tier["depth"],
): Tier => ({
  id,
  name: id,
  side: "front",
  count,
  armAngleDeg,
  startDeg,
  depth,
});
const PLAN: Plan = {
  ...BENCH_PLAN,
  name: "Five rings",
  piece: { diameterMm: 34, glass: "borosilicate" },
  rig: { ...BENCH_PLAN.rig, wheelStops: 64 },
  tiers: [
    ring("belt", 16, 8, 0, { rule: "edge", mm: 3.5 }),
    ring("second", 16, 28, 11.25, { rule: "corners", of: "belt" }),
    ring("third", 8, 50, 11.25, { rule: "corners", of: "second" }),
    ring("fourth", 8, 76, 22.5, { rule: "corners", of: "third" }),
  ],
};
const MEASURED = { edgeMm: 2.5, readDeg: 9.3 };

const opened = sharedBench(PLAN);

it("offers the least change with old and new angle, depth and pivot height, and takes it as one step", async () => {
  const { page } = opened;
  await pressPart(page, "As cut");
  const belt = page.locator(".bench-tier").first();
  await belt.getByText("Type in measurements").click();
  const type = async (label: string, value: number) => {
    await belt.getByLabel(label, { exact: true }).first().fill(String(value));
    await page.keyboard.press("Enter");
  };
  await type("Shared edge", MEASURED.edgeMm);
  await type("Angle as read", MEASURED.readDeg);
  const planned = { ...PLAN, tiers: PLAN.tiers.with(0, { ...PLAN.tiers[0], asCut: MEASURED }) };
  const answer = adjusted(planned, fitAsCut(planned).resolved);
  expect(answer.meets).toBe(true);
  expect(answer.changes.length).toBeGreaterThan(0);
  // Neither a depth of 0 nor another rule where a tier can't be reached by depth alone.
  await page.getByText("fourth can't be reached from what was cut.").waitFor(SLOW);
  const offer = page.locator("#bench-follow").locator("..");
  await offer.getByRole("button", { name: "Take these angles" }).waitFor(SLOW);
  for (const { tier, armAngleDeg, depthMm } of answer.changes) {
    const line = ((await offer.locator(`[data-turned="${tier}"]`).textContent()) ?? "").replace(
      /\u00a0/g,
      " ",
    );
    expect(line).toMatch(new RegExp(`${tier}: ${armAngleDeg[0]}(\\.0+)?° becomes ${armAngleDeg[1]}0*°`));
    expect(line).toContain(`depth ${depthMm[0].toFixed(2)} mm becomes ${depthMm[1].toFixed(2)} mm`);
    expect(line).toContain("pivot height");
  }
  await offer.getByRole("img", { name: "As planned" }).waitFor(SLOW);
  await offer.getByRole("img", { name: "After what was cut" }).waitFor(SLOW);
  expect(await severeFindings(page)).toEqual([]);
  await offer.getByRole("button", { name: "Take these angles" }).click();
  await page.getByText("What was cut is locked; the tiers above follow it.").waitFor(SLOW);
  await page.getByText("No angle has to change.").waitFor(SLOW);
  await page.getByRole("button", { name: "Undo: Follow what was cut" }).click();
  await offer.getByRole("button", { name: "Take these angles" }).waitFor(SLOW);
});
