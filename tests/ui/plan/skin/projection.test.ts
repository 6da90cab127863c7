import { geoConicEqualArea } from "d3-geo";
import { describe, expect, it } from "vitest";
import {
  azimuthAt,
  azimuthOf,
  elevationAt,
  STANDARD_PARALLEL,
  STRIP_ASPECT,
  sineOfElevation,
  stripOf,
  stripX,
  stripY,
} from "../../../../src/ui/plan/skin/projection.ts";

const DEG = Math.PI / 180;
const direction = (az: number, el: number): [number, number, number] => [
  Math.cos(el) * Math.cos(az),
  Math.cos(el) * Math.sin(az),
  Math.sin(el),
];

describe("the unrolled strip", () => {
  it("agrees with the equal-area cylinder of d3-geo at the same standard parallels", () => {
    const strip = stripOf(2 * Math.PI * Math.cos(STANDARD_PARALLEL), -Math.PI);
    const reference = geoConicEqualArea()
      .parallels([STANDARD_PARALLEL / DEG, -STANDARD_PARALLEL / DEG])
      .rotate([0, 0])
      .center([0, 0])
      .scale(1)
      .translate([strip.width / 2, strip.height / 2]);
    for (const [az, el] of [
      [0, 0],
      [37, 12],
      [-120, 66],
      [170, -45],
    ]) {
      const [x, y] = reference([az, el]) ?? [Number.NaN, Number.NaN];
      expect(stripX(strip, az * DEG)).toBeCloseTo(x, 9);
      expect(stripY(strip, Math.sin(el * DEG))).toBeCloseTo(y, 9);
    }
  });

  it("gives zones of equal height equal area (Archimedes, On the Sphere and Cylinder, I.42)", () => {
    const strip = stripOf(1000, 0);
    const zone = (low: number, high: number) =>
      Math.abs(stripY(strip, high) - stripY(strip, low)) * strip.width;
    expect(zone(0.8, 1)).toBeCloseTo(zone(-0.1, 0.1), 9);
    expect(zone(-1, 1)).toBeCloseTo(strip.width * strip.height, 9);
  });

  it("shows shapes true at the standard parallel: equal steps east and north are equally long", () => {
    const strip = stripOf(1, 0);
    const step = 1e-6;
    const el = STANDARD_PARALLEL;
    const east = (stripX(strip, step) - stripX(strip, 0)) / (step * Math.cos(el));
    const north = (stripY(strip, Math.sin(el)) - stripY(strip, Math.sin(el + step))) / step;
    expect(north / east).toBeCloseTo(1, 5);
    expect(strip.height / strip.width).toBe(STRIP_ASPECT);
  });

  it("finds the direction under a place on the strip again", () => {
    const strip = stripOf(640, 0.7);
    const v = direction(1.9, -0.4);
    const x = stripX(strip, azimuthOf(v) ?? Number.NaN);
    expect(azimuthAt(strip, x)).toBeCloseTo(1.9, 12);
    expect(elevationAt(strip, stripY(strip, sineOfElevation(v)))).toBeCloseTo(-0.4, 12);
    expect(elevationAt(strip, -5)).toBeCloseTo(Math.PI / 2, 12);
  });

  it("gives directions on the axis no azimuth", () => {
    expect(azimuthOf([0, 0, 1])).toBeNull();
    expect(azimuthOf([1e-14, 0, -0.9])).toBeNull();
    expect(azimuthOf([1e-3, 0, -0.9])).toBe(0);
  });
});
