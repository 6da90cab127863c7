/** The knobs of the half-section: every tier's can be seen and taken hold of, however many stand at one angle. */
import { describe, expect, it } from "vitest";
import type { Tier } from "../../../../src/core/plan/document.ts";
import { KNOB_PX, placeKnobs, spreadAlong, stemPoints } from "../../../../src/ui/plan/profile/knobs.ts";

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

describe("a row of knobs", () => {
  it("keeps the order of the angles, so that no stem crosses another", () => {
    const angles = [30, 42, 31, 33, 90, 29];
    const knobs = placeKnobs(
      angles.map((angle, i) => tierAt(i, "front", angle)),
      { cx: 60, cy: 250, radius: 180 },
      false,
    );
    const byAngle = [...knobs.keys()].sort((a, b) => angles[a] - angles[b]);
    const heights = byAngle.map((i) => knobs[i].at[1]);
    expect(heights).toEqual([...heights].sort((a, b) => b - a));
  });

  it("has stems that run from rim to knob, outside the glass", () => {
    const frame = { cx: 60, cy: 250, radius: 180 };
    const knobs = placeKnobs(
      Array.from({ length: 7 }, (_, i) => tierAt(i, "front", 45)),
      frame,
      false,
    );
    for (const knob of knobs) {
      const points = stemPoints(knob);
      expect([points[0], points.at(-1)]).toEqual([knob.rim, knob.at]);
      for (const [x, y] of points)
        expect(Math.hypot(x - frame.cx, y - frame.cy)).toBeGreaterThan(frame.radius - 1e-9);
    }
  });

  it("moves values as little as can be (least squares), the middle of a crowd staying where it is", () => {
    expect(spreadAlong([0, 1, 5], 2, 10)).toEqual([-0.5, 1.5, 5]);
    expect(spreadAlong([9, 9.5, 10], 2, 10)).toEqual([6, 8, 10]);
    expect(spreadAlong([0, 0, 0, 0], 2, 3)).toEqual([-3, -1, 1, 3]);
    expect(spreadAlong([0, 0, 0, 0, 0], 2, 3)).toBeNull();
  });
});
