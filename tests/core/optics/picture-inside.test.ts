/** A picture in the glass, pixel by pixel against Snell's law written out anew; file formats against the registry's encoders. */

import { encode as encodePng } from "fast-png";
import { encode as encodeJpeg } from "jpeg-js";
import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/core/geometry/vec.ts";
import { cameraFrom } from "../../../src/core/optics/camera.ts";
import { decodedPictures, decodePicture, rastersOf } from "../../../src/core/optics/decode-picture.ts";
import { hitDesign, packDesign } from "../../../src/core/optics/inside.ts";
import { renderRows } from "../../../src/core/optics/picture.ts";
import { lookUp, type Rasters } from "../../../src/core/optics/raster.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import type { InsideDesign } from "../../../src/core/plan/document.ts";
import { clearPiece } from "./helpers.ts";
import { pngUrl, QUARTERS, raster } from "./pictures.ts";

type Picture = InsideDesign & { readonly kind: "picture" };
const ND = 1.5;
const PIECE = clearPiece(ND);
const R = PIECE.diameterMm / 2;
const SIZE = 41;
const FIELD_DEG = 12;

const disc = (how: Partial<Picture> = {}): Picture => ({
  kind: "picture",
  shape: "disc",
  diameterMm: 18,
  atMm: [0, 0, 0],
  picture: "q",
  ...how,
});

type V = readonly number[];
const plus = (a: V, b: V, k = 1) => a.map((v, i) => v + k * b[i]);
const times = (a: V, b: V) => a.reduce((sum, v, i) => sum + v * b[i], 0);
const unit = (a: V) => a.map((v) => v / Math.sqrt(times(a, a)));

/** The ray within the uncut ball (radius 1) behind a pixel's middle: plain vectors, Snell's law; null when it misses. */
function rayInGlass(x: number, y: number, front: boolean, distance: number): { p: V; d: V } | null {
  const spread = Math.tan((FIELD_DEG * Math.PI) / 360);
  const [sx, sy] = [(2 * (x + 0.5)) / SIZE - 1, 1 - (2 * (y + 0.5)) / SIZE];
  const s = front ? 1 : -1;
  const o = [0, 0, s * distance];
  const d = unit([s * sx * spread, sy * spread, -s]);
  const b = times(o, d);
  const disc = b * b - (times(o, o) - 1);
  if (disc < 0) return null;
  const p = plus(o, d, -b - Math.sqrt(disc));
  // Snell: the part along the skin shrinks by the index
  const along = plus(d, p, -times(d, p)).map((v) => v / ND);
  return { p, d: plus(along, p, -Math.sqrt(1 - times(along, along))) };
}

/** Which quarter of QUARTERS shows in a colour: [left, upper]; what the skin mirrors of the white around counts in all channels. */
const quarterOf = ([r, g, b]: V) => [r > g, b > (r + g) / 2];

function picture(design: Picture, rasters: Rasters, front = true, distance = 10): Float32Array {
  const scene = makeScene({
    piece: { ...PIECE, inside: [design] },
    planes: [],
    light: { kind: "uniform" },
    rasters,
  });
  const camera = cameraFrom(0, front ? 90 : -90, distance, FIELD_DEG);
  const settings = { size: SIZE, samples: 48, seed: 3, dispersion: false, bounces: null };
  return renderRows(scene, camera, settings, 0, SIZE, { lost: 0, meetings: 0 });
}
const pixel = (rows: Float32Array, x: number, y: number) =>
  [0, 1, 2].map((c) => rows[3 * (y * SIZE + x) + c]);

/** Where a ray meets the disc in its own frame: right and up as its front shows, in its radii; null beside it. */
function onDisc({ p, d }: { p: V; d: V }, design: Picture): { at: V; behind: boolean } | null {
  const [tilt, turn] = [design.tiltDeg ?? 0, design.turnDeg ?? 0].map((deg) => (deg * Math.PI) / 180);
  const turned = (v: V) => [
    Math.cos(turn) * v[0] - Math.sin(turn) * v[1],
    Math.sin(turn) * v[0] + Math.cos(turn) * v[1],
    v[2],
  ];
  const x = turned([Math.cos(tilt), 0, -Math.sin(tilt)]);
  const y = turned([0, 1, 0]);
  const z = turned([Math.sin(tilt), 0, Math.cos(tilt)]);
  const from = plus(p, design.atMm, -1 / R);
  const t = -times(from, z) / times(d, z);
  const at = [times(plus(from, d, t), x), times(plus(from, d, t), y)].map(
    (v) => (v * R * 2) / design.diameterMm,
  );
  return t > 0 && Math.hypot(...at) < 1 ? { at, behind: times(d, z) > 0 } : null;
}

describe("a picture's sheet, against Snell's law pixel by pixel", () => {
  it.each([
    ["from the front", disc(), true, 10],
    ["from behind, as painted on a thin sheet", disc(), false, 10],
    ["from behind, with a picture of its own", disc({ back: "q" }), false, 10],
    ["off centre", disc({ atMm: [4, -3, 2], diameterMm: 14 }), true, 10],
    ["tilted and turned", disc({ tiltDeg: 35, turnDeg: 70 }), true, 10],
    ["from near by", disc(), true, 1.7],
    ["deep, near the far skin", disc({ atMm: [0, 0, -12], diameterMm: 16 }), true, 10],
  ])("%s", (_, design, front, distance) => {
    const rows = picture(design, new Map([["q", QUARTERS]]), front, distance);
    let [checked, wrong] = [0, 0];
    for (let y = 0; y < SIZE; y++)
      for (let x = 0; x < SIZE; x++) {
        const ray = rayInGlass(x, y, front, distance);
        const met = ray && onDisc(ray, design);
        // a pixel is a square: near the borders between quarters it shows both
        if (!met || Math.abs(met.at[0]) < 0.12 || Math.abs(met.at[1]) < 0.12 || Math.hypot(...met.at) > 0.88)
          continue;
        const right = met.behind && design.back ? -met.at[0] : met.at[0];
        const expected = [right < 0, met.at[1] > 0];
        checked++;
        if (quarterOf(pixel(rows, x, y)).some((is, k) => is !== expected[k])) wrong++;
      }
    expect(checked).toBeGreaterThan(20);
    expect(wrong).toBe(0);
  });

  it("stretches a picture that isn't square over the disc's square", () => {
    const flat = raster(80, 10, (x, y) => [x < 0.5 ? 250 : 5, x < 0.5 ? 5 : 250, y < 0.5 ? 250 : 5, 255]);
    const rows = picture(disc(), new Map([["q", flat]]));
    const third = Math.floor(SIZE / 3);
    expect(quarterOf(pixel(rows, third, third))).toEqual([true, true]);
    expect(quarterOf(pixel(rows, SIZE - third, SIZE - third))).toEqual([false, false]);
  });

  it("takes bytes for sRGB reflectance, and lets through what isn't there", () => {
    const [half] = packDesign(PIECE, disc(), ND, new Map([["q", raster(8, 8, () => [188, 188, 188, 128])]]));
    // sRGB 188 is 0.5029 of the light (IEC 61966-2-1, by hand)
    const hit = hitDesign(half, [0.1, 0.1, 0.5], [0, 0, -1], 2, -1);
    expect(hit?.rgb[0]).toBeCloseTo(0.5029, 3);
    let met = 0;
    const random = { state: 7, sample: 0, scramble: 0, even: false };
    for (let k = 0; k < 20_000; k++) if (hitDesign(half, [0.1, 0.1, 0.5], [0, 0, -1], 2, -1, random)) met++;
    // 128 of 255; four deviations of 20,000 throws
    expect(Math.abs(met / 20_000 - 128 / 255)).toBeLessThan(4 * Math.sqrt(0.25 / 20_000));
  });

  it("is not there without its picture, and half there with one of two", () => {
    const empty = makeScene({
      piece: { ...PIECE, inside: [disc()] },
      planes: [],
      light: { kind: "uniform" },
    });
    expect(empty.designs).toEqual([]);
    const [half] = packDesign(PIECE, disc({ back: "other" }), ND, new Map([["other", QUARTERS]]));
    expect(hitDesign(half, [0.1, 0.1, 0.5], [0, 0, -1], 2, -1)).toBeNull();
    expect(hitDesign(half, [0.1, 0.1, -0.5], [0, 0, 1], 2, -1)).not.toBeNull();
  });
});

describe("a picture's ball", () => {
  const ball: Picture = {
    kind: "picture",
    shape: "core",
    diameterMm: 15,
    atMm: [0, 0, 0],
    picture: "q",
    back: "b",
  };
  const blue = raster(4, 4, () => [5, 5, 250, 255]);

  it("has both halves painted along its axis", () => {
    const [design] = packDesign(
      PIECE,
      ball,
      ND,
      new Map([
        ["q", QUARTERS],
        ["b", blue],
      ]),
    );
    for (const [x, y] of [
      [0.2, 0.3],
      [-0.2, 0.3],
      [0.3, -0.1],
      [-0.1, -0.3],
    ]) {
      const front = hitDesign(design, [x, y, 0.9], [0, 0, -1], 2, -1);
      expect(front && quarterOf(front.rgb)).toEqual([x < 0, y > 0]);
      expect(front?.t).toBeCloseTo(0.9 - Math.sqrt(0.25 - x * x - y * y), 12);
      expect(hitDesign(design, [x, y, -0.9], [0, 0, 1], 2, -1)?.rgb[2]).toBeGreaterThan(0.9);
    }
  });

  it("lets one look in where nothing is painted, onto the far half", () => {
    const ring = raster(64, 64, (x, y) => [250, 5, 5, Math.hypot(x - 0.5, y - 0.5) < 0.3 ? 0 : 255]);
    const [design] = packDesign(
      PIECE,
      ball,
      ND,
      new Map([
        ["q", ring],
        ["b", blue],
      ]),
    );
    const far = hitDesign(design, [0.1, 0, 0.9], [0, 0, -1], 2, -1);
    expect(far?.t).toBeCloseTo(0.9 + Math.sqrt(0.25 - 0.01), 12);
    expect(far?.rgb[2]).toBeGreaterThan(0.9);
    // and from its own wall the near half does not count
    const wall: Vec3 = [0, 0, -0.5];
    expect(hitDesign(design, wall, [0, 0, -1], 2, 0)).toBeNull();
    expect(hitDesign(design, [0.5, 0, 0], [-1, 0, 0], 2, 0)?.t).toBeCloseTo(1, 12);
  });
});

describe("pixels of a file", () => {
  const at = (bytes: Uint8Array, kind: "png" | "jpeg") => decodePicture({ kind, bytes });

  it.each([
    [
      "grey of 8 bits",
      encodePng({ width: 2, height: 1, channels: 1, data: new Uint8Array([7, 200]) }),
      [
        [7, 7, 7, 255],
        [200, 200, 200, 255],
      ],
    ],
    [
      "grey with alpha",
      encodePng({ width: 2, height: 1, channels: 2, data: new Uint8Array([7, 9, 200, 90]) }),
      [
        [7, 7, 7, 9],
        [200, 200, 200, 90],
      ],
    ],
    [
      "16 bits",
      encodePng({ width: 1, height: 1, channels: 3, depth: 16, data: new Uint16Array([65535, 257 * 80, 0]) }),
      [[255, 80, 0, 255]],
    ],
    [
      "a palette",
      encodePng({
        width: 2,
        height: 1,
        channels: 1,
        palette: [
          [1, 2, 3],
          [40, 50, 60],
        ],
        data: new Uint8Array([1, 0]),
      }),
      [
        [40, 50, 60, 255],
        [1, 2, 3, 255],
      ],
    ],
  ] as const)("PNG: %s", (_, bytes, pixels) => {
    expect([...at(bytes, "png").rgba]).toEqual(pixels.flat());
  });

  it("PNG of one bit, its rows from whole bytes", () => {
    // made by hand: 10 by 2, grey, every third pixel of the first row, none of the second but the last
    const bits = new Uint8Array([0b10010010, 0b01000000, 0, 0b01000000]);
    const bytes = encodePng({ width: 10, height: 2, channels: 1, depth: 1, data: bits });
    const { rgba } = at(bytes, "png");
    const grey = Array.from({ length: 20 }, (_, i) => rgba[4 * i]);
    expect(grey).toEqual([255, 0, 0, 255, 0, 0, 255, 0, 0, 255, ...Array(9).fill(0), 255]);
  });

  it("JPEG", () => {
    const { width, height, rgba } = raster(16, 16, (x) => [x < 0.5 ? 200 : 40, 90, 90, 255]);
    const { data } = encodeJpeg({ width, height, data: rgba }, 95);
    const read = at(new Uint8Array(data), "jpeg");
    expect([read.width, read.height]).toEqual([16, 16]);
    expect(Math.abs(read.rgba[0] - 200)).toBeLessThan(8);
    expect(Math.abs(read.rgba[4 * 15] - 40)).toBeLessThan(8);
  });

  it("is refused by its head when larger than asked for, and named when damaged", () => {
    const { width, height, rgba } = raster(40, 4, () => [1, 2, 3, 255]);
    const bytes = encodePng({ width, height, data: rgba, channels: 4 });
    expect(() => decodePicture({ kind: "png", bytes }, 39)).toThrow("39 pixels");
    const url = `data:image/png;base64,${btoa(String.fromCharCode(...bytes.subarray(0, 45)))}`;
    expect(() => rastersOf({ pictures: { bad: url } } as never)).toThrow("pictures.bad");
    // the others are shown all the same
    const pictures = { bad: url, good: pngUrl(QUARTERS) };
    const { rasters, damaged } = decodedPictures({ pictures } as never);
    expect([...rasters]).toEqual([["good", QUARTERS]]);
    expect(damaged.map(({ id }) => id)).toEqual(["bad"]);
  });

  it("is looked up bilinearly in linear light, weighed by alpha", () => {
    const two = raster(2, 1, (x) => (x < 0.5 ? [255, 0, 0, 255] : [0, 0, 255, 0]));
    expect(lookUp(two, 0.5, 0.5)).toEqual({ rgb: [1, 0, 0], alpha: 1 });
    // half way: the transparent pixel gives no colour, only room
    expect(lookUp(two, 1, 0.5)).toEqual({ rgb: [1, 0, 0], alpha: 0.5 });
    expect(lookUp(two, -3, 9)).toEqual({ rgb: [1, 0, 0], alpha: 1 });
  });
});
