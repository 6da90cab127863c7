/** The drawn piece's program for every light, as a card draws it and as the processor does: both compile and show one light. */
import { expect, it } from "vitest";
import { LIGHT_SETTINGS } from "../../src/core/optics/light-settings.ts";
import { sharedThing } from "./shared.ts";
import { openPage } from "./support.ts";

const opened = sharedThing(
  () => openPage("tests/browser/piece-page.html", { width: 200, height: 200 }),
  ({ close }) => close(),
);

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

it.each(Object.keys(LIGHT_SETTINGS))("draws glass in %s on a card and on the processor", async (light) => {
  const drawn = async (inSoftware: boolean) => {
    const bytes = await opened().page.evaluate<number[]>(`draw("${light}", ${inSoftware})`);
    expect(mean(bytes.filter((_, i) => i % 4 === 3))).toBe(255);
    return mean(bytes.filter((_, i) => i % 4 === 1));
  };
  const [card, processor] = [await drawn(false), await drawn(true)];
  expect(card).toBeGreaterThan(8);
  // the card follows light over three stretches, the processor over one and takes the mean for the rest
  expect(Math.abs(card - processor)).toBeLessThan(0.25 * card);
  expect(opened().errors).toEqual([]);
});
