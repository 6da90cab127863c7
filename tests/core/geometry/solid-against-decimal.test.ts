import Decimal from "decimal.js";
import { describe, expect, it } from "vitest";
import type { Plane } from "../../../src/core/geometry/plane.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { normalize, type Vec3 } from "../../../src/core/geometry/vec.ts";

Decimal.set({ precision: 80 });
/** Every bit of a double, by its binary digits: its shortest decimal form would be another number. */
const d = (x: number): Decimal => new Decimal(x.toString(2).replace(/^-?/, "$&0b"));

/** Where three planes meet, by Cramer's rule with 80 digits from the very doubles that the solid was given. */
function exactCorner(planes: readonly Plane[]): Vec3 {
  const rows = planes.map(({ n }) => n.map(d));
  const det = (m: readonly (readonly Decimal[])[]): Decimal =>
    m[0][0]
      .mul(m[1][1].mul(m[2][2]).sub(m[1][2].mul(m[2][1])))
      .sub(m[0][1].mul(m[1][0].mul(m[2][2]).sub(m[1][2].mul(m[2][0]))))
      .add(m[0][2].mul(m[1][0].mul(m[2][1]).sub(m[1][1].mul(m[2][0]))));
  const whole = det(rows);
  const at = [0, 1, 2].map((k) =>
    det(rows.map((row, i) => row.map((x, j) => (j === k ? d(planes[i].h) : x))))
      .div(whole)
      .toNumber(),
  );
  return [at[0], at[1], at[2]];
}

const tilted = (tilt: number, azimuthDeg: number): Vec3 => {
  const t = (azimuthDeg * Math.PI) / 180;
  return normalize([Math.sin(tilt) * Math.cos(t), Math.sin(tilt) * Math.sin(t), Math.cos(tilt)]);
};

describe("corners that are hard for doubles", () => {
  it.each([1e-1, 1e-3, 1e-5])("where three planes tilted by %s radians meet near the pole", (tilt) => {
    const planes = [0, 120, 240].map((azimuth): Plane => ({ n: tilted(tilt, azimuth), h: 0.8 }));
    const { vertices } = cutBall(planes);
    expect(vertices).toHaveLength(1);
    const corner = exactCorner(planes);
    // rounding of the input itself moves the corner by 1e-16 / tilt
    for (let k = 0; k < 3; k++) expect(Math.abs(vertices[0].at[k] - corner[k])).toBeLessThan(1e-14 / tilt);
  });

  it.each([1e-2, 1e-4, 1e-6])("where two planes %s radians apart and a steep one meet", (tilt) => {
    const planes: Plane[] = [
      { n: [0, 0, 1], h: 0.6 },
      { n: tilted(tilt, 17), h: 0.6 },
      { n: normalize([0.3, 0.9, 0.1]), h: 0.4 },
    ];
    const { vertices } = cutBall(planes);
    expect(vertices).toHaveLength(1);
    const corner = exactCorner(planes);
    for (let k = 0; k < 3; k++) expect(Math.abs(vertices[0].at[k] - corner[k])).toBeLessThan(1e-14 / tilt);
  });

  it("where planes that differ by a part in a million share a facet's edge with the ball", () => {
    const tilt = 1e-6;
    const planes: Plane[] = [
      { n: [0, 0, 1], h: 0.6 },
      { n: tilted(tilt, 0), h: 0.6 },
    ];
    const { edges } = cutBall(planes);
    expect(edges).toHaveLength(1);
    // the line x = c, z = 0.6 with c = (h - 0.6 n_z) / n_x, and its ends on the unit sphere
    const c = d(planes[1].h)
      .sub(d(0.6).mul(d(planes[1].n[2])))
      .div(d(planes[1].n[0]));
    const half = d(1).sub(d(0.6).pow(2)).sub(c.pow(2)).sqrt();
    expect(edges[0].length).toBeCloseTo(half.mul(2).toNumber(), 9);
    for (const end of [edges[0].from, edges[0].to]) {
      expect(Math.abs(end[0] - c.toNumber())).toBeLessThan(1e-9);
      expect(Math.abs(end[1])).toBeCloseTo(half.toNumber(), 9);
    }
  });

  it("where a facet is all but tangent: its area keeps twelve digits", () => {
    for (const depth of [1e-3, 1e-6, 1e-8]) {
      const h = 1 - depth;
      const { facets } = cutBall([{ n: normalize([1, 2, 3]), h }]);
      const exact = d(1).sub(d(h).pow(2)).mul(Decimal.acos(-1)).toNumber();
      expect(facets[0].area / exact).toBeCloseTo(1, 12);
    }
  });
});
