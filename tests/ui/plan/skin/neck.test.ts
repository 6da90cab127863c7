import { describe, expect, it } from "vitest";
import { facetFrame, type Plane } from "../../../../src/core/geometry/plane.ts";
import { dot, length } from "../../../../src/core/geometry/vec.ts";
import { neckOf } from "../../../../src/ui/plan/skin/neck.ts";

const plane = (azimuth: number, h: number): Plane => ({ n: facetFrame(10, azimuth, "front").n, h });

describe("the neck of skin in a gap", () => {
  it("runs along both circles and lies on the sphere", () => {
    const [a, b] = [plane(0, 0.95), plane(44, 0.95)];
    const neck = neckOf(a, b);
    expect(neck.length).toBeGreaterThan(4);
    for (const { from } of neck) {
      expect(length(from)).toBeCloseTo(1, 9);
      const onA = Math.abs(dot(from, a.n) - a.h) < 1e-9;
      const onB = Math.abs(dot(from, b.n) - b.h) < 1e-9;
      expect(onA || onB).toBe(true);
    }
  });

  it("is closed", () => {
    const neck = neckOf(plane(0, 0.95), plane(44, 0.95));
    expect(neck.at(-1)?.to).toBe(neck[0].from);
  });

  it("is nothing where the circles touch or overlap, and where they are far apart", () => {
    expect(neckOf(plane(0, 0.9), plane(20, 0.9))).toEqual([]);
    expect(neckOf(plane(0, 0.99), plane(120, 0.99))).toEqual([]);
  });
});
