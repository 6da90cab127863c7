import fc from "fast-check";
import hullOf from "quickhull3d";
import { expect, it } from "vitest";
import type { Plane } from "../../../src/core/geometry/plane.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { cross, distance, dot, scale, sub, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { direction, SEED, within } from "./mesh-support.ts";

/** The point v with v.a = v.b = v.c = 1: the corner where the three planes with duals a, b, c meet. */
function dualCorner(a: Vec3, b: Vec3, c: Vec3): Vec3 {
  const normal = cross(sub(b, a), sub(c, a));
  return scale(normal, 1 / dot(normal, a));
}

it("has the corners that the convex hull of the polar dual has faces, in the same places (quickhull3d)", () => {
  fc.assert(
    fc.property(
      fc.array(direction, { minLength: 40, maxLength: 90 }),
      fc.infiniteStream(within(0.4, 0.5)),
      (normals, depths) => {
        const planes = normals.map((n): Plane => ({ n, h: depths.next().value }));
        const solid = cutBall(planes);
        // the dual knows nothing of the ball: only bodies without round skin can be compared
        fc.pre(solid.skinArea === 0 && !solid.vanished);
        const duals = planes.map(({ n, h }) => scale(n, 1 / h));
        const faces = hullOf(
          duals.map(([x, y, z]): [number, number, number] => [x, y, z]),
          { skipTriangulation: true },
        );
        expect(solid.vertices).toHaveLength(faces.length);
        for (const [a, b, c] of faces) {
          const corner = dualCorner(duals[a], duals[b], duals[c]);
          const nearest = Math.min(...solid.vertices.map(({ at }) => distance(at, corner)));
          expect(nearest).toBeLessThan(1e-8);
        }
        const used = new Set(faces.flat());
        solid.facets.forEach((facet, i) => {
          expect(facet.swallowed).toBe(!used.has(i));
        });
      },
    ),
    // without bias to the ends of ranges, or too many directions coincide and skin is left
    { seed: SEED, numRuns: 40, unbiased: true },
  );
});
