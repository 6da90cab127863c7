import { describe, expect, it } from "vitest";
import { addScaled, dot, scale, sub, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { cameraFrom, cameraRay, lensOf, lensRay } from "../../../src/core/optics/camera.ts";
import { LIGHT_SETTINGS } from "../../../src/core/optics/light-settings.ts";
import type { LightSetting } from "../../../src/core/optics/lights.ts";
import { plainMaterial } from "../../../src/core/optics/materials.ts";
import { meteredGain } from "../../../src/core/optics/metering.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import { luminance } from "../../../src/core/optics/spectrum.ts";
import { lightOver, makeTabletop } from "../../../src/core/optics/tabletop.ts";
import { chance } from "./helpers.ts";

const [DISTANCE, FIELD_DEG] = [10, 18];
const pinhole = cameraFrom(30, 25, DISTANCE, FIELD_DEG);

/** Where a ray comes to the plane that lies `ahead` of the camera's middle. */
function at({ o, d }: { o: Vec3; d: Vec3 }, ahead: number): Vec3 {
  const t = (ahead - dot(sub(o, pinhole.at), pinhole.forward)) / dot(d, pinhole.forward);
  return addScaled(o, d, t);
}

describe("a lens", () => {
  const lens = { radius: 0.4, focus: 9.3 };
  const stream = chance(4);
  const random = (): number => nextRandom(stream);
  const rays = Array.from({ length: 300 }, () => {
    const [x, y] = [2 * random() - 1, 2 * random() - 1];
    return { x, y, ray: lensRay({ ...pinhole, lens }, x, y, () => [random(), random()]) };
  });
  const missed = (ahead: number) =>
    rays.map(({ x, y, ray }) => {
      const apart = sub(at(ray, ahead), at({ o: pinhole.at, d: cameraRay(pinhole, x, y) }, ahead));
      return Math.hypot(...apart);
    });

  it("is sharp in its plane, and blurs another as similar triangles say: radius times the distance from it over its own", () => {
    for (const apart of missed(lens.focus)) expect(apart).toBeLessThan(1e-12);
    for (const ahead of [8, 12]) {
      const most = (lens.radius * Math.abs(ahead - lens.focus)) / lens.focus;
      expect(Math.max(...missed(ahead))).toBeLessThanOrEqual(most + 1e-12);
      // the circle is filled evenly: the mean distance from its middle is two thirds of its radius
      const mean = missed(ahead).reduce((sum, v) => sum + v, 0) / rays.length;
      expect(Math.abs(mean / most - 2 / 3)).toBeLessThan(0.04);
    }
  });

  it("is the pinhole where its aperture is closed, and asks for no chance", () => {
    const ask = (): readonly [number, number] => {
      throw new Error("asked");
    };
    for (const camera of [pinhole, { ...pinhole, lens: { radius: 0, focus: 9 } }]) {
      const { o, d } = lensRay(camera, 0.3, -0.4, ask);
      expect(o).toEqual(pinhole.at);
      expect(d).toEqual(cameraRay(pinhole, 0.3, -0.4));
    }
  });

  it("has f / N across: a 50 mm lens of the small-picture camera at f/8, far away, sees 27 degrees through 6.25 mm", () => {
    // full height of 24 mm behind 50 mm: 2 atan(12 / 50)
    const field = (2 * Math.atan(12 / 50) * 180) / Math.PI;
    const [radiusMm, far] = [15, 1e6];
    expect(2 * lensOf(8, far, field, radiusMm).radius * radiusMm).toBeCloseTo(50 / 8, 3);
    // near things need more: at twice the focal length f is half of what the picture's distance is
    const near = lensOf(8, 50 / radiusMm + 0.7, field, radiusMm);
    expect(2 * near.radius * radiusMm).toBeCloseTo(25 / 8, 6);
  });
});

describe("metering by the light on the table", () => {
  const up = [0, 1, 0] as const;
  const stageIn = (setting: LightSetting, brightness: number) => {
    const { sweep: _, ...rest } = setting;
    const brighter = (rgb: readonly number[]) => scale(rgb as Vec3, brightness);
    const lit = {
      ...rest,
      zenith: brighter(rest.zenith),
      horizon: brighter(rest.horizon),
      panels: rest.panels.map((p) => ({ ...p, rgb: brighter(p.rgb), rgbBelow: brighter(p.rgbBelow) })),
    };
    const rgb = [0.8, 0.8, 0.8] as const;
    const light = lightOver({ kind: "setting", setting: lit, turnRad: 0 }, up, rgb);
    return makeTabletop(up, -1, { material: plainMaterial(rgb), radiusMm: 15 }, light);
  };

  it("shows a table alike in every light and however bright that is, with less of the light's colour", () => {
    for (const setting of [LIGHT_SETTINGS.overcast, LIGHT_SETTINGS["one-lamp"]]) {
      const [one, many] = [stageIn(setting, 1), stageIn(setting, 7)];
      const [a, b] = [meteredGain({ tabletop: one }), meteredGain({ tabletop: many })];
      for (let c = 0; c < 3; c++) {
        expect((b[c] * 7) / a[c]).toBeCloseTo(1, 9);
        // a quarter of the light's colour stays, by the logarithm
        const colour = one.bare[c] / luminance(one.bare);
        expect(one.bare[c] * a[c]).toBeCloseTo(0.83 * colour ** 0.25, 9);
      }
    }
    expect(meteredGain({ tabletop: null })).toEqual([1, 1, 1]);
  });
});
