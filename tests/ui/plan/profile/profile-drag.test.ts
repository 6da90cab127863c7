/** How far a hand's way in the profile cuts. */
import { describe, expect, it } from "vitest";
import { EXAMPLES } from "../../../../src/ui/examples.ts";
import { profileDrag } from "../../../../src/ui/plan/profile/profile-drag.ts";

const plan = EXAMPLES.find(({ name }) => name === "Both banks")!;
const [tier] = plan.tiers;
const radiusMm = plan.piece.diameterMm / 2;
/** The first tier stands at the equator: 20 px to the left is 20 px inward. */
const inward = (radius: number): number => {
  const frame = { cx: 0, cy: 300, radius };
  return profileDrag(plan, frame).delta("depth", tier.id, [radius + 40, 300], [radius + 20, 300]);
};

describe("a pull inward", () => {
  it("cuts as deep as the hand goes in a large profile", () => {
    expect(tier.armAngleDeg).toBe(0);
    expect(inward(240)).toBeCloseTo((20 / 240) * radiusMm, 9);
  });

  it("goes no faster in a small profile than in one of 200 px, and rests at meetings within as much of the hand's way", () => {
    const fast = (20 / 200) * radiusMm;
    expect(inward(57)).toBeCloseTo(fast, 9);
    const small = profileDrag(plan, { cx: 0, cy: 300, radius: 57 });
    expect(small.reach("depth", tier.id, [97, 300]) / fast).toBeCloseTo(9 / 20, 9);
  });
});
