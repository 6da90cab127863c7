/** Pictures for a shop lie on something, are seen from its own height, and leave what Look shows alone. */
import { describe, expect, it } from "vitest";
import { dot } from "../../../src/core/geometry/vec.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { FIRST_EXAMPLE } from "../../../src/ui/first-example.ts";
import { onPaper, onTableOf, placed } from "../../../src/ui/look/crops.ts";
import { DEFAULT_SETTINGS } from "../../../src/ui/look/look-settings.ts";
import { ON_TABLE, standOf } from "../../../src/ui/look/lying.ts";
import { eyeFrame, HOME, LOOKS } from "../../../src/ui/piece/camera.ts";

const plan: Plan = FIRST_EXAMPLE;
const uncut: Plan = { ...plan, tiers: [] };

describe("a picture for a shop", () => {
  it("lies on white paper, on the largest flat or on a ring, unless Look has chosen a table", () => {
    expect(onPaper(plan, DEFAULT_SETTINGS)).toMatchObject({ table: "paper", rest: "flat" });
    expect(onPaper(uncut, DEFAULT_SETTINGS)).toMatchObject({ table: "paper", rest: "ring" });
    const chosen = { ...DEFAULT_SETTINGS, table: "oak", rest: "side" } as const;
    expect(onPaper(plan, chosen)).toBe(chosen);
  });

  it("is seen as a thing on a table is, wherever the eye was", () => {
    for (const of of [plan, uncut]) {
      const lying = onPaper(of, DEFAULT_SETTINGS);
      const stand = standOf(of, lying);
      if (!stand) throw new Error("no table");
      for (const seen of [HOME, ...Object.values(LOOKS).map((look) => ({ ...HOME, ...look }))]) {
        const view = placed(onTableOf(of, lying, seen), "shop");
        const height = (Math.asin(dot(eyeFrame(view).out, stand.up)) * 180) / Math.PI;
        expect(height).toBeGreaterThanOrEqual(9.9);
        expect(height).toBeLessThanOrEqual(40.1);
      }
      const chosen = { ...ON_TABLE, stand, elevationDeg: 70 };
      expect(onTableOf(of, lying, chosen)).toBe(chosen);
    }
  });
});
