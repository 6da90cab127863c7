/** Which face a ray meets: held to the definition, the first point on the ray that satisfies every half-space. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dot, normalize, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { EXAMPLES, FIRST_EXAMPLE } from "../../../src/ui/examples.ts";
import { type HOME, LOOKS, rayThrough } from "../../../src/ui/piece/camera.ts";
import { pickFace } from "../../../src/ui/piece/pick.ts";

const unit = fc
  .tuple(...([0, 1, 2].map(() => fc.double({ min: -1, max: 1, noNaN: true })) as [never, never, never]))
  .filter((v) => Math.hypot(...(v as number[])) > 0.1)
  .map((v) => normalize(v as unknown as Vec3));

describe("a ray at the piece", () => {
  it("hits a point that lies on its face and inside every other half-space", () => {
    fc.assert(
      fc.property(fc.constantFrom(...EXAMPLES), unit, unit, (plan, side, aside) => {
        const { planes } = solvePlan(plan);
        const from: Vec3 = [4 * side[0], 4 * side[1], 4 * side[2]];
        const along = normalize([
          -side[0] + 0.2 * aside[0],
          -side[1] + 0.2 * aside[1],
          -side[2] + 0.2 * aside[2],
        ]);
        const hit = pickFace(planes, from, along);
        if (!hit) return;
        for (const { n, h } of planes) expect(dot(n, hit.at)).toBeLessThanOrEqual(h + 1e-9);
        expect(dot(hit.at, hit.at)).toBeLessThanOrEqual(1 + 1e-9);
        if (hit.face < 0) expect(dot(hit.at, hit.at)).toBeCloseTo(1, 9);
        else expect(dot(planes[hit.face].n, hit.at)).toBeCloseTo(planes[hit.face].h, 9);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it("misses beside the ball and finds nothing when the ball lies behind", () => {
    expect(pickFace([], [0, 2, 4], [0, 0, -1])).toBeNull();
    expect(pickFace([], [0, 0, 4], [0, 0, 1])).toBeNull();
  });

  it("finds the table through the middle of the picture from the front, the foot from the back", () => {
    const { planes, facets } = solvePlan(FIRST_EXAMPLE);
    const under = (view: typeof HOME) => {
      const { from, along } = rayThrough(view, 1.5, 0, 0);
      return facets[pickFace(planes, from, along)?.face ?? -1]?.id;
    };
    expect(under(LOOKS.front)).toBe("table/1");
    expect(under(LOOKS.back)).toBe("foot/1");
  });
});
