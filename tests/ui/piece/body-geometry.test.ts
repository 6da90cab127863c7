import { describe, expect, it } from "vitest";
import { SKIN } from "../../../src/core/geometry/solid-types.ts";
import { solid, solved } from "../../../src/state/derived.ts";
import { EXAMPLES } from "../../../src/ui/examples.ts";
import { type BodyArrays, ballGeometry, facetArrays } from "../../../src/ui/piece/body-geometry.ts";

const corner = (a: Float32Array, i: number): [number, number, number] => [
  a[3 * i],
  a[3 * i + 1],
  a[3 * i + 2],
];
const minus = (a: readonly number[], b: readonly number[]) => a.map((x, i) => x - b[i]);
const dot = (a: readonly number[], b: readonly number[]) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: readonly number[], b: readonly number[]) => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Signed area of each facet's triangles, seen along their normal. */
function areasOf({ positions, normals, faces }: BodyArrays): Map<number, number> {
  const areas = new Map<number, number>();
  for (let i = 0; i < faces.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => corner(positions, i + k));
    const twice = dot(cross(minus(b, a), minus(c, a)), corner(normals, i));
    areas.set(faces[i], (areas.get(faces[i]) ?? 0) + twice / 2);
  }
  return areas;
}

describe("the piece as it is drawn", () => {
  it.each(EXAMPLES.map((plan) => [plan.name, plan] as const))(
    "shows every facet of %s at its exact area, turned outward",
    (_, plan) => {
      const { facets } = solid(plan);
      const areas = areasOf(facetArrays(facets));
      facets.forEach((facet, i) => {
        if (facet.swallowed) expect(areas.has(i)).toBe(false);
        // chords of 2.5 degrees take at most a thousandth from a whole circle
        else expect(Math.abs((areas.get(i) ?? 0) / facet.area - 1)).toBeLessThan(1e-3);
      });
    },
  );

  it("puts every corner of a facet on its plane", () => {
    const plan = EXAMPLES[0];
    const { planes } = solved(plan);
    const { positions, faces } = facetArrays(solid(plan).facets);
    faces.forEach((face, i) => {
      expect(Math.abs(dot(planes[face].n, corner(positions, i)) - planes[face].h)).toBeLessThan(1e-6);
    });
  });

  it("draws the skin from the whole ball", () => {
    const ball = ballGeometry(64).toNonIndexed();
    const [positions, normals, faces] = ["position", "normal", "face"].map(
      (name) => ball.getAttribute(name).array as Float32Array,
    );
    expect(new Set(faces)).toEqual(new Set([SKIN]));
    expect((areasOf({ positions, normals, faces }).get(SKIN) ?? 0) / (4 * Math.PI)).toBeCloseTo(1, 2);
  });
});
