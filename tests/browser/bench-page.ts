/** The application opened on a bench plan, the way a person opens it, and what its tests do to it. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import type { Plan } from "../../src/core/plan/document.ts";
import { type BuiltApp, giveFile, planFile, type Visit } from "./built-app.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

export const SLOW = { timeout: 120_000 };

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Opens a plan the way a person does: from a file, through the menu. */
async function openPlanFile(page: Page, plan: Plan): Promise<void> {
  const open = async () => {
    await page.getByRole("button", { name: "More", exact: true }).first().click(SLOW);
    await page.getByRole("menuitem", { name: /Open a plan file/ }).click(SLOW);
  };
  await giveFile(page, open, planFile(plan));
  await page.getByText(`Opened ${plan.name}`).waitFor(SLOW);
}

export const pressPart = (page: Page, name: string) =>
  page.getByRole("button", { name, exact: true }).click(SLOW);

async function goToBench(page: Page, plan: Plan): Promise<void> {
  await openPlanFile(page, plan);
  // The offer of a way round, made to newcomers, lies over the page.
  const notNow = page.getByRole("button", { name: "Not now" });
  if (await notNow.isVisible()) await notNow.click();
  await pressPart(page, "Bench");
  await page.locator(".bench-tier").first().waitFor(SLOW);
}

/** One page of it for the tests that share it, without an error after any; one that is tried again begins with a page as it was opened. */
export const sharedBench = (plan: Plan, app: Pick<BuiltApp, "visit"> = sharedApp()): Omit<Visit, "close"> =>
  sharedVisit(
    app,
    { viewport: { width: 1280, height: 900 }, without3d: true },
    { prepare: (page) => goToBench(page, plan) },
  );

/** Severe findings of axe on what is shown. */
export async function severeFindings(page: Page): Promise<readonly string[]> {
  if (!(await page.evaluate("'axe' in window"))) await page.evaluate(axe);
  return page.evaluate(`axe.run(document, { resultTypes: ["violations"] }).then(({ violations }) =>
    violations.filter(({ impact }) => impact === "serious" || impact === "critical")
      .map(({ id, nodes }) => id + ": " + nodes.map((n) => n.html.slice(0, 120)).join(" | ")))`);
}
