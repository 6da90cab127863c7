import { describe, expect, it } from "vitest";
import {
  chordOf,
  cutSection,
  dopOutline,
  rimTicks,
  tierDirection,
  toScreen,
  toSection,
} from "../../../../src/ui/plan/profile/profile-geometry.ts";

const area = (polygon: readonly (readonly [number, number])[]) =>
  polygon.reduce((sum, [x, y], i) => {
    const [u, v] = polygon[(i + 1) % polygon.length];
    return sum + (x * v - u * y) / 2;
  }, 0);

describe("the half-section", () => {
  it("ends chords on the round surface at the plane's distance from the centre", () => {
    for (const side of ["front", "back"] as const) {
      const chord = chordOf(side, 36.5, 0.9);
      const [r, z] = tierDirection(side, 36.5);
      for (const end of [chord!.poleEnd, chord!.girdleEnd]) {
        expect(Math.hypot(...end)).toBeCloseTo(1, 12);
        expect(end[0] * r + end[1] * z).toBeCloseTo(0.9, 12);
      }
      expect(Math.abs(chord!.poleEnd[1])).toBeGreaterThan(Math.abs(chord!.girdleEnd[1]));
    }
  });

  it("ends a steep chord on the axis", () => {
    const chord = chordOf("front", 85, 0.8);
    expect(chord!.poleEnd[0]).toBeCloseTo(0, 12);
    expect(chordOf("back", 90, 0.8)!.poleEnd).toEqual([0, -0.8]);
  });

  it("has no chord for a plane that misses the piece", () => {
    expect(chordOf("front", 20, 1)).toBeNull();
  });

  it("takes a segment of (rho - sin rho cos rho) from the half-disc for one cut", () => {
    const h = 0.9;
    const rho = Math.acos(h);
    const whole = area(cutSection([], 0.1));
    const cut = area(cutSection([{ direction: tierDirection("front", 30), h }], 0.1));
    expect(whole).toBeCloseTo(Math.PI / 2, 5);
    expect(whole - cut).toBeCloseTo(rho - Math.sin(rho) * Math.cos(rho), 4);
  });

  it("counts degrees along the rim from the equator to both poles", () => {
    const numbered = rimTicks(5, 30).filter((t) => t.isNumbered);
    expect(numbered.map((t) => `${t.side} ${t.degrees}`)).toEqual([
      "front 0",
      "front 30",
      "front 60",
      "front 90",
      "back 30",
      "back 60",
      "back 90",
    ]);
  });

  it("stands the dop's rim on the round surface", () => {
    const { points } = dopOutline("back", 1, 0.6);
    expect(Math.hypot(...points[1])).toBeCloseTo(1, 12);
    expect(points[3][1]).toBeCloseTo(-Math.sqrt(0.75) - 0.6, 12);
  });

  it("finds a place of the picture in the section again", () => {
    const frame = { cx: 40, cy: 200, radius: 150 };
    const [x, y] = toScreen(frame, [0.3, -0.6]);
    expect(toSection(frame, x, y)[0]).toBeCloseTo(0.3, 12);
    expect(toSection(frame, x, y)[1]).toBeCloseTo(-0.6, 12);
  });
});
