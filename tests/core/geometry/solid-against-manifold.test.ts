import fc from "fast-check";
import { expect, it } from "vitest";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { loadManifold, planesWithin, SEED, trimByPlanes } from "./mesh-support.ts";

it("agrees in volume and area with the same cuts of a fine sphere by manifold-3d, to the sphere's own error", async () => {
  const { Manifold } = await loadManifold();
  const SEGMENTS = 256;
  const sphere = Manifold.sphere(1, SEGMENTS);
  // what the polyhedron lacks of the ball bounds what any part of it can lack
  const lacksVolume = (4 * Math.PI) / 3 - sphere.volume();
  const lacksArea = 4 * Math.PI - sphere.surfaceArea();
  fc.assert(
    fc.property(planesWithin(0.3, 0.98, 14), (planes) => {
      const exact = cutBall(planes);
      const theirs = trimByPlanes(sphere, planes);
      const volume = exact.volume - theirs.volume();
      expect(volume).toBeGreaterThan(-1e-6);
      expect(volume).toBeLessThan(lacksVolume + 1e-6);
      const area = exact.facetArea + exact.skinArea - theirs.surfaceArea();
      expect(Math.abs(area)).toBeLessThan(4 * lacksArea);
    }),
    { seed: SEED, numRuns: 12, unbiased: true },
  );
});
