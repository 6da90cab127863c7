import { describe, expect, it } from "vitest";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { pieceSketch, viewFrom } from "../../../src/ui/bench/parts/piece-sketch.ts";

const pointsOf = (text: string): number[][] => text.split(" ").map((pair) => pair.split(",").map(Number));

describe("the piece drawn on paper", () => {
  it("is a full circle while nothing is cut", () => {
    const { silhouette, faces } = pieceSketch(cutBall([]), viewFrom(30, 20), () => false);
    for (const [x, y] of pointsOf(silhouette)) expect(Math.hypot(x, y)).toBeCloseTo(1, 3);
    expect(faces).toEqual([]);
  });

  it("loses a facet's cap from its outline when seen along the facet", () => {
    // Seen from +x, the flat at h = 0.6 to +y cuts the outline at 0.6 on the right.
    const solid = cutBall([{ n: [0, 1, 0], h: 0.6 }]);
    const { silhouette } = pieceSketch(solid, viewFrom(0, 0), () => false);
    const xs = pointsOf(silhouette).map(([x]) => x);
    expect(Math.max(...xs)).toBeCloseTo(0.6, 3);
    expect(Math.min(...xs)).toBeCloseTo(-1, 3);
  });

  it("shows the facets that face the eye, whole, and marks those in hand", () => {
    const solid = cutBall([
      { n: [1, 0, 0], h: 0.8 },
      { n: [-1, 0, 0], h: 0.8 },
    ]);
    const { faces } = pieceSketch(solid, viewFrom(0, 0), (i) => i === 0);
    expect(faces.map((face) => face.isOwn)).toEqual([true]);
    for (const [x, y] of pointsOf(faces[0].points)) expect(Math.hypot(x, y)).toBeCloseTo(0.6, 3);
  });

  it("keeps +y up when looking down on the pole", () => {
    const solid = cutBall([{ n: [0, Math.SQRT1_2, Math.SQRT1_2], h: 0.9 }]);
    const { faces } = pieceSketch(solid, viewFrom(0, 90), () => false);
    const middle = pointsOf(faces[0].points).reduce((sum, [, y]) => sum + y, 0);
    expect(middle).toBeLessThan(0);
  });
});
