/** The ball in a photograph: made-up photographs with a known outline, and what stands in the way of one. */
import { describe, expect, it } from "vitest";
import { findOutline } from "../../../src/core/optics/find-outline.ts";
import { patchHighlights } from "../../../src/core/optics/patch-highlights.ts";
import type { Outline } from "../../../src/core/optics/photo.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import type { Raster } from "../../../src/core/optics/raster.ts";
import { chance } from "./helpers.ts";
import { raster } from "./pictures.ts";

interface Shot {
  readonly ground: (x: number, y: number) => number;
  readonly glass: number;
  readonly noise: number;
  /** A ring inside, share of the radius, that is not the outline. */
  readonly ring: number;
  readonly lamp: boolean;
}

/** A ball on a ground: darker towards its rim, a ring of colour inside, a lamp's mirror, noise. */
function photograph(width: number, height: number, at: Outline, shot: Shot, seed: number): Raster {
  const random = chance(seed);
  return raster(width, height, (u, v) => {
    const [x, y] = [u * width, v * height];
    const r = Math.hypot(x - at.x, y - at.y) / at.r;
    let light = r < 1 ? shot.glass * (1 - 0.35 * r * r) : shot.ground(u, v);
    if (r < shot.ring && r > shot.ring - 0.15) light *= 0.6;
    if (shot.lamp && Math.hypot(x - at.x + 0.4 * at.r, y - at.y + 0.45 * at.r) < 0.1 * at.r) light = 255;
    const grain = () =>
      Math.min(255, Math.max(0, Math.round(light + shot.noise * (nextRandom(random) - 0.5))));
    const [r8, g8, b8] = [grain(), grain(), grain()];
    return shot.lamp && light === 255 ? [255, 255, 255, 255] : [r8, g8, b8, 255];
  });
}

const SHOTS: readonly (readonly [string, Shot])[] = [
  ["on white", { ground: () => 235, glass: 120, noise: 10, ring: 0.5, lamp: true }],
  ["on black", { ground: () => 15, glass: 150, noise: 20, ring: 0.7, lamp: true }],
  [
    "on a ground that fades",
    { ground: (x, y) => 90 + 120 * x * y, glass: 90, noise: 14, ring: 0.6, lamp: false },
  ],
  [
    "on stripes",
    { ground: (x) => (Math.sin(40 * x) > 0 ? 210 : 150), glass: 70, noise: 10, ring: 0.5, lamp: true },
  ],
];
const PLACES: readonly Outline[] = [
  { x: 300, y: 220, r: 150 },
  { x: 210.4, y: 250.7, r: 90.3 },
  { x: 330, y: 240, r: 225 },
];

describe.each(SHOTS)("the outline %s", (_, shot) => {
  it.each(PLACES)("is found at %o", (place) => {
    const found = findOutline(photograph(640, 480, place, shot, 5));
    if (!("outline" in found)) throw new Error(found.code);
    const { x, y, r } = found.outline;
    expect(Math.hypot(x - place.x, y - place.y)).toBeLessThan(0.012 * place.r);
    expect(Math.abs(r - place.r)).toBeLessThan(0.012 * place.r);
  });
});

describe("what stands in the way", () => {
  const shot = SHOTS[0][1];
  it.each([
    ["none", raster(400, 300, (x) => [Math.round(200 * x), 90, 60, 255])],
    ["too-small", photograph(200, 200, { x: 100, y: 100, r: 26 }, shot, 3)],
    ["cut-off", photograph(500, 400, { x: 60, y: 200, r: 150 }, shot, 3)],
  ])("%s", (code, photo) => {
    expect(findOutline(photo)).toMatchObject({ code });
  });
});

describe("a lamp's mirror", () => {
  const place = PLACES[0];
  const at = (x: number, y: number) => 640 * y + x;

  it("is filled from around it, and told; nothing else changes", () => {
    const photo = photograph(640, 480, place, { ...SHOTS[0][1], noise: 0, ring: 0 }, 2);
    const { photo: patched, mask, share } = patchHighlights(photo, place);
    const lamp = at(240, 153);
    expect(photo.rgba[4 * lamp]).toBe(255);
    // 120 (1 - 0.35 r^2) at r^2 = 0.3625
    expect(Math.abs(patched.rgba[4 * lamp] - 105)).toBeLessThan(4);
    expect(mask[lamp]).toBe(1);
    expect(share).toBeGreaterThan(0.01);
    expect(share).toBeLessThan(0.03);
    const changed = mask.filter((is, k) => !is && patched.rgba[4 * k] !== photo.rgba[4 * k]).length;
    expect(changed).toBe(0);
  });

  it("is not a large white design, nor anything outside the ball", () => {
    const white = raster(640, 480, (u, v) => {
      const r = Math.hypot(640 * u - place.x, 480 * v - place.y) / place.r;
      return r < 0.5 || r > 1.2 ? [255, 255, 255, 255] : [80, 90, 100, 255];
    });
    expect(patchHighlights(white, place).share).toBe(0);
  });
});
