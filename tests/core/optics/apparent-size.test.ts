import { describe, expect, it } from "vitest";
import { cross, length, sub, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { realExtent, realSizeMm, seenExtent } from "../../../src/core/optics/apparent-size.ts";
import { enterBody, pointOnBody } from "../../../src/core/optics/body.ts";
import { refractRay } from "../../../src/core/optics/fresnel.ts";
import type { Scene } from "../../../src/core/optics/scene.ts";
import { clearPiece, smoothScene } from "./helpers.ts";

/** Traces the parallel ray at height b in the plane x = 0 into a ball and gives how far it passes the point. */
function missDistance(scene: Scene, b: number, at: Vec3, n: number): number {
  const [o, d]: [Vec3, Vec3] = [
    [0, b, 5],
    [0, 0, -1],
  ];
  const entry = enterBody(scene, o, d);
  if (!entry) return Number.POSITIVE_INFINITY;
  const p = pointOnBody(scene, o, d, entry.t, entry.surface);
  return length(cross(sub(at, p), refractRay(d, p, -(d[2] * p[2]), 1 / n)));
}

describe("the size of what is inside", () => {
  it("looks n times larger at the centre, exactly, while that fits the ball", () => {
    for (const n of [1.4714, 1.52, 1.9])
      for (const r of [0.01, 0.1, 0.3, 0.5]) expect(seenExtent(r, 0, 0, n)).toBeCloseTo(2 * n * r, 12);
    expect(seenExtent(0.9, 0, 0, 1.5)).toBe(2);
  });

  it("agrees with rays traced through the ball, also off the centre", () => {
    const n = 1.5;
    const scene = smoothScene([], n);
    for (const [r, y, z] of [
      [0.2, 0, 0],
      [0.15, 0, 0.5],
      [0.15, 0, -0.4],
      [0.2, 0.3, 0.1],
      [0.1, 0.4, -0.2],
    ]) {
      const heights = Array.from({ length: 20_001 }, (_, i) => -0.99999 + (i / 20_000) * 1.99998);
      const met = heights.filter((b) => missDistance(scene, b, [0, y, z], n) <= r);
      const traced = met[met.length - 1] - met[0];
      expect(Math.abs(seenExtent(r, y, z, n) - traced), `r ${r} at ${y}, ${z}`).toBeLessThan(3e-4);
    }
  });

  it("is converted back by the same rays", () => {
    for (const [r, y, z] of [
      [0.2, 0, 0],
      [0.2, 0.2, 0.3],
      [0.05, 0.1, -0.5],
    ])
      expect(realExtent(seenExtent(r, y, z, 1.5), y, z, 1.5)).toBeCloseTo(2 * r, 9);
  });

  it("stays as typed unless it was typed as seen", () => {
    const piece = clearPiece(1.5);
    expect(realSizeMm(piece, { diameterMm: 9 }, 1.5)).toBe(9);
    expect(realSizeMm(piece, { diameterMm: 9, sizeAs: "real" }, 1.5)).toBe(9);
    expect(realSizeMm(piece, { diameterMm: 9, sizeAs: "seen" }, 1.5)).toBeCloseTo(6, 12);
  });

  it("is held at the least size that fills the ball when more than the ball was asked for", () => {
    expect(realSizeMm(clearPiece(1.5), { diameterMm: 60, sizeAs: "seen" }, 1.5)).toBeCloseTo(20, 12);
  });
});
