/** A sheet of variants: one picture, each variant traced in it with its name below, as the file that is saved. */
import { decode } from "fast-png";
import { expect, it } from "vitest";
import { plan, tier } from "../core/bench/plans.ts";
import { dropFile, fileOf, nameField, openFromMenu } from "./built-app.ts";
import { handedOver, takeFiles } from "./hand-over.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();
/** Few facets: two pictures of it are traced in software. */
const FEW = {
  ...plan([tier({ count: 3, armAngleDeg: 30, depth: { rule: "depth", mm: 4 } })]),
  name: "Few",
  piece: {
    diameterMm: 30,
    glass: "borosilicate",
    inside: [{ kind: "core", diameterMm: 10, rgb: [0.03, 0.1, 0.3], opaque: true }],
  },
};
/** In software a picture is as wide, with this between pictures and below them. */
const [SIZE, GAP, BAND] = [160, 6, 22];

it("lays two glasses side by side in one file, each traced, each with its own name", async () => {
  const { page, errors, foreign, close } = await app.visit({ viewport: { width: 820, height: 640 } });
  await dropFile(page, "few.json", JSON.stringify(FEW));
  await expect.poll(() => nameField(page).inputValue()).toBe(FEW.name);
  await openFromMenu(page, "Sheet of variants");
  const sheet = page.getByRole("dialog");
  await sheet.getByRole("button", { name: "Add every glass" }).click();
  const names = sheet.getByRole("textbox");
  expect(await names.count()).toBe(2);
  expect(await names.nth(0).inputValue()).toMatch(/Borosilicate$/);
  expect(await names.nth(1).inputValue()).toMatch(/Soda-lime$/);
  // a name is drawn as it is typed, and none is drawn where it is empty; what was typed outlasts a reload
  await names.nth(1).fill("");
  await names.nth(0).fill("Quay");
  await page.reload();
  await page.locator(".recipe").waitFor();
  await takeFiles(page);
  await openFromMenu(page, "Sheet of variants");
  await expect.poll(() => names.count()).toBe(2);
  expect([await names.nth(0).inputValue(), await names.nth(1).inputValue()]).toEqual(["Quay", ""]);
  await sheet.getByRole("button", { name: "Make the sheet" }).click();
  await sheet.getByRole("img", { name: "The sheet of variants" }).waitFor();
  const file = await fileOf(page, () => sheet.getByRole("button", { name: "Save the sheet" }).click());
  expect(file.name).toMatch(/variants\.png$/);
  await sheet.getByRole("button", { name: "Send it" }).click();
  await expect.poll(() => handedOver(page)).toEqual([[file.name, "image/png", file.bytes.length]]);

  const { width, height, data, channels } = decode(file.bytes);
  expect([width, height]).toEqual([2 * (SIZE + GAP) + GAP, SIZE + BAND + 2 * GAP]);
  const tones = (left: number, top: number, wide: number, high: number): number[] => {
    const found: number[] = [];
    for (let y = top; y < top + high; y++)
      for (let x = left; x < left + wide; x++) found.push(data[channels * (y * width + x) + 1]);
    return found;
  };
  const spread = (values: readonly number[]): number => {
    const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
    return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length);
  };
  const [first, second] = [GAP, 2 * GAP + SIZE].map((left) => ({
    glass: tones(left + SIZE / 4, GAP + SIZE / 4, SIZE / 2, SIZE / 2),
    name: tones(left, GAP + SIZE, SIZE, BAND),
  }));
  expect(spread(first.glass)).toBeGreaterThan(10);
  expect(spread(second.glass)).toBeGreaterThan(10);
  expect(second.glass).not.toEqual(first.glass);
  expect(spread(first.name)).toBeGreaterThan(5);
  expect(spread(second.name)).toBe(0);
  await sheet.getByRole("button", { name: "Take all away" }).click();
  expect(await names.count()).toBe(0);
  expect(errors).toEqual([]);
  expect(foreign).toEqual([]);
  await close();
});
