import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/core/geometry/vec.ts";
import { cameraFrom } from "../../../src/core/optics/camera.ts";
import { colourThrough, lengthWithinBall } from "../../../src/core/optics/casing.ts";
import { renderRows } from "../../../src/core/optics/picture.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import type { Piece, Tint } from "../../../src/core/plan/document.ts";
import { planFromData } from "../../../src/core/plan/file.ts";
import { fragmentOf, planFromFragment } from "../../../src/core/plan/link.ts";
import { chance, clearPiece, randomDirection, tieredPlanes } from "./helpers.ts";

const BLUE: Tint = { rgb: [0.1, 0.35, 0.8], atMm: 10 };
const HONEY: Tint = { rgb: [0.9, 0.6, 0.2], atMm: 8 };
const SIZE = 8;

/** One pixel's colour along the line at `off` radii beside the middle; with the index of air rays go straight on and nothing is mirrored. */
function seen(piece: Piece, dispersion: boolean, planes = [] as ReturnType<typeof tieredPlanes>): number[] {
  const scene = makeScene({ piece, planes, light: { kind: "uniform" } });
  const settings = { size: 1, samples: 64, seed: 3, dispersion, bounces: null };
  return Array.from(renderRows(scene, cameraFrom(0, 90, 10, 1e-3), settings, 0, 1, { lost: 0, meetings: 0 }));
}
const straight = (fields: Partial<Piece>): Piece => ({ ...clearPiece(1), ...fields });

describe("coloured glass along known paths", () => {
  it("shows a layer's colour by its own thickness: T^(length / thickness), channel by channel", () => {
    // 30 mm ball: 4 mm of honey, 16 mm of blue in the middle of a clear layer of 22 mm
    const piece = straight({
      tint: HONEY,
      cased: [{ diameterMm: 16, tint: BLUE }, { diameterMm: 22 }],
    });
    const exact = [0, 1, 2].map((c) => HONEY.rgb[c] ** (8 / HONEY.atMm) * BLUE.rgb[c] ** (16 / BLUE.atMm));
    seen(piece, false).forEach((v, c) => {
      expect(v).toBeCloseTo(exact[c], 6);
    });
    colourThrough(piece).forEach((v, c) => {
      expect(v).toBeCloseTo(exact[c], 12);
    });
  });

  it("with dispersion shows exactly the picked colour where a layer is as thick as it was picked at", () => {
    const piece = straight({ cased: [{ diameterMm: 10, tint: BLUE }] });
    seen(piece, true).forEach((v, c) => {
      expect(v).toBeCloseTo(BLUE.rgb[c], 5);
    });
  });

  it("between two flats shows only the glass between them", () => {
    // a slab of 6 mm cut out of the middle
    const planes = [
      { n: [0, 0, 1] as Vec3, h: 0.2 },
      { n: [0, 0, -1] as Vec3, h: 0.2 },
    ];
    const piece = straight({ tint: HONEY, cased: [{ diameterMm: 3, tint: BLUE }] });
    seen(piece, false, planes).forEach((v, c) => {
      expect(v).toBeCloseTo(HONEY.rgb[c] ** (3 / HONEY.atMm) * BLUE.rgb[c] ** (3 / BLUE.atMm), 6);
    });
  });

  it("is one colour all through when a layer fills the ball, whatever the outermost one is", () => {
    const filled = straight({ tint: HONEY, cased: [{ diameterMm: 80, tint: BLUE }] });
    const plain = straight({ tint: BLUE });
    seen(filled, false).forEach((v, c) => {
      expect(v).toBeCloseTo(seen(plain, false)[c], 6);
    });
  });

  it("leaves all light of an even sky to clear layers, whatever is ground into them", () => {
    const piece: Piece = { ...clearPiece(), cased: [{ diameterMm: 26 }, { diameterMm: 14 }] };
    const scene = makeScene({ piece, planes: tieredPlanes(8), light: { kind: "uniform" } });
    const settings = { size: SIZE, samples: 8, seed: 1, dispersion: true, bounces: null };
    const rows = renderRows(scene, cameraFrom(0, 90, 10, 14), settings, 0, SIZE, { lost: 0, meetings: 0 });
    for (const v of rows) expect(Math.abs(v - 1)).toBeLessThan(1e-6);
  });
});

describe("the colour of the glass in a plan", () => {
  const plan = (piece: object) => ({
    format: "glintwright-plan",
    version: 1,
    name: "Cased",
    piece: { diameterMm: 30, glass: "borosilicate", ...piece },
    rig: { wheelStops: 96 },
    tiers: [],
  });

  it("goes through file and link as it is", () => {
    const read = planFromData(
      plan({ tint: HONEY, cased: [{ diameterMm: 26 }, { diameterMm: 20, tint: BLUE }] }),
    );
    expect(read.unknown).toEqual([]);
    expect(planFromFragment(fragmentOf(read.plan))?.plan).toEqual(read.plan);
  });

  it("is refused with the field's path where it is none", () => {
    for (const [piece, path] of [
      [{ cased: [{ diameterMm: 0 }] }, "piece.cased[0].diameterMm"],
      [{ cased: [{ diameterMm: 9, tint: { rgb: [1.2, 0, 0], atMm: 4 } }] }, "piece.cased[0].tint.rgb[0]"],
      [{ cased: Array.from({ length: 5 }, () => ({ diameterMm: 9 })) }, "piece.cased"],
    ] as const)
      expect(() => planFromData(plan(piece))).toThrow(path);
  });
});

describe("the part of a ray within a ball about the centre", () => {
  it("is what small steps along the ray count", () => {
    const random = chance(5);
    const steps = 4000;
    for (let k = 0; k < 200; k++) {
      const o = randomDirection(random).map((x) => x * nextRandom(random)) as unknown as Vec3;
      const d = randomDirection(random);
      const radius = nextRandom(random);
      const tMax = 2 * nextRandom(random);
      let counted = 0;
      for (let i = 0; i < steps; i++) {
        const t = ((i + 0.5) / steps) * tMax;
        if (Math.hypot(o[0] + t * d[0], o[1] + t * d[1], o[2] + t * d[2]) < radius) counted++;
      }
      expect(Math.abs(lengthWithinBall(radius, o, d, tMax) - (counted * tMax) / steps)).toBeLessThan(
        (2 * tMax) / steps,
      );
    }
  });
});
