import { describe, expect, it } from "vitest";
import { CROPS, placed, sizeOf } from "../../../src/ui/look/crops.ts";
import { throughLens, viewOf } from "../../../src/ui/look/traced.ts";
import { HOME } from "../../../src/ui/piece/camera.ts";

describe("a picture's crop", () => {
  it("has the longer side that is asked for, in the proportions its name says", () => {
    expect(sizeOf("story", 1920)).toEqual({ width: 1080, height: 1920 });
    expect(sizeOf("shop", 1350)).toEqual({ width: 1080, height: 1350 });
    expect(sizeOf("square", 1080)).toEqual({ width: 1080, height: 1080 });
  });

  it("shows the whole ball with room around it, wherever the eye stood", () => {
    const close = { ...HOME, distance: 1.7, panX: 1, panY: -1 };
    for (const crop of CROPS.filter((each) => each !== "screen")) {
      const { width, height } = sizeOf(crop, 1000);
      const eye = placed(close, crop);
      const halfHeight = Math.tan((viewOf(eye, width / height).fieldDeg * Math.PI) / 360);
      // the ball's outline from where the eye stands: a cone of sine 1 / distance
      const reach = Math.tan(Math.asin(1 / eye.distance)) + Math.abs(eye.panY) / eye.distance;
      const halfWidth = (halfHeight * width) / height;
      expect(reach).toBeLessThan(0.9 * Math.min(halfWidth, halfHeight));
      expect(reach).toBeGreaterThan(0.6 * Math.min(halfWidth, halfHeight));
      expect([eye.azimuthDeg, eye.elevationDeg]).toEqual([close.azimuthDeg, close.elevationDeg]);
    }
    expect(placed(close, "screen")).toBe(close);
  });
});

describe("a lens before the eye", () => {
  it("is sharp on the front of the piece, wider open for a smaller f-number, closed without one", () => {
    const view = viewOf(HOME, 1);
    expect(throughLens(view, HOME, { fNumber: null, radiusMm: 15 })).toBe(view);
    const at = (fNumber: number) => throughLens(view, HOME, { fNumber, radiusMm: 15 }).lens;
    expect(at(4)?.radius).toBeCloseTo(2 * (at(8)?.radius ?? 0), 12);
    expect(at(8)?.focus).toBeGreaterThan(HOME.distance - 1);
    expect(at(8)?.focus).toBeLessThan(HOME.distance);
  });
});
