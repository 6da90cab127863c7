import { describe, expect, it } from "vitest";
import { facetFrame, type Plane } from "../../../src/core/geometry/plane.ts";
import type { Vec3 } from "../../../src/core/geometry/vec.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import { walkPast } from "../../../src/core/optics/walk-past.ts";
import type { Piece } from "../../../src/core/plan/document.ts";
import { clearPiece } from "./helpers.ts";

const RIGHT: Vec3 = [1, 0, 0];
const UP: Vec3 = [0, 1, 0];
const FRONT: Vec3 = [0, 0, 1];
const core: Piece["inside"] = [{ kind: "core", diameterMm: 6, rgb: [1, 1, 1] }];

/** What one sees from straight in front. */
const seen = (planes: readonly Plane[], inside?: Piece["inside"]) =>
  walkPast(
    makeScene({ piece: { ...clearPiece(), inside }, planes, light: { kind: "uniform" } }),
    RIGHT,
    UP,
    FRONT,
  );

const facets = (count: number, armAngleDeg: number, h: number): Plane[] =>
  Array.from({ length: count }, (_, k) => ({ n: facetFrame(armAngleDeg, (360 * k) / count, "front").n, h }));

describe("what one sees of a piece as one walks past", () => {
  it("lets one see through a clear ball, but for its very rim, where light is bent by more than 90 degrees", () => {
    const { images, back, through } = seen([]);
    expect(images).toBe(0);
    expect(through).toBeGreaterThan(0.97);
    expect(back + through).toBeCloseTo(1, 6);
  });

  it("counts one image of a core in a ball", () => {
    expect(seen([], core).images).toBe(1);
  });

  it("counts more images of a core the more facets lean against the eye, at least one a facet", () => {
    const counts = [4, 6, 8].map((count) => seen(facets(count, 45, 0.6), core).images);
    counts.forEach((images, k) => {
      expect(images).toBeGreaterThanOrEqual([4, 6, 8][k]);
    });
    expect(counts[2]).toBeGreaterThan(counts[0]);
  });

  it("sends light back from a roof of 90 degrees behind a window: twice totally reflected at 45", () => {
    const s = Math.SQRT1_2;
    const roof: Plane[] = [
      { n: [0, 0, 1], h: 0.8 },
      { n: [s, 0, -s], h: 0.2 },
      { n: [-s, 0, -s], h: 0.2 },
    ];
    const { back, through } = seen(roof);
    expect(back).toBeGreaterThan(0.6);
    expect(back).toBeGreaterThan(through);
  });
});
