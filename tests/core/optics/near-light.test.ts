import { describe, expect, it } from "vitest";
import { normalize, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { cameraFrom, cameraRay } from "../../../src/core/optics/camera.ts";
import { LIGHT_SETTINGS } from "../../../src/core/optics/light-settings.ts";
import {
  inUnits,
  type Light,
  type LightSetting,
  lightRadiance,
  type Panel,
} from "../../../src/core/optics/lights.ts";
import { plainMaterial } from "../../../src/core/optics/materials.ts";
import { renderRows } from "../../../src/core/optics/picture.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import { RESTS, restOnFacet } from "../../../src/core/optics/rest.ts";
import { makeScene, putOnTable } from "../../../src/core/optics/scene.ts";
import type { Rgb } from "../../../src/core/optics/spectrum.ts";
import { bareAt, type Tabletop } from "../../../src/core/optics/tabletop.ts";
import { packNearLight, packTabletop } from "../../../src/render/pack-tabletop.ts";
import { chance, clearPiece, randomDirection } from "./helpers.ts";

const DARK: Rgb = [0, 0, 0];
const GLOW: Rgb = [10, 8, 5];
const RADIUS_MM = 15;

type Shape = Pick<Panel, "towards" | "right" | "up" | "halfWidth" | "halfHeight" | "round"> & {
  readonly distance: number;
};

/** One even panel in the dark, `distance` units away. */
function panelAlone({ distance, ...shape }: Shape, rgb = GLOW): Light {
  const panel = { ...shape, columns: 1, rows: 1, bar: 0, soft: 1e-9, rgb, rgbBelow: rgb };
  const setting: LightSetting = {
    zenith: DARK,
    horizon: DARK,
    floor: DARK,
    nadir: DARK,
    spread: 1,
    panels: [{ ...panel, distanceMm: distance * RADIUS_MM }],
  };
  return { kind: "setting", setting, turnRad: 0 };
}

const OVERHEAD = { towards: [0, 1, 0], right: [1, 0, 0], up: [0, 0, -1] } as const;
const AHEAD = { towards: [0, 0, 1], right: [1, 0, 0], up: [0, 1, 0] } as const;

/** A piece on its side, so that the table lies at y = -1; glass of the index of air: it isn't there. */
function onTable(light: Light, index = 1) {
  const piece = { ...clearPiece(index), diameterMm: 2 * RADIUS_MM };
  const scene = putOnTable(makeScene({ piece, planes: [], light }), [0, 1, 0], -1, {
    material: plainMaterial([1, 1, 1]),
    radiusMm: RADIUS_MM,
  });
  return { scene, tabletop: scene.tabletop as Tabletop };
}

/** View factor of a disc from an element parallel to it, so far from its axis: J. R. Howell's catalogue of configuration factors (from memory). */
function ofDisc(radius: number, height: number, aside: number): number {
  const [h, r] = [height / aside, radius / aside];
  const z = 1 + h * h + r * r;
  return 0.5 * (1 - (z - 2 * r * r) / Math.sqrt(z * z - 4 * r * r));
}

/** The same of a rectangle that stands upright on the element's plane, c away, with a corner at its foot: Siegel and Howell, Thermal Radiation Heat Transfer (from memory). */
function ofUpright(wide: number, high: number, c: number): number {
  const [x, y] = [high / wide, c / wide];
  const s = Math.hypot(x, y);
  return (Math.atan(1 / y) - (y / s) * Math.atan(1 / s)) / (2 * Math.PI);
}

describe("light near by on a bare table", () => {
  const disc: Shape = { ...OVERHEAD, halfWidth: 0.3, halfHeight: 0.3, round: true, distance: 6 };
  /** How the panel stands over the table, radii. */
  const [radius, height] = [0.3 * 6, 7];

  it("of a disc overhead is its radiance times the view factor, at any distance from under it", () => {
    const { tabletop } = onTable(panelAlone(disc));
    for (const aside of [0.01, 2, 5, 12, 30]) {
      const [r, g, b] = bareAt(tabletop, [0.6 * aside, -1, -0.8 * aside]);
      const share = ofDisc(radius, height, aside);
      [r, g, b].forEach((v, c) => {
        expect(Math.abs(v / (GLOW[c] * share) - 1), `${aside} aside`).toBeLessThan(0.01);
      });
    }
  });

  it("of a rectangle that stands on the table is its radiance times the view factor of both halves", () => {
    // from the table, a unit below the piece's middle, up to five above that
    const upright = { ...AHEAD, halfWidth: 0.5, halfHeight: 5 / 6, round: false, distance: 6 };
    const { tabletop } = onTable(panelAlone(upright));
    for (const c of [3, 6, 9, 20]) {
      const [r] = bareAt(tabletop, [0, -1, 6 - c]);
      expect(Math.abs(r / (GLOW[0] * 2 * ofUpright(3, 6, c)) - 1), `${c} away`).toBeLessThan(0.03);
    }
  });

  it("is what paths find there, and the shader's square holds", () => {
    const light = panelAlone(disc);
    const { scene, tabletop } = onTable(light);
    const [size, fieldDeg, distance] = [8, 50, 9];
    const camera = cameraFrom(...restOnFacet(RESTS.side.down).from, distance, fieldDeg, [0, 1, 0]);
    const settings = { size, samples: 512, seed: 3, dispersion: false, bounces: null };
    const rows = renderRows(scene, camera, settings, 0, size, { lost: 0, meetings: 0 });
    let [places, mean] = [0, 0];
    for (let i = 0; i < size * size; i++) {
      const [x, y] = [i % size, Math.floor(i / size)];
      // the mean over a pixel
      let [expected, tabled] = [0, 0];
      for (let k = 0; k < 64; k++) {
        const [u, v] = [((k % 8) + 0.5) / 8, (Math.floor(k / 8) + 0.5) / 8];
        const d = cameraRay(camera, (2 * (x + u)) / size - 1, 1 - (2 * (y + v)) / size);
        const t = (-1 - camera.at[1]) / d[1];
        if (d[1] > -0.12) continue;
        const aside = Math.hypot(camera.at[0] + t * d[0], camera.at[2] + t * d[2]);
        // farther out few paths find it
        if (aside > 7) continue;
        expected += (GLOW[1] * ofDisc(radius, height, aside)) / 64;
        tabled++;
      }
      if (tabled < 64) continue;
      const off = rows[3 * i + 1] / expected - 1;
      expect(Math.abs(off)).toBeLessThan(0.5);
      mean += off;
      places++;
    }
    expect(places).toBeGreaterThan(12);
    expect(Math.abs(mean / places)).toBeLessThan(0.03);
    const square = packNearLight(tabletop);
    const [steepness, unit] = packTabletop(tabletop).nearSpread.value as readonly number[];
    if (!square) throw new Error("no square");
    for (const [i, k] of [
      [48, 48],
      [58, 30],
      [30, 45],
    ]) {
      const at = (n: number) => unit * Math.sinh(steepness * ((2 * n + 1) / square.width - 1));
      const share = ofDisc(radius, height, Math.hypot(at(i), at(k)));
      expect(Math.abs(square.rgba[4 * (k * square.width + i)] / (GLOW[0] * share) - 1)).toBeLessThan(0.01);
    }
  });

  it("falls off as it does over a real table, and not where the same panel is far away", () => {
    const near = onTable(panelAlone(disc)).tabletop;
    expect(bareAt(near, [7, -1, 0])[0]).toBeLessThan(0.4 * near.bare[0]);
    const far = onTable(panelAlone({ ...disc, distance: 1e6 })).tabletop;
    expect(bareAt(far, [7, -1, 0])[0] / far.bare[0]).toBeCloseTo(1, 4);
  });

  it("is white again from a white table and clear glass under an even light that hangs close over all of it", () => {
    const { scene } = onTable(
      panelAlone({ ...OVERHEAD, halfWidth: 1e5, halfHeight: 1e5, round: false, distance: 3 }, [1, 1, 1]),
      1.5,
    );
    const camera = cameraFrom(...restOnFacet(RESTS.side.down).from, 2.6, 50, [0, 1, 0]);
    const settings = { size: 12, samples: 16, seed: 5, dispersion: true, bounces: null };
    const rows = renderRows(scene, camera, settings, 0, 12, { lost: 0, meetings: 0 });
    for (const v of rows) expect(Math.abs(v - 1)).toBeLessThan(1e-3);
  });
});

describe("the radiance of a panel near by", () => {
  const random = chance(6);
  const between = (low: number, high: number) => low + (high - low) * nextRandom(random);
  const place = (): Vec3 => [between(-4, 4), between(-1, 3), between(-4, 4)];

  it("from the piece's middle is that of the same panel far away", () => {
    for (let k = 0; k < 300; k++) {
      const d = randomDirection(random);
      const light: Light = { kind: "setting", setting: LIGHT_SETTINGS["lamp-at-hand"], turnRad: 0.7 };
      expect(lightRadiance(inUnits(light, RADIUS_MM), d, [0, 0, 0])).toEqual(lightRadiance(light, d));
    }
  });

  it("from anywhere comes to that as it moves away", () => {
    const shape = { ...AHEAD, halfWidth: 0.4, halfHeight: 0.3, round: false };
    const far = inUnits(panelAlone({ ...shape, distance: 1e9 }), RADIUS_MM);
    let seen = 0;
    for (let k = 0; k < 2000; k++) {
      const [d, at] = [randomDirection(random), place()];
      const [value, alike] = [lightRadiance(far, d, at), lightRadiance(far, d)];
      if (alike[0] > 0) seen++;
      for (let c = 0; c < 3; c++) expect(value[c]).toBeCloseTo(alike[c], 6);
    }
    expect(seen).toBeGreaterThan(30);
  });

  it("is seen where a straight line meets the panel, from before it only, and turns with its light", () => {
    const shape: Shape = { ...AHEAD, halfWidth: 0.2, halfHeight: 0.25, round: true, distance: 8 };
    const turnRad = 0.8;
    const light = inUnits({ ...panelAlone(shape), turnRad } as Light, RADIUS_MM);
    const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
    let met = 0;
    for (let k = 0; k < 3000; k++) {
      const at = place();
      // a point of the panel's plane, in the light's own axes and then turned
      const [x, y] = [between(-2.4, 2.4), between(-3, 3)];
      const own: Vec3 = [x, y, 8];
      const there: Vec3 = [c * own[0] + s * own[2], own[1], -s * own[0] + c * own[2]];
      const d = normalize([there[0] - at[0], there[1] - at[1], there[2] - at[2]]);
      const isMet = Math.hypot(x / 1.6, y / 2) < 1;
      if (isMet) met++;
      expect(lightRadiance(light, d, at)[1]).toBeCloseTo(isMet ? GLOW[1] : 0, 9);
      const behind: Vec3 = [there[0] + 3 * d[0], there[1] + 3 * d[1], there[2] + 3 * d[2]];
      expect(lightRadiance(light, [-d[0], -d[1], -d[2]], behind)[1]).toBe(0);
    }
    expect(met).toBeGreaterThan(300);
  });
});
