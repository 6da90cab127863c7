import { describe, expect, it } from "vitest";
import { LIGHT_SETTINGS } from "../../src/core/optics/light-settings.ts";
import type { Light } from "../../src/core/optics/lights.ts";
import { packBackdrop } from "../../src/render/pack-light.ts";

const bandsOf = (light: Light): number[] =>
  Array.from(packBackdrop(light).softBands.value as readonly number[]);

describe("the soft backdrop of a light", () => {
  it("is white in uniform light", () => {
    for (const v of bandsOf({ kind: "uniform" })) expect(v).toBeCloseTo(1, 12);
  });

  it("is brighter above than below under an open sky", () => {
    const [above, , , , , , below] = bandsOf({
      kind: "setting",
      setting: LIGHT_SETTINGS.overcast,
      turnRad: 0,
    });
    expect(above).toBeGreaterThan(3 * below);
  });

  it("does not change when the light is turned by a whole number of its steps", () => {
    const at = (turnRad: number) => bandsOf({ kind: "setting", setting: LIGHT_SETTINGS.overcast, turnRad });
    at(Math.PI / 2).forEach((v, i) => {
      expect(v).toBeCloseTo(at(0)[i], 9);
    });
  });
});
