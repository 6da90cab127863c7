/** Two studios side by side on one page: each has its plan, steps, pictures, diary, sheets and light, and leaves the other's alone. */
import { expect, it } from "vitest";
import { PLAN, type Point } from "./drawings.ts";
import { openPage } from "./support.ts";

type Name = "studio" | "other";
const BOX = { studio: "#bench", other: "#other" } as const;

const openTwo = async () => {
  const opened = await openPage("tests/browser/drawing-page.html#two", { width: 1440, height: 1600 });
  await opened.page.evaluate((plan) => {
    for (const name of ["studio", "other"] as const) window.bench[name].getState().open({ plan });
  }, PLAN);
  return opened;
};

it("an edit, a pick and a step back in one studio touch nothing of the other, whose diary stays open", async () => {
  const { page, errors, close } = await openTwo();
  const knob = (name: Name) => page.locator(`${BOX[name]} .profile [data-tier="high"] .grip-knob`);
  const stateOf = (name: Name) =>
    page.evaluate((of) => {
      const { plan, history, selection } = window.bench[of].getState();
      return { angle: plan.tiers[1].armAngleDeg, steps: history.undo.length, picked: selection.tierId };
    }, name);
  const pictureOf = (name: Name) => page.locator(`${BOX[name]} .profile svg`).innerHTML();
  const drag = async (name: Name, [dx, dy]: Point) => {
    const box = await knob(name).boundingBox();
    if (!box) throw new Error(`no handle in ${name}`);
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (const share of [0.5, 1]) await page.mouse.move(x + share * dx, y + share * dy);
    await page.mouse.up();
  };
  await knob("other").waitFor();
  await page.locator("#other .diary-open").click();
  await page.locator("#other .diary-strip").waitFor();

  const [untouched, drawn] = [await stateOf("other"), await pictureOf("other")];
  await drag("studio", [40, 60]);
  const edited = await stateOf("studio");
  expect(edited).toMatchObject({ steps: 1, picked: "high" });
  expect(edited.angle).not.toBe(45);
  expect(await stateOf("other")).toEqual(untouched);
  expect(await pictureOf("other")).toBe(drawn);
  expect(await page.locator("#other .diary-strip").count()).toBe(1);

  await drag("other", [20, 40]);
  expect((await stateOf("other")).steps).toBe(1);
  expect(await stateOf("studio")).toEqual(edited);
  // now it tells of another plan
  await page.locator("#other .diary-strip").waitFor({ state: "detached" });

  await page.evaluate(() => window.bench.other.getState().undo());
  expect((await stateOf("other")).angle).toBe(45);
  expect(await stateOf("studio")).toEqual(edited);
  expect(errors).toEqual([]);
  await close();
});

it("a sheet that is opened in one, and another light on its Look, are not seen in the other", async () => {
  const { page, errors, close } = await openTwo();
  const light = (name: Name) => page.locator(`${BOX[name]} .look-part .choice-button`).first();
  await light("studio").click();
  await page.getByRole("option", { name: "a soft box" }).click();
  await light("studio").getByText("a soft box").waitFor();
  expect(await light("other").textContent()).toContain("a north window");

  await page.locator("#other .piece-line").click();
  const sheet = page.getByRole("dialog");
  await sheet.waitFor();
  expect(await sheet.count()).toBe(1);
  await page.keyboard.press("Escape");
  await sheet.waitFor({ state: "detached" });
  expect(errors).toEqual([]);
  await close();
});
