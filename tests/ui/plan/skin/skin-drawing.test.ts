import { describe, expect, it } from "vitest";
import type { Plan } from "../../../../src/core/plan/document.ts";
import { report, solid, solved } from "../../../../src/state/derived.ts";
import { EXAMPLES } from "../../../../src/ui/examples.ts";
import { ORIGIN } from "../../../../src/ui/plan/skin/projection.ts";
import { drawSkin } from "../../../../src/ui/plan/skin/skin-drawing.ts";
import { layOut } from "../../../../src/ui/plan/skin/skin-layout.ts";

const { strip, window } = layOut({ width: 1200, height: 400 }, -Math.PI);
const draw = (plan: Plan) =>
  drawSkin(solved(plan), solid(plan), report(plan), { ...strip, centre: ORIGIN }, window);
const keysOf = (plan: Plan): string[] => {
  const { gaps, touches, corners, misses } = draw(plan);
  return [...gaps, ...touches, ...corners, ...misses].map(({ key }) => key);
};

describe("the drawing of the skin", () => {
  it.each(EXAMPLES.map((plan) => [plan.name, plan] as const))(
    "gives every mark of %s a name of its own",
    (_, plan) => {
      const keys = keysOf(plan);
      expect(new Set(keys).size).toBe(keys.length);
    },
  );

  it("keeps a corner's name when the corner moves", () => {
    const plan = EXAMPLES.find(({ name }) => name === "Both banks")!;
    const before = keysOf(plan).filter((key) => key.startsWith("corner"));
    expect(before.length).toBeGreaterThan(0);
    const kept = keysOf({ ...plan, piece: { ...plan.piece, diameterMm: plan.piece.diameterMm + 1 } });
    for (const key of before) expect(kept).toContain(key);
  });

  it("numbers marks of the same facets, wherever they lie", () => {
    const plan = EXAMPLES.find(({ name }) => name === "Both banks")!;
    const found = report(plan);
    const [corner] = found.corners;
    const [x, y, z] = corner.at;
    const twice = { ...found, corners: [corner, { ...corner, at: [-x, -y, z] as const }] };
    const { corners } = drawSkin(solved(plan), solid(plan), twice, { ...strip, centre: ORIGIN }, window);
    expect(corners.map(({ key }) => key)).toEqual([
      `corner ${corner.facets.join(" ")}`,
      `corner ${corner.facets.join(" ")} 2`,
    ]);
    expect(corners[0].at).not.toEqual(corners[1].at);
  });
});
