/** What a person meets in the first hour with the recipe: ranges beside fields, a new plan from its beginning. */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { meetingAngles, meetingCounts } from "../../src/core/check/meeting-range.ts";
import { serializePlan } from "../../src/core/plan/file.ts";
import { BENCH_PLAN } from "./bench-plan.ts";
import { dropFile } from "./built-app.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

const app = sharedApp();
const visit = sharedVisit(app, { without3d: true });
const field = (page: Page, name: string, tier: number) =>
  page.locator(".tier").nth(tier).getByRole("spinbutton", { name });
const answers = <T>(steps: Iterable<T | null>) => [...steps].filter((one) => one !== null);

it("says beside an angle and a count that one edits with which everything meets, and nothing elsewhere", async () => {
  const { page, errors } = visit;
  await dropFile(page, "plan.glintwright.json", serializePlan(BENCH_PLAN));
  await page.getByText(`Opened ${BENCH_PLAN.name}`).waitFor();
  // It stays open in part, as planned.
  const SAID = "What meets still does";
  const [range] = answers(meetingAngles(BENCH_PLAN, 1)) as { fromDeg: number; toDeg: number }[];
  expect(range.toDeg).toBeGreaterThan(range.fromDeg);
  expect(await page.locator(".meeting").count()).toBe(0);
  await field(page, "Arm angle", 1).focus();
  const band = page.locator(".meeting");
  await band.waitFor();
  expect(await band.textContent()).toBe(
    `${SAID} from ${range.fromDeg.toFixed(1)}° to ${range.toDeg.toFixed(1)}°`,
  );
  // one step further, and the same band is there again for the angle that is
  await page.keyboard.press("ArrowUp");
  expect(await band.count()).toBe(1);

  await field(page, "Number of facets", 1).focus();
  await page.locator(".meeting[data-counts]").waitFor();
  const counts = answers(meetingCounts(BENCH_PLAN, 1)).sort((a, b) => (a ?? 0) - (b ?? 0));
  expect(await band.getAttribute("data-counts")).toBe(counts.join(" "));
  await page.getByRole("textbox", { name: "Name of the plan" }).focus();
  expect(await band.count()).toBe(0);
  expect(errors).toEqual([]);
});
