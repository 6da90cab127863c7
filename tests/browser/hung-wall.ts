/** A wall that was filled on an earlier visit, as the browser keeps it: 150 tries of seed 1 for a clear ball (`tests/fixtures/ideas/`). */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import type { Plan } from "../../src/core/plan/document.ts";
import { packPlans, unpackPlans } from "../../src/ui/ideas/wall-shelf.ts";
import { ideasWords } from "../../src/ui/messages/ideas.ts";
import { dropFile } from "./built-app.ts";
import { guideTo } from "./everywhere.ts";

const WALL: unknown = JSON.parse(
  readFileSync(new URL("../fixtures/ideas/wall.json", import.meta.url), "utf8"),
);
export const HUNG: readonly Plan[] = unpackPlans(WALL).filter((plan) => plan !== null);

/** What lies on the bench then: the same clear ball, cut once; where nothing is in the glass patterns are judged quickly. */
export const ON_BENCH: Plan = {
  ...HUNG[0],
  name: "Two rings",
  tiers: [
    {
      id: "a",
      name: "Low",
      side: "front",
      armAngleDeg: 20,
      count: 12,
      startDeg: 0,
      depth: { rule: "touch" },
    },
    {
      id: "b",
      name: "High",
      side: "front",
      armAngleDeg: 50,
      count: 6,
      startDeg: 0,
      depth: { rule: "close", to: "a" },
    },
  ],
};

/** Lays a plan on the bench, and with the page loaded anew that wall hangs, and so many of its ideas are held. */
export async function hangWall(page: Page, held = 0, plan = ON_BENCH): Promise<void> {
  await guideTo(page).goTo("plan");
  // one of that name that lies there already was laid there by an earlier test, and undone to
  if ((await page.locator(".recipe-title input").inputValue()) !== plan.name) {
    await dropFile(page, "plan.json", JSON.stringify(plan));
    await page.waitForFunction(
      (name) => document.querySelector<HTMLInputElement>(".recipe-title input")?.value === name,
      plan.name,
    );
  }
  const lines = { wall: WALL, held: { ...packPlans(HUNG.slice(0, held)), thrown: [] }, wish: {} };
  await page.evaluate((given) => {
    for (const [name, data] of Object.entries(given))
      localStorage.setItem(`glintwright-ideas-${name}`, JSON.stringify(data));
  }, lines);
  await page.reload();
  await page.waitForSelector(".recipe, .ideas");
}

/** Waits until a search that was begun has hung something of its own, and stops it. */
export async function stopOnceHung(page: Page): Promise<void> {
  const stop = page.getByRole("button", { name: ideasWords.en.stop, exact: true });
  await stop.waitFor();
  await page
    .getByRole("status")
    .filter({ hasText: /^[1-9]\d* patterns tried, [1-9]/ })
    .waitFor();
  await stop.click();
  await stop.waitFor({ state: "detached" });
}

/** What the page keeps of the wall or of what is held, by its plans. */
export async function keptPlans(page: Page, name: "wall" | "held"): Promise<readonly (Plan | null)[]> {
  const line = await page.evaluate((of) => localStorage.getItem(`glintwright-ideas-${of}`), name);
  return unpackPlans(JSON.parse(line ?? "null"));
}
