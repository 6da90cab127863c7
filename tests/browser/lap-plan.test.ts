/** Which plan the page for the lap stands at: the one it was opened for, after any reload; another one only when it is asked. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { parsePlan } from "../../src/core/plan/file.ts";
import { fragmentOf } from "../../src/core/plan/link.ts";
import { nameField, openFromMenu, renamePlan } from "./built-app.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, without3d: true };

const linked = parsePlan(
  JSON.stringify({
    format: "glintwright-plan",
    version: 1,
    name: "From a code",
    piece: { diameterMm: 30, glass: "borosilicate" },
    rig: { wheelStops: 96 },
    tiers: [
      {
        id: "t1",
        name: "Ring",
        side: "front",
        armAngleDeg: 30,
        count: 6,
        startDeg: 0,
        depth: { rule: "depth", mm: 1 },
      },
    ],
  }),
).plan;

const head = (page: Page) => page.locator(".lap-head p").first();
const at = (page: Page, step: number) => page.locator(`.lap-foot [data-step="${step}"]`).waitFor();
const hash = (page: Page) => new URL(page.url()).hash;

async function holdTo(page: Page, step: number): Promise<void> {
  await page.keyboard.down("b");
  await at(page, step);
  await page.keyboard.up("b");
}
async function toLap(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Bench", exact: true }).click();
  await page.getByRole("button", { name: "At the lap" }).click();
}
async function reload(page: Page): Promise<void> {
  page.once("dialog", (dialog) => void dialog.accept());
  await page.reload();
}
async function openLink(page: Page): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#${fragmentOf(linked)}`);
  await expect.poll(() => nameField(page).inputValue()).toBe("From a code");
}

describe("the lap", () => {
  it("of a plan from a link stands at the same plan and step after a reload, right after it was opened too", async () => {
    const { page, errors, close } = await app.visit(PHONE);
    await renamePlan(page, "Of my own");
    await page.getByText("Kept on this device", { exact: true }).first().waitFor();
    await openLink(page);
    await toLap(page);
    await page.reload();
    await at(page, 1);
    await expect.poll(() => head(page).textContent()).toContain("From a code");
    for (const step of [2, 3, 4]) await holdTo(page, step);
    await page.reload();
    await at(page, 4);
    expect(await head(page).textContent()).toContain("From a code");
    expect(hash(page)).toMatch(/^#lap=[\w-]+$/);
    expect(errors).toEqual([]);
    await close();
  });

  it("stands there too where the browser keeps nothing: the address carries plan and step", async () => {
    const before = () => {
      Object.defineProperty(window, "indexedDB", { value: undefined });
      Object.defineProperty(window, "localStorage", { value: null });
    };
    const { page, errors, close } = await app.visit({ ...PHONE, before });
    await openLink(page);
    await toLap(page);
    await at(page, 1);
    for (const step of [2, 3, 4, 5]) await holdTo(page, step);
    const stop = await page.locator(".lap-stop b").textContent();
    expect(hash(page)).toContain("&plan=");
    await reload(page);
    await page.locator(".lap-foot").waitFor();
    expect(await head(page).textContent()).toContain("From a code");
    await expect.poll(() => page.locator(".lap-stop b").textContent()).toBe(stop);
    expect(errors).toEqual([]);
    await close();
  });

  it("of an example that nobody changed keeps it, so that a reload finds it where the work stands", async () => {
    const { page, close } = await app.visit(PHONE);
    const example = await nameField(page).inputValue();
    await toLap(page);
    await at(page, 1);
    await expect.poll(() => hash(page)).toMatch(/^#lap=[\w-]+$/);
    for (const step of [2, 3]) await holdTo(page, step);
    await page.reload();
    await at(page, 3);
    expect(await head(page).textContent()).toContain(example);
    await page.getByRole("button", { name: "Close" }).click();
    await openFromMenu(page, "Your plans");
    await expect
      .poll(() => page.getByRole("dialog").locator(".shelf-plan b").allTextContents())
      .toEqual([example]);
    await close();
  });

  it("stays at its plan while another window opens another, and asks when its plan is gone", async () => {
    const { page, close } = await app.visit(PHONE);
    await renamePlan(page, "At the lap");
    await page.getByText("Kept on this device", { exact: true }).first().waitFor();
    await toLap(page);
    await at(page, 1);
    const { page: other } = await app.beside(page);
    await openFromMenu(other, "Examples");
    await other.getByRole("button", { name: "Open First ring" }).click();
    await renamePlan(other, "In the other window");
    await other.getByText("Kept on this device", { exact: true }).first().waitFor();
    await page.reload();
    await at(page, 1);
    expect(await head(page).textContent()).toContain("At the lap");

    await openFromMenu(other, "Your plans");
    await other.getByRole("button", { name: "More for At the lap", exact: true }).click();
    await other.getByRole("menuitem", { name: "Throw out" }).click();
    await other.getByText("Thrown out", { exact: true }).click();
    await other.getByRole("button", { name: "More for At the lap", exact: true }).click();
    await other.getByRole("menuitem", { name: "Erase for good" }).click();
    await other.getByText("Nothing was thrown out.").waitFor();
    await page.reload();
    await page.getByRole("heading", { name: "Another plan lies on the bench" }).waitFor();
    expect(await page.locator(".lap-foot").count()).toBe(0);
    await page.getByRole("button", { name: "Back to the plan it stood at" }).click();
    await page.getByText("can't be opened on this device").waitFor();
    await page.getByRole("button", { name: /^Go on with / }).click();
    await at(page, 1);
    await close();
  });

  it("takes nothing of its plan back by a key", async () => {
    const { page, close } = await app.visit(PHONE);
    await renamePlan(page, "Stays");
    await toLap(page);
    await at(page, 1);
    await page.keyboard.press("Control+z");
    expect(await head(page).textContent()).toContain("Stays");
    await close();
  });
});

it("the page shows, and says why nothing is kept, where the visit can't begin at all", async () => {
  const before = () => {
    Object.defineProperty(BroadcastChannel.prototype, "onmessage", {
      set: () => {
        throw new TypeError("nobody foresaw this");
      },
    });
  };
  const { page, errors, close } = await app.visit({ without3d: true, before });
  await page.getByRole("alert").filter({ hasText: "a reason that this page does not know" }).waitFor();
  await renamePlan(page, "All the same");
  await page.getByText("Not kept beyond this page: save to a file").waitFor();
  expect(errors).toEqual([]);
  await close();
});
