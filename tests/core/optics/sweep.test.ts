import { describe, expect, it } from "vitest";
import { LIGHT_SETTINGS } from "../../../src/core/optics/light-settings.ts";
import { type LightSetting, lightRadiance } from "../../../src/core/optics/lights.ts";
import { plainMaterial } from "../../../src/core/optics/materials.ts";
import { withSweep } from "../../../src/core/optics/sweep.ts";
import { lightOver, makeTabletop } from "../../../src/core/optics/tabletop.ts";

const UP = [0, 0, 1] as const;

describe("a table that rises to a wall", () => {
  it("shines at its far end as the table itself does there, in every light that has a sweep", () => {
    for (const [name, setting] of Object.entries(LIGHT_SETTINGS) as [string, LightSetting][])
      for (const rgb of [
        [0.8, 0.8, 0.8],
        [0.4, 0.2, 0.1],
        [0.05, 0.05, 0.06],
      ] as const) {
        if (setting.sweep === undefined) continue;
        const light = lightOver({ kind: "setting", setting, turnRad: 0.3 }, UP, rgb);
        const { bare } = makeTabletop(UP, -1, { material: plainMaterial(rgb), radiusMm: 15 }, light);
        const horizon = light.kind === "setting" ? light.setting.horizon : [0, 0, 0];
        for (let c = 0; c < 3; c++)
          expect(horizon[c] / (rgb[c] * bare[c]), `${name} ${c}`).toBeCloseTo(1, 1.5);
      }
  });

  it("between a white table and a sky of radiance 1 is 1 everywhere: no light is made or lost", () => {
    const one = [1, 1, 1] as const;
    const setting: LightSetting = {
      zenith: one,
      horizon: [0, 0, 0],
      floor: one,
      nadir: one,
      spread: 3,
      sweep: 0.7,
      panels: [],
    };
    const swept = withSweep(setting, [1, 1, 1]);
    for (let c = 0; c < 3; c++) expect(swept.horizon[c]).toBeCloseTo(1, 9);
    expect(lightRadiance({ kind: "setting", setting: swept, turnRad: 0 }, [0.6, 0.8, 0])[0]).toBeCloseTo(
      1,
      9,
    );
  });

  it("gives half of what a table of half the reflectance gets: A + B H by Lambert's cosine in closed form", () => {
    // sky lerp(H, Z, y): its mean by the cosine is 2 times the integral of y (H (1 - y) + Z y) = H / 3 + 2 Z / 3
    const setting: LightSetting = {
      zenith: [3, 3, 3],
      horizon: [9, 9, 9],
      floor: [0, 0, 0],
      nadir: [0, 0, 0],
      spread: 0.2,
      sweep: 1,
      panels: [],
    };
    const rho = 0.5;
    const expected = (rho * 2) / (1 - rho / 3);
    expect(withSweep(setting, [rho, rho, rho]).horizon[1]).toBeCloseTo(expected, 2);
  });

  it("is not there in a light without one", () => {
    const { overcast } = LIGHT_SETTINGS;
    expect(withSweep(overcast, [1, 1, 1])).toBe(overcast);
  });
});
