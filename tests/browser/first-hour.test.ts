/** What a person meets in the first hour with the recipe: ranges beside fields, a new plan from its beginning. */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { meetingAngles, meetingCounts } from "../../src/core/check/meeting-range.ts";
import { serializePlan } from "../../src/core/plan/file.ts";
import { fragmentOf } from "../../src/core/plan/link.ts";
import { BENCH_PLAN } from "./bench-plan.ts";
import { dropFile, openFromMenu } from "./built-app.ts";
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

const at = (page: Page, place: string) => page.locator(`.frame[data-place="${place}"]`).waitFor();
/** Whether the entry of the history says what is on the screen: else the browser is still under way to another. */
const hasArrived = (page: Page) =>
  page.evaluate(() => {
    const said: { isLap?: boolean; spot?: { place: string; over: number } } | null = history.state;
    // the lap has an entry of its own, which says no more
    const isLap = document.querySelector(".lap") !== null;
    if (isLap || said?.isLap) return isLap && said?.isLap === true;
    const place = document.querySelector<HTMLElement>(".frame")?.dataset.place;
    const over = document.querySelectorAll("[role=dialog]").length;
    return said?.spot?.place === place && said?.spot?.over === over;
  });
/** Which entry of its history the page stands at. */
const entry = (page: Page) =>
  page.evaluate(
    () =>
      (window as unknown as { navigation: { currentEntry: { index: number } } }).navigation.currentEntry
        .index,
  );
const back = async (page: Page) => {
  // no hand is so quick that it asks for one step more before the last is done
  await expect.poll(() => hasArrived(page)).toBe(true);
  const from = await entry(page);
  await page.goBack();
  await expect.poll(() => entry(page)).toBeLessThan(from);
};
const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).first().click();
const sheet = (page: Page) => page.getByRole("dialog");

it("goes back and forward between places and sheets, and closes what lies on top before it leaves", async () => {
  const { page, errors, close } = await app.visit({ without3d: true });
  await press(page, "Look");
  await at(page, "look");
  await press(page, "Bench");
  await at(page, "bench");
  await openFromMenu(page, "Settings");
  await sheet(page).waitFor();
  await back(page);
  await sheet(page).waitFor({ state: "detached" });
  await at(page, "bench");
  await page.goForward();
  await sheet(page).getByRole("heading", { name: "Settings" }).waitFor();
  // one that was closed by hand leaves no step behind
  await page.keyboard.press("Escape");
  await sheet(page).waitFor({ state: "detached" });
  await back(page);
  await at(page, "look");
  await page.reload();
  await at(page, "look");
  await back(page);
  await at(page, "plan");
  await page.goForward();
  await at(page, "look");
  expect(errors).toEqual([]);
  await close();
});

it("closes a sheet of the recipe's own by a step back, and the page for the lap", async () => {
  const { page, errors, close } = await app.visit({ without3d: true });
  await press(page, "Look");
  await press(page, "Plan");
  await field(page, "Arm angle", 0).focus();
  await press(page, "Counts and angles that work");
  await sheet(page).waitFor();
  await back(page);
  await sheet(page).waitFor({ state: "detached" });
  await at(page, "plan");

  await press(page, "Bench");
  await press(page, "At the lap");
  await sheet(page).waitFor();
  await back(page);
  await sheet(page).waitFor({ state: "detached" });
  await press(page, "At the lap");
  await sheet(page).getByRole("button", { name: "Close" }).click();
  await sheet(page).waitFor({ state: "detached" });
  await back(page);
  await at(page, "plan");
  expect(new URL(page.url()).hash).toBe("");
  expect(errors).toEqual([]);
  await close();
});

it("takes a link with a plan into the trail without losing its beginning", async () => {
  const { page, close } = await app.visit({ without3d: true });
  await press(page, "Bench");
  await at(page, "bench");
  // no hand pastes an address before the step that was just made is in the history
  await expect
    .poll(() => page.evaluate(() => (history.state as { spot?: { place?: string } } | null)?.spot?.place))
    .toBe("bench");
  await page.evaluate((hash) => {
    location.hash = hash;
  }, fragmentOf(BENCH_PLAN));
  await page.getByRole("heading", { name: BENCH_PLAN.name }).waitFor();
  await expect.poll(() => new URL(page.url()).hash).toBe("");
  await press(page, "Look");
  await at(page, "look");
  await back(page);
  await back(page);
  await back(page);
  await at(page, "plan");
  await close();
});

it("begins a new plan at its beginning, speaks of the plus only where it is, and turns to a tier that is new behind", async () => {
  const { page, close } = await app.visit({ without3d: true, viewport: { width: 390, height: 844 } });
  const side = page.locator(".side");
  await side.evaluate((box) => box.scrollTo(0, 4000));
  expect(await side.evaluate((box) => box.scrollTop)).toBeGreaterThan(100);
  await openFromMenu(page, "New plan");
  await page.locator(".recipe-empty").waitFor();
  expect(await side.evaluate((box) => box.scrollTop)).toBe(0);
  const plus = page.locator(".recipe-empty .by-profile");
  expect(await plus.isVisible()).toBe(false);
  await press(page, "Profile");
  expect(await plus.isVisible()).toBe(true);
  await press(page, "Piece");

  // its last tier lies on the front pole, so the next one is the back's first
  const cap = {
    ...BENCH_PLAN.tiers[0],
    id: "cap",
    armAngleDeg: 90,
    count: 1,
    depth: { rule: "depth", mm: 1 },
  } as const;
  const front = { ...BENCH_PLAN, tiers: [BENCH_PLAN.tiers[0], cap] };
  await dropFile(page, "plan.glintwright.json", serializePlan(front));
  await page.getByText(`Opened ${front.name}`).waitFor();
  const drawn = () => page.locator(".piece-drawing").innerHTML();
  await press(page, "Front");
  await expect.poll(() => page.locator(".piece-label-ink").count()).toBe(1);
  await press(page, "Add a tier");
  await page.locator(".tier").nth(2).waitFor();
  expect(await page.locator(".tier").nth(2).textContent()).toContain("back");
  const shown = await drawn();
  // had it stayed, it would be in front already
  await press(page, "Front");
  expect(await drawn()).not.toBe(shown);
  await close();
});

it("takes a figure typed on a handle of the profile as its angle, and refuses a start that the wheel has not", async () => {
  const { page, close } = await app.visit({ without3d: true, viewport: { width: 1440, height: 900 } });
  const handle = page.locator(".profile [role=slider]").first();
  await handle.focus();
  await page.keyboard.type("33.5");
  await page.keyboard.press("Enter");
  await expect.poll(() => handle.getAttribute("aria-valuenow")).toBe("33.5");
  await at(page, "plan");
  await page.keyboard.type("99");
  await page.keyboard.press("Enter");
  expect(await handle.getAttribute("aria-valuenow")).toBe("33.5");
  await page.locator(".notices").getByText("90").waitFor();

  const start = field(page, "Start", 0);
  const before = await start.inputValue();
  for (const wrong of ["96", "-1", "400"]) {
    await start.fill(wrong);
    await page.keyboard.press("Enter");
    await page.getByText("a stop from 0 to 95").first().waitFor();
    expect(await start.getAttribute("aria-invalid")).toBe("true");
    await page.keyboard.press("Escape");
  }
  expect(await start.inputValue()).toBe(before);
  await close();
});

it("edits what is inside beside the piece, with the lengths that this piece has room for", async () => {
  const { page, errors, close } = await app.visit({ without3d: true, viewport: { width: 390, height: 844 } });
  await page.getByRole("button", { name: /^Inside: / }).click();
  const length = page.locator(".inside-part").getByRole("spinbutton", { name: "Length" });
  await length.waitFor();
  expect(await sheet(page).count()).toBe(0);
  const before = await length.inputValue();
  await length.fill("300");
  await page.keyboard.press("Enter");
  expect(await length.getAttribute("aria-invalid")).toBe("true");
  await page.keyboard.press("Escape");
  expect(await length.inputValue()).toBe(before);
  // the ball is 38 mm: what lies within is less than that, and stays so with the ribbon's width
  const most = Number(await length.getAttribute("aria-valuemax"));
  expect(most).toBeGreaterThan(30);
  expect(most).toBeLessThan(38);

  await press(page, "Look");
  await page.locator(".look-page .inside-part").getByRole("spinbutton", { name: "Length" }).waitFor();
  expect(errors).toEqual([]);
  await close();
});
