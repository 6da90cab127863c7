/** A photograph turned into the inside: against rays followed by hand, and against photographs that the tracer itself takes. */
import { describe, expect, it } from "vitest";
import { cameraFrom } from "../../../src/core/optics/camera.ts";
import { decodePicture, rastersOf } from "../../../src/core/optics/decode-picture.ts";
import {
  insideFromPhoto,
  largestShown,
  mirrored,
  type PhotoSetting,
} from "../../../src/core/optics/photo.ts";
import { renderRows } from "../../../src/core/optics/picture.ts";
import type { Raster } from "../../../src/core/optics/raster.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import { encodeSrgb } from "../../../src/core/optics/tone-map.ts";
import { withPhoto } from "../../../src/core/optics/with-photo.ts";
import type { InsideDesign, Plan } from "../../../src/core/plan/document.ts";
import { pictureFile } from "../../../src/core/plan/pictures.ts";
import { QUARTERS, raster } from "./pictures.ts";

/** Distance from the axis at which the ray with share s of the outline meets the plane z, or null: angles, no vectors. */
function byAngles(s: number, distance: number, n: number, z: number): number | null {
  const outline = Math.asin(1 / distance);
  const alpha = Math.atan(s * Math.tan(outline));
  // triangle camera, centre, skin: law of sines
  const incidence = Math.asin(Math.min(1, distance * Math.sin(alpha)));
  const polar = incidence - alpha;
  const refracted = Math.asin(Math.sin(incidence) / n);
  // direction of the refracted ray against the axis, towards it
  const lean = polar - refracted;
  const [x, h] = [Math.sin(polar), Math.cos(polar)];
  if (h < z) return null;
  const r = x - (h - z) * Math.tan(lean);
  return r * r + z * z <= 1 + 1e-9 ? r : null;
}

const SETTINGS: readonly PhotoSetting[] = [
  { distance: 10, index: 1.47, shape: "disc", depth: 0 },
  { distance: 1.6, index: 1.47, shape: "disc", depth: 0.3 },
  { distance: 40, index: 1.52, shape: "disc", depth: -0.5 },
  { distance: 100, index: 1.52, shape: "disc", depth: -0.93 },
  { distance: 8, index: 1, shape: "disc", depth: 0.2 },
];

describe("where a place of a sheet was seen", () => {
  it.each(SETTINGS)("is where brute force finds it nearest the middle: %o", (setting) => {
    // a photograph whose colour is its place: red = x, green = y
    const N = 256;
    const photo = raster(N, N, (x, y) => [Math.floor(256 * x), Math.floor(256 * y), 0, 255]);
    const outline = { x: 130, y: 120, r: 100 };
    const radius = largestShown(setting);
    const size = 33;
    const made = insideFromPhoto(photo, outline, setting, radius, size);
    const shares = Array.from({ length: 20_001 }, (_, i) => i / 20_000);
    const curve = shares.map((s) => byAngles(s, setting.distance, setting.index, setting.depth));
    let checked = 0;
    for (let row = 0; row < size; row++)
      for (let column = 0; column < size; column++) {
        const [x, y] = [(2 * column + 1) / size - 1, 1 - (2 * row + 1) / size];
        const r = Math.hypot(x, y) * radius;
        const at = 4 * (row * size + column);
        if (Math.hypot(x, y) > 0.97) continue;
        const first = curve.findIndex((value) => value !== null && Math.abs(value) >= r);
        if (first < 0) {
          expect(made.rgba[at + 3]).toBe(0);
          continue;
        }
        const share = r === 0 ? 0 : shares[first] * Math.sign(curve[first] ?? 0);
        const k = r === 0 ? 0 : (share * outline.r) / Math.hypot(x, y);
        const [u, v] = [outline.x + k * x, outline.y - k * y];
        expect(made.rgba[at + 3]).toBe(255);
        // one byte is one pixel of the photograph
        expect(Math.abs(made.rgba[at] - (u - 0.5))).toBeLessThan(1.5);
        expect(Math.abs(made.rgba[at + 1] - (v - 0.5))).toBeLessThan(1.5);
        checked++;
      }
    expect(checked).toBeGreaterThan(500);
  });

  it.each(SETTINGS)("shows no larger disc than brute force: %o", (setting) => {
    const found = Array.from({ length: 20_001 }, (_, i) =>
      Math.abs(byAngles(i / 20_000, setting.distance, setting.index, setting.depth) ?? 0),
    );
    expect(Math.abs(largestShown(setting) - Math.max(...found))).toBeLessThan(1e-4);
  });

  it("leaves out what lies beyond the photograph", () => {
    const photo = raster(50, 100, () => [200, 100, 50, 255]);
    const made = insideFromPhoto(photo, { x: 50, y: 50, r: 40 }, SETTINGS[0], 0.5, 20);
    expect(made.rgba[4 * (10 * 20 + 2) + 3]).toBe(255);
    expect(made.rgba[4 * (10 * 20 + 17) + 3]).toBe(0);
  });
});

const SIZE = 160;
const FIELD_DEG = 13;
const DISTANCE = 10;
const OUTLINE_R = (Math.tan(Math.asin(1 / DISTANCE)) / Math.tan((FIELD_DEG * Math.PI) / 360)) * (SIZE / 2);

const BARE: Plan = {
  format: "glintwright-plan",
  version: 1,
  name: "ball",
  piece: { diameterMm: 30, glass: { name: "clear", nd: 1.5, vd: 60, densityGcm3: 2.5 } },
  rig: { wheelStops: 96 },
  tiers: [],
};

/** The tracer's photograph of a ball with something inside, as bytes. */
function photograph(
  inside: readonly InsideDesign[],
  rasters: ReadonlyMap<string, Raster>,
  front: boolean,
): Raster {
  const scene = makeScene({
    piece: { ...BARE.piece, inside },
    planes: [],
    light: { kind: "uniform" },
    rasters,
  });
  const settings = { size: SIZE, samples: 6, seed: 5, dispersion: false, bounces: null };
  const camera = cameraFrom(0, front ? 90 : -90, DISTANCE, FIELD_DEG);
  const rows = renderRows(scene, camera, settings, 0, SIZE, { lost: 0, meetings: 0 });
  const rgba = new Uint8Array(4 * SIZE * SIZE).fill(255);
  for (let i = 0; i < SIZE * SIZE; i++)
    for (let c = 0; c < 3; c++) rgba[4 * i + c] = Math.round(255 * encodeSrgb(Math.min(1, rows[3 * i + c])));
  return { width: SIZE, height: SIZE, rgba };
}

const wish = (
  side: "front" | "back",
  shape: "disc" | "core",
  depthMm: number,
  diameterMm: number | null,
) => ({
  outline: { x: SIZE / 2, y: SIZE / 2, r: OUTLINE_R },
  distanceMm: 15 * DISTANCE,
  side,
  shape,
  depthMm,
  diameterMm,
});

const picturesOf = (plan: Plan) =>
  new Map(
    Object.entries(plan.pictures ?? {}).map(([id, url]) => {
      const file = pictureFile(url);
      if (!file) throw new Error("no picture");
      return [id, decodePicture(file)];
    }),
  );

describe("a known picture, from its own photograph", () => {
  it.each([
    ["disc", "front", 0, 16],
    ["disc", "front", -4, 12],
    ["disc", "back", 3, 12],
    ["core", "front", 0, 14],
    ["core", "back", 2, 12],
  ] as const)("%s from the %s at %d mm", (shape, side, depthMm, diameterMm) => {
    const item: InsideDesign = {
      kind: "picture",
      shape,
      diameterMm,
      atMm: [0, 0, depthMm],
      picture: "q",
      ...(side === "back" ? { back: "q" } : {}),
    };
    const photo = photograph([item], new Map([["q", QUARTERS]]), side === "front");
    const plan = withPhoto(BARE, photo, wish(side, shape, depthMm, diameterMm));
    const made = [...picturesOf(plan).values()][0];
    const upright = side === "back" ? mirrored(made) : made;
    let [checked, wrong] = [0, 0];
    const n = made.width;
    for (let row = 0; row < n; row++)
      for (let column = 0; column < n; column++) {
        const [x, y] = [(2 * column + 1) / n - 1, 1 - (2 * row + 1) / n];
        if (Math.hypot(x, y) > 0.85 || Math.abs(x) < 0.08 || Math.abs(y) < 0.08) continue;
        const [r, g, b] = upright.rgba.subarray(4 * (row * n + column));
        checked++;
        if (r > g !== x < 0 || b > 0.62 * Math.max(r, g) !== y > 0) wrong++;
      }
    expect(checked).toBeGreaterThan(5000);
    expect(wrong / checked).toBeLessThan(0.002);
  });

  it("looks the same again when photographed with it inside", () => {
    const item: InsideDesign = {
      kind: "picture",
      shape: "disc",
      diameterMm: 16,
      atMm: [0, 0, 0],
      picture: "q",
    };
    const photo = photograph([item], new Map([["q", QUARTERS]]), true);
    const plan = withPhoto(BARE, photo, wish("front", "disc", 0, 16));
    const again = photograph(plan.piece.inside ?? [], rastersOf(plan), true);
    const quarter = (r: Raster, k: number) => [r.rgba[4 * k] > r.rgba[4 * k + 1], r.rgba[4 * k + 2] > 150];
    let same = 0;
    for (let k = 0; k < SIZE * SIZE; k++) if (`${quarter(photo, k)}` === `${quarter(again, k)}`) same++;
    expect(same / (SIZE * SIZE)).toBeGreaterThan(0.97);
  });
});

describe("the plan that a photograph goes into", () => {
  const photo = raster(100, 100, (x) => [x < 0.5 ? 250 : 5, 60, 60, 255]);
  const at = (side: "front" | "back", depthMm: number, diameterMm: number | null = null) => ({
    ...wish(side, "disc", depthMm, diameterMm),
    outline: { x: 50, y: 50, r: 45 },
  });

  it("gets a new item, the last, as large as the glass shows, upright whatever the ink mark", () => {
    const marked = {
      ...BARE,
      piece: { ...BARE.piece, inkMarkDeg: 30, inside: [{ kind: "bubble", diameterMm: 2 } as const] },
    };
    const plan = withPhoto(marked, photo, at("front", 2));
    expect(plan.piece.inside?.[1]).toMatchObject({
      kind: "picture",
      shape: "disc",
      atMm: [0, 0, 2],
      turnDeg: -30,
    });
    const { diameterMm } = (plan.piece.inside ?? [])[1] as { diameterMm: number };
    expect(diameterMm / 30).toBeCloseTo(
      largestShown({ distance: 10, index: 1.5, shape: "disc", depth: 2 / 15 }),
      9,
    );
    const made = picturesOf(plan).get("photo-1");
    expect(made?.width).toBe(100);
  });

  it("from the back joins the picture that stands there, in its size, else is the front's from behind", () => {
    const front = withPhoto(BARE, photo, at("front", 2));
    const both = withPhoto(front, photo, at("back", 2));
    expect(both.piece.inside).toHaveLength(1);
    expect(both.piece.inside?.[0]).toEqual({ ...front.piece.inside?.[0], back: "photo-2" });
    const elsewhere = withPhoto(front, photo, at("back", 1));
    expect(elsewhere.piece.inside).toHaveLength(2);
    const alone = picturesOf(elsewhere).get("photo-2");
    const joined = picturesOf(both).get("photo-2");
    // left and right: a new item's picture is kept as seen from the front
    const red = (r: Raster | undefined, x: number) => (r ? r.rgba[4 * (50 * 100 + x)] : 0);
    expect(red(joined, 30)).toBeGreaterThan(red(joined, 70));
    expect(red(alone, 70)).toBeGreaterThan(red(alone, 30));
  });
});
