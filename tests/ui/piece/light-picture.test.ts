import { describe, expect, it } from "vitest";
import { LIGHT_SETTINGS } from "../../../src/core/optics/light-settings.ts";
import { lightRadiance, meanRadiance } from "../../../src/core/optics/lights.ts";
import { asPicture } from "../../../src/ui/piece/light-picture.ts";
import { chance, randomDirection } from "../../core/optics/helpers.ts";

describe.each(Object.entries(LIGHT_SETTINGS))("%s as a picture all round", (_, setting) => {
  const light = { kind: "setting", setting, turnRad: 0.7 } as const;

  it("shines as the setting does, from anywhere but the very rims of its panels", () => {
    const random = chance(5);
    let differ = 0;
    for (let i = 0; i < 2000; i++) {
      const d = randomDirection(random);
      const [there, here] = [lightRadiance(light, d), lightRadiance(asPicture(light), d)];
      if (there.some((v, c) => Math.abs(v - here[c]) > 0.005 * Math.max(1, v))) differ++;
    }
    // rims of panels and bars, a pixel wide, also that of the hot middle of a soft box; half a pixel beside its place, more would differ
    expect(differ / 2000).toBeLessThan(0.04);
  });

  it("throws as much light in all", () => {
    const [there, here] = [meanRadiance(light), meanRadiance(asPicture(light))];
    there.forEach((v, c) => {
      expect(Math.abs(here[c] / v - 1)).toBeLessThan(0.01);
    });
  });
});
