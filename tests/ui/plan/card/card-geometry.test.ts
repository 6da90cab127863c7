import { describe, expect, it } from "vitest";
import { facetFrame, type Plane } from "../../../../src/core/geometry/plane.ts";
import { cutBall } from "../../../../src/core/geometry/solid.ts";
import { SKIN } from "../../../../src/core/geometry/solid-types.ts";
import { flatFacet } from "../../../../src/ui/plan/card/card-geometry.ts";
import { CHECK_MM, cardPage } from "../../../../src/ui/plan/card/card-print.ts";

const RADIUS_MM = 15;
const plane = (arm: number, azimuth: number, h: number): Plane => ({
  n: facetFrame(arm, azimuth, "front").n,
  h,
});
/** A six-sided prism with a lid: sides share edges with each other and with the lid, and end in round skin below. */
const prism = cutBall([...[0, 60, 120, 180, 240, 300].map((az) => plane(0, az, 0.7)), plane(90, 0, 0.5)]);

describe("a facet laid flat", () => {
  it("has the sizes of the exact solid, in mm", () => {
    const flat = flatFacet(prism.facets[0], RADIUS_MM);
    expect(flat?.widthMm).toBeCloseTo(prism.facets[0].width * RADIUS_MM, 12);
    expect(flat?.heightMm).toBeCloseTo(prism.facets[0].height * RADIUS_MM, 12);
  });

  it("names at each side what lies there, and points outward from it", () => {
    const flat = flatFacet(prism.facets[6], RADIUS_MM);
    expect(flat?.sides.map((s) => s.with).sort()).toEqual([0, 1, 2, 3, 4, 5]);
    for (const { middle, outward } of flat?.sides ?? []) {
      expect(middle[0] * outward[0] + middle[1] * outward[1]).toBeGreaterThan(0);
      expect(Math.hypot(...outward)).toBeCloseTo(1, 9);
    }
  });

  it("has the perimeter of the exact solid when its sides are added up", () => {
    const flat = flatFacet(prism.facets[0], RADIUS_MM);
    const around = (flat?.sides ?? []).reduce((sum, s) => sum + s.lengthMm, 0);
    expect(around).toBeCloseTo(prism.facets[0].perimeter * RADIUS_MM, 9);
    expect(flat?.sides.some((s) => s.with === SKIN)).toBe(true);
  });

  it("draws a whole circle, which has one side and no corner", () => {
    const alone = cutBall([plane(30, 0, 0.9)]);
    const flat = flatFacet(alone.facets[0], RADIUS_MM);
    expect(flat?.sides).toHaveLength(1);
    expect(flat?.path.match(/A/g)).toHaveLength(2);
    expect(flat?.widthMm).toBeCloseTo(2 * Math.sqrt(1 - 0.81) * RADIUS_MM, 9);
  });

  it("is nothing for a facet of which nothing is left", () => {
    const gone = cutBall([plane(0, 0, 0.5), plane(0, 0, 0.9)]);
    expect(flatFacet(gone.facets[1], RADIUS_MM)).toBeNull();
  });
});

describe("the printed card", () => {
  const flat = flatFacet(prism.facets[6], RADIUS_MM);
  if (!flat) throw new Error("the lid is there");
  const page = cardPage(
    flat,
    {
      title: "Lid & <top>",
      setting: "90.0°",
      wide: "a",
      high: "b",
      sides: flat.sides.map((s) => String(s.with)),
      check: "c",
      seen: "d",
      caution: "e",
    },
    "en",
  );

  it("keeps millimetres of glass millimetres of paper: its view box is as many units wide as it is mm", () => {
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(page) ?? [];
    const [, boxWidth, boxHeight] = /viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"/.exec(page) ?? [];
    expect(boxWidth).toBe(width);
    expect(boxHeight).toBe(height);
    expect(Number(height)).toBeGreaterThan(flat.heightMm);
  });

  it("has a check bar of known length", () => {
    expect(page).toContain(`inline-size:${CHECK_MM}mm`);
  });

  it("can't be broken by a tier's name", () => {
    expect(page).toContain("Lid &amp; &lt;top&gt;");
    expect(page).not.toContain("<top>");
  });
});
