import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/core/geometry/vec.ts";
import { LIGHT_SETTINGS } from "../../../src/core/optics/light-settings.ts";
import {
  type LightSetting,
  lightRadiance,
  meanRadiance,
  settingRadiance,
} from "../../../src/core/optics/lights.ts";
import { encodeSrgb, toBytes, toneMap } from "../../../src/core/optics/tone-map.ts";
import { chance, randomDirection } from "./helpers.ts";

function panedOf({ panels }: LightSetting) {
  const found = panels.find(({ columns }) => columns > 1);
  if (!found) throw new Error("this light has no window");
  return found;
}

describe("our lights", () => {
  it("are at least four, each with its own brightest direction and some shape to show in the glass", () => {
    const random = chance(1);
    const directions = Array.from({ length: 4000 }, () => randomDirection(random));
    expect(Object.keys(LIGHT_SETTINGS).length).toBeGreaterThanOrEqual(4);
    for (const [name, setting] of Object.entries(LIGHT_SETTINGS)) {
      const values = directions.map((d) => settingRadiance(setting, d)[1]);
      expect(Math.max(...values), name).toBeGreaterThan(
        4 * (values.reduce((a, b) => a + b, 0) / values.length) - 2,
      );
      expect(Math.min(...values), name).toBeGreaterThanOrEqual(0);
    }
  });

  it("turn about +y as a whole, counter-clockwise seen from above", () => {
    const setting = LIGHT_SETTINGS["north-window"];
    const quarter = { kind: "setting", setting, turnRad: Math.PI / 2 } as const;
    const random = chance(2);
    for (let i = 0; i < 200; i++) {
      const d = randomDirection(random);
      // Seen from above (+y) with +z ahead of the viewer's feet, counter-clockwise leads from +z to +x.
      const turned: Vec3 = [d[2], d[1], -d[0]];
      const [a, b] = [settingRadiance(setting, d), lightRadiance(quarter, turned)];
      for (let c = 0; c < 3; c++) expect(b[c]).toBeCloseTo(a[c], 6);
    }
  });

  it("have a window whose bars are darker than its panes", () => {
    const setting = LIGHT_SETTINGS["north-window"];
    const window = panedOf(setting);
    const at = (x: number, y: number): number => {
      const v = [0, 1, 2].map(
        (k) =>
          window.towards[k] + x * window.halfWidth * window.right[k] + y * window.halfHeight * window.up[k],
      );
      const l = Math.hypot(...v);
      return settingRadiance(setting, [v[0] / l, v[1] / l, v[2] / l])[1];
    };
    // Three panes across, two up.
    expect(at(1 / 3, 0.5)).toBeLessThan(0.2 * at(0.6, 0.5));
    expect(at(0.6, 0)).toBeLessThan(0.2 * at(0.6, 0.5));
  });
});

describe("the tone curve", () => {
  it("keeps grey grey, rises, and never passes 1", () => {
    let last = -1;
    for (let v = 0; v < 50; v += 0.01) {
      const [r, g, b] = toneMap([v, v, v]);
      expect(g).toBe(r);
      expect(b).toBe(r);
      expect(r).toBeGreaterThanOrEqual(last);
      expect(r).toBeLessThanOrEqual(1);
      last = r;
    }
  });

  it("shows a grey card and everything darker as it is: a light table's white paper is what is first rolled off", () => {
    // 18 % is the grey card's reflectance (common practice, no source); 3 and 9 % are what would sink if blacks were drawn down
    for (const v of [0.005, 0.03, 0.09, 0.18, 0.5, 0.79])
      expect(toneMap([v, 0.9 * v, 0.5 * v])).toEqual([v, 0.9 * v, 0.5 * v]);
  });

  it("leads from black to black and from a bright light to near white", () => {
    expect(toneMap([0, 0, 0])).toEqual([0, 0, 0]);
    for (const v of toneMap([400, 300, 200])) expect(v).toBeGreaterThan(0.9);
  });

  it("encodes both ends of sRGB exactly and holds colours outside it at its border", () => {
    expect(encodeSrgb(0)).toBe(0);
    expect(encodeSrgb(1)).toBeCloseTo(1, 12);
    const [r, g, b] = toBytes(Float32Array.from([-1, 0, 1e9]), 1);
    expect(r).toBe(g);
    expect(b).toBe(255);
    expect(toBytes(Float32Array.from([0.5, 0.5, 0.5]), 2)).toEqual(toBytes(Float32Array.from([1, 1, 1]), 1));
  });
});

describe("the mean of a light from all around", () => {
  const setting = LIGHT_SETTINGS["showroom-spots"];

  it("is white in uniform light", () => {
    expect(meanRadiance({ kind: "uniform" })).toEqual([1, 1, 1]);
  });

  it("of a panel alone is its radiance times its share of the sphere", () => {
    const black = [0, 0, 0] as const;
    const window = panedOf(LIGHT_SETTINGS["north-window"]);
    const [a, b] = [window.halfWidth, window.halfHeight];
    const alone: LightSetting = {
      zenith: black,
      horizon: black,
      floor: black,
      nadir: black,
      spread: 1,
      panels: [{ ...window, columns: 1, rows: 1, soft: 1e-6, rgb: [1, 2, 4], rgbBelow: [1, 2, 4] }],
    };
    // Solid angle of a rectangle seen from above its middle (A. Khadjavi, J. Opt. Soc. Am. 58, 1417 (1968)), sides 2a and 2b at distance 1.
    const share = (4 * Math.atan((a * b) / Math.sqrt(1 + a * a + b * b))) / (4 * Math.PI);
    const mean = meanRadiance({ kind: "setting", setting: alone, turnRad: 0 });
    [1, 2, 4].forEach((radiance, c) => {
      expect(Math.abs(mean[c] / (radiance * share) - 1)).toBeLessThan(0.02);
    });
  });

  it("is what random directions see, and does not change when the light is turned", () => {
    const random = chance(5);
    const count = 200_000;
    const sum = [0, 0, 0];
    for (let k = 0; k < count; k++)
      settingRadiance(setting, randomDirection(random)).forEach((v, c) => {
        sum[c] += v / count;
      });
    const mean = meanRadiance({ kind: "setting", setting, turnRad: 0 });
    for (let c = 0; c < 3; c++) expect(Math.abs(mean[c] / sum[c] - 1)).toBeLessThan(0.03);
    expect(meanRadiance({ kind: "setting", setting, turnRad: 1 })).toEqual(mean);
  });

  it("of a picture weighs each row by the band of the sphere that it covers", () => {
    const [width, height] = [8, 4];
    const data = new Float32Array(width * height * 3);
    // The upper of four rows reaches from the zenith down to 45 degrees: (1 - cos 45) / 2 of the sphere.
    data.fill(1, 0, width * 3);
    const [share] = meanRadiance({ kind: "picture", picture: { width, height, data }, turnRad: 0.3 });
    expect(share).toBeCloseTo((1 - Math.SQRT1_2) / 2, 7);
  });
});
