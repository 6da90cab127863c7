/** Where the verdict stands in the way and where it leads: the press on its line, and the question before work is begun at the lap. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { Plan } from "../../src/core/plan/document.ts";
import { serializePlan } from "../../src/core/plan/file.ts";
import { BENCH_PLAN } from "./bench-plan.ts";
import { dropFile } from "./built-app.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

/** Its last tier can't do what it should; the ones before it are many enough that it lies below the phone's edge. */
const STOPPED: Plan = {
  ...BENCH_PLAN,
  name: "Not to be ground",
  tiers: [
    ...BENCH_PLAN.tiers.filter(({ side }) => side === "front"),
    { ...BENCH_PLAN.tiers[0], id: "never", name: "Never", armAngleDeg: 20, depth: { rule: "edge", mm: 60 } },
  ],
};
const SAID = "Can't be ground: Never can't do what it should";
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, without3d: true };

async function open(page: Page, plan: Plan): Promise<void> {
  await dropFile(page, "plan.glintwright.json", serializePlan(plan));
  await page.getByText(`Opened ${plan.name}`).waitFor();
}
const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();
const isInSight = (page: Page) =>
  page.locator('.finding[data-code="rule-unmet"]').evaluate((line) => {
    const { top, bottom } = line.getBoundingClientRect();
    const side = line.closest(".side")?.getBoundingClientRect();
    return side !== undefined && top >= side.top && bottom <= Math.min(side.bottom, innerHeight);
  });

describe("the verdict", () => {
  it("leads to its first cause from any place", async () => {
    const { page, errors, close } = await app.visit(PHONE);
    await open(page, STOPPED);
    expect(await isInSight(page)).toBe(false);
    await press(page, "Look");
    await press(page, SAID);
    await page.locator('.frame[data-place="plan"]').waitFor();
    await expect.poll(() => isInSight(page)).toBe(true);
    expect(await page.locator(".tier[data-picked] .tier-name").inputValue()).toBe("Never");
    expect(errors).toEqual([]);
    await close();
  });

  it("asks at the lap before work on what can't be ground begins, and not any more once it has", async () => {
    const { page, errors, close } = await app.visit(PHONE);
    await open(page, STOPPED);
    await press(page, "Bench");
    await press(page, "At the lap");
    await page.getByRole("heading", { name: SAID }).waitFor();
    expect(await page.locator(".lap-foot").count()).toBe(0);
    await press(page, "Show me where");
    await expect.poll(() => isInSight(page)).toBe(true);

    await press(page, "Bench");
    await press(page, "At the lap");
    await press(page, "Go on all the same");
    await page.locator('.lap-foot [data-step="1"]').waitFor();
    expect(await page.locator(".lap-head small").textContent()).toBe(SAID);
    await page.getByRole("dialog").getByRole("button", { name: "Close" }).click();

    const [{ id }] = STOPPED.tiers;
    await open(page, { ...STOPPED, name: "Begun", work: { tier: id, stage: "rough", facet: `${id}/3` } });
    await press(page, "Bench");
    await press(page, "At the lap");
    await page.locator(".lap-foot [data-step]").waitFor();
    expect(errors).toEqual([]);
    await close();
  });

  it("asks nothing where all can be ground", async () => {
    const { page, close } = await app.visit(PHONE);
    await open(page, BENCH_PLAN);
    await press(page, "Bench");
    await press(page, "At the lap");
    await page.locator('.lap-foot [data-step="1"]').waitFor();
    await close();
  });
});
