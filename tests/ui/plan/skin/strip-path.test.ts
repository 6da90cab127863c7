import { geoArea } from "d3-geo";
import { describe, expect, it } from "vitest";
import { facetFrame } from "../../../../src/core/geometry/plane.ts";
import { type OutlinePiece, SKIN } from "../../../../src/core/geometry/solid-types.ts";
import { addScaled, scale, type Vec3 } from "../../../../src/core/geometry/vec.ts";
import { carriedOut, stripOf } from "../../../../src/ui/plan/skin/projection.ts";
import { pathData, ringArea, ringOnStrip, shiftsToShow } from "../../../../src/ui/plan/skin/strip-path.ts";

const strip = stripOf(1000, 0);
/** Area of a ring as a part of the round surface, 0..1. */
const share = (ring: readonly (readonly [number, number])[]) => ringArea(ring) / (strip.width * strip.height);

/** A whole circle at distance h, as the exact solid gives it. */
function circle(armAngleDeg: number, azimuthDeg: number, side: "front" | "back", h: number) {
  const frame = facetFrame(armAngleDeg, azimuthDeg, side);
  const from = addScaled(scale(frame.n, h), frame.across, Math.sqrt(1 - h * h));
  const outline: OutlinePiece[] = [{ kind: "arc", from, to: from, with: SKIN, length: 1 }];
  return { n: frame.n, outline };
}
const polygon = (points: readonly Vec3[]): OutlinePiece[] =>
  points.map((from, i) => ({ kind: "line", from, to: points[(i + 1) % points.length], with: 0, length: 1 }));

describe("outlines on the strip", () => {
  it("keeps the area of a cap wherever it lies: (1 - h) / 2 of the sphere", () => {
    for (const [arm, az, side] of [
      [0, 10, "front"],
      [40, 200, "front"],
      [40, 359, "back"],
      [75, 90, "back"],
    ] as const) {
      const { n, outline } = circle(arm, az, side, 0.95);
      expect(share(ringOnStrip(strip, outline, n).points) / 0.025).toBeCloseTo(1, 2);
    }
  });

  it("keeps the area of a cap that holds more than half of the sphere, wherever it lies", () => {
    for (const [arm, az, side] of [
      [0, 10, "front"],
      [0, 359, "front"],
      [35, 120, "front"],
      [90, 0, "front"],
      [80, 40, "back"],
    ] as const) {
      const { n, outline } = circle(arm, az, side, -0.3);
      const around = { ...strip, centre: scale(n, -0.65) };
      expect(share(ringOnStrip(around, outline, n).points) / 0.65).toBeCloseTo(1, 2);
    }
  });

  it("leaves points of the round surface where they are, from whatever centre facets are carried out", () => {
    const around = { ...strip, centre: [0.1, -0.2, -0.4] as const };
    const { outline } = circle(35, 120, "front", 0.4);
    const at = outline[0].from;
    carriedOut(around, at).forEach((x, i) => {
      expect(x).toBeCloseTo(at[i], 12);
    });
  });

  it("closes a cap around the front pole along the upper border, around the back pole along the lower", () => {
    const front = circle(88, 30, "front", 0.9);
    const ring = ringOnStrip(strip, front.outline, front.n).points;
    expect(share(ring)).toBeCloseTo(0.05, 4);
    expect(Math.min(...ring.map((p) => p[1]))).toBe(0);
    expect(ringOnStrip(strip, front.outline, front.n).isOutlineClosed).toBe(false);
    const back = circle(90, 0, "back", 0.9);
    const lower = ringOnStrip(strip, back.outline, back.n).points;
    expect(share(lower)).toBeCloseTo(0.05, 4);
    expect(Math.max(...lower.map((p) => p[1]))).toBe(strip.height);
  });

  it("draws a corner on the axis as a stretch of the border: eight wedges fill a hemisphere", () => {
    const at = (deg: number): Vec3 => [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180), 0];
    const wedge = polygon([[0, 0, 0.8], at(340), at(25)]);
    const ring = ringOnStrip(strip, wedge, [0.5, 0, 0.8]).points;
    expect(share(ring)).toBeCloseTo(45 / 360 / 2, 4);
  });

  it("shows a polygon of great circles with the spherical area that d3-geo gives", () => {
    const corners: [number, number][] = [
      [10, 5],
      [60, 20],
      [40, 55],
    ];
    const v = (lon: number, lat: number): Vec3 => {
      const [a, b] = [(lon * Math.PI) / 180, (lat * Math.PI) / 180];
      return [Math.cos(b) * Math.cos(a), Math.cos(b) * Math.sin(a), Math.sin(b)];
    };
    const ring = ringOnStrip(strip, polygon(corners.map(([a, b]) => v(a, b))), [0, 0, 1]).points;
    const clockwise = [...corners].reverse();
    const expected =
      geoArea({ type: "Polygon", coordinates: [[...clockwise, clockwise[0]]] }) / (4 * Math.PI);
    expect(share(ring)).toBeCloseTo(expected, 4);
  });

  it("shows a facet across the seam once at each border", () => {
    const { n, outline } = circle(10, 0, "front", 0.95);
    const ring = ringOnStrip(strip, outline, n).points;
    expect(shiftsToShow(strip, ring, 0, strip.width)).toHaveLength(2);
    const middle = circle(10, 180, "front", 0.95);
    expect(
      shiftsToShow(strip, ringOnStrip(strip, middle.outline, middle.n).points, 0, strip.width),
    ).toHaveLength(1);
  });

  it("draws nothing for a swallowed facet", () => {
    expect(ringOnStrip(strip, [], [0, 0, 1]).points).toEqual([]);
    expect(pathData([], true)).toBe("");
  });
});
