/** The table's fields on Look: what it is made of, how the piece lies, what is said of both, and when a picture brings its own. */
import { expect, it } from "vitest";
import { MATERIALS } from "../../src/core/optics/materials.ts";
import { luminance } from "../../src/core/optics/spectrum.ts";
import { lookWords } from "../../src/ui/messages/look.ts";
import { seriousFindings } from "./built-app.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

it("lays the piece on a table of any material and any side it has, and a shop's picture on paper where there is none", async () => {
  const { page, errors, foreign, close } = await app.visit({
    without3d: true,
    viewport: { width: 390, height: 844 },
  });
  const { table, save } = lookWords.en;
  await page.getByRole("button", { name: "Look", exact: true }).click();
  const choice = (label: string, value: string) =>
    page.getByRole("button", { name: `${value} ${label}`, exact: true });
  const choose = async (label: string, from: string, to: string) => {
    await choice(label, from).click();
    await page.getByRole("option", { name: to, exact: true }).click();
    await choice(label, to).waitFor();
  };
  const { tables, rests } = table;

  // in the hand: nothing to ask, and only pictures for elsewhere are laid on something
  await choice(table.label, tables.none).waitFor();
  expect(await choice(table.rest, rests.side).count()).toBe(0);
  const paper = page.getByRole("switch", { name: save.onPaper });
  expect(await paper.count()).toBe(0);
  await choose(save.crop, save.crops.screen, save.crops.shop);
  expect(await paper.isChecked()).toBe(true);

  let last: string = tables.none;
  for (const name of ["paper", "linen", "slate", "oak"] as const) {
    await choose(table.label, last, tables[name]);
    const percent = String(Math.round(100 * luminance(MATERIALS[name].rgb)));
    await page.getByText(table.how(percent)).waitFor();
    last = tables[name];
  }
  expect(await paper.count()).toBe(0);
  last = rests.side;
  for (const rest of ["flat", "back", "ring"] as const) {
    await choose(table.rest, last, rests[rest]);
    last = rests[rest];
  }
  expect(await seriousFindings(page)).toEqual([]);
  expect(await page.evaluate("document.documentElement.scrollWidth - innerWidth")).toBe(0);

  // what was chosen is still so when one comes back to it
  await choose(table.label, tables.oak, tables.none);
  expect(await choice(table.rest, rests.ring).count()).toBe(0);
  await choose(table.label, tables.none, tables.slate);
  await choice(table.rest, rests.ring).waitFor();
  expect(errors).toEqual([]);
  expect(foreign).toEqual([]);
  await close();
});
