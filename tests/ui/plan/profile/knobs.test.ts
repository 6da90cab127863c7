/** The knobs of the half-section: every tier's can be seen and taken hold of, however many stand at one angle. */
import { describe, expect, it } from "vitest";
import type { Tier } from "../../../../src/core/plan/document.ts";
import {
  angleSide,
  isCrossed,
  KNOB_PX,
  type Knob,
  placeKnobs,
} from "../../../../src/ui/plan/profile/knobs.ts";

const FRAME = { cx: 60, cy: 120, radius: 85 };
const tierAt = (place: number, side: "front" | "back", armAngleDeg: number): Tier => ({
  id: `t${place}`,
  name: `Tier ${place}`,
  side,
  armAngleDeg,
  count: 1,
  startDeg: 0,
  depth: { rule: "depth", mm: 1 },
});

describe("the knobs of a profile", () => {
  it.each([90, 88, 60, 0])(
    "stay apart and within the picture with five tiers on each side at %s degrees",
    (angle) => {
      const tiers = Array.from({ length: 10 }, (_, i) => tierAt(i, i % 2 ? "back" : "front", angle));
      for (const isSmall of [true, false]) {
        const knobs = placeKnobs(tiers, isSmall ? FRAME : { ...FRAME, cy: 160 }, isSmall);
        knobs.forEach(({ at: [x, y] }, i) => {
          expect(y).toBeGreaterThanOrEqual(KNOB_PX);
          expect(y).toBeLessThanOrEqual(2 * (isSmall ? FRAME.cy : 160) - KNOB_PX);
          for (const { at } of knobs.slice(0, i))
            expect(Math.hypot(at[0] - x, at[1] - y)).toBeGreaterThanOrEqual(2 * KNOB_PX);
        });
      }
    },
  );

  it("stand at the tier's own angle, outside the rim, where there is room", () => {
    const [knob] = placeKnobs([tierAt(1, "front", 30)], FRAME, true);
    const [x, y] = [knob.at[0] - FRAME.cx, FRAME.cy - knob.at[1]];
    expect((Math.atan2(y, x) * 180) / Math.PI).toBeCloseTo(30, 9);
    expect(Math.hypot(x, y)).toBeGreaterThan(FRAME.radius);
  });
});

describe("what is written beside the knobs", () => {
  const knobAt = (tierId: string, at: readonly [number, number]): Knob => ({ tierId, at, rim: [60, 35] });

  it("stands on the side where no other knob is, else on the right", () => {
    const pole = knobAt("pole", [90, 20]);
    expect(angleSide(pole, [pole, knobAt("next", [135, 34])])).toBe("left");
    expect(angleSide(pole, [pole, knobAt("next", [135, 60])])).toBe("right");
    expect(angleSide(pole, [pole, knobAt("next", [135, 34]), knobAt("other", [50, 20])])).toBe("right");
    // nor does it leave the picture on the left
    const atEdge = knobAt("pole", [60, 20]);
    expect(angleSide(atEdge, [atEdge, knobAt("next", [105, 34])])).toBe("right");
  });

  it("is crossed by a stem that runs through it, not by one that ends before it or passes beside it", () => {
    const stem = [knobAt("a", [100, 35])];
    expect(isCrossed([80, 40], stem, 14)).toBe(true);
    expect(isCrossed([80, 50], stem, 14)).toBe(false);
    expect(isCrossed([120, 35], stem, 14)).toBe(false);
  });
});
