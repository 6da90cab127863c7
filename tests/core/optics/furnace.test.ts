import { describe, expect, it } from "vitest";
import type { Plane } from "../../../src/core/geometry/plane.ts";
import { cameraFrom } from "../../../src/core/optics/camera.ts";
import { ROUGHNESS } from "../../../src/core/optics/finish.ts";
import {
  BOROSILICATE,
  cauchyFrom,
  N_BK7,
  type OpticalGlass,
  SODA_LIME,
} from "../../../src/core/optics/glasses.ts";
import { renderRows } from "../../../src/core/optics/picture.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import { clearPiece, randomPlanes, tieredPlanes } from "./helpers.ts";

const without = (glass: OpticalGlass): OpticalGlass => ({ ...glass, extinction: null });
const own = (nd: number, vd: number): OpticalGlass => ({
  name: "own",
  dispersion: cauchyFrom(nd, vd),
  extinction: null,
});
const GLASSES: readonly OpticalGlass[] = [
  without(BOROSILICATE),
  without(SODA_LIME),
  N_BK7,
  own(1, 60),
  own(1.9, 20),
  own(2.42, 55),
];

interface Furnace {
  readonly planes: readonly Plane[];
  readonly glass: OpticalGlass;
  readonly roughness?: number;
  readonly wet?: boolean;
  readonly dispersion?: boolean;
  readonly samples?: number;
  readonly bubble?: boolean;
}

/** Renders the piece in uniform light of radiance 1 and gives mean and worst distance from 1, and what was lost. */
function furnace(f: Furnace): { mean: number; worst: number; lost: number } {
  const size = 24;
  const piece = f.bubble
    ? { ...clearPiece(), inside: [{ kind: "bubble" as const, diameterMm: 9, atMm: [2, 1, 3] as const }] }
    : clearPiece();
  const roughness = f.planes.map(() => f.roughness ?? 0);
  const scene = makeScene({
    piece,
    planes: f.planes,
    roughness,
    glass: f.glass,
    wet: f.wet ?? false,
    light: { kind: "uniform" },
  });
  const tally = { lost: 0, meetings: 0 };
  const settings = {
    size,
    samples: f.samples ?? 5,
    seed: 3,
    dispersion: f.dispersion ?? true,
    bounces: null,
  };
  const rows = renderRows(scene, cameraFrom(25, 55, 10, 14), settings, 0, size, tally);
  let [sum, worst] = [0, 0];
  for (const v of rows) {
    sum += v;
    worst = Math.max(worst, Math.abs(v - 1));
  }
  return { mean: sum / rows.length, worst, lost: tally.lost };
}

describe("white furnace: uniform light comes back from a clear piece as it went in", () => {
  const cuts: readonly (readonly [string, readonly Plane[]])[] = [
    ["no facets", []],
    ["one facet", [{ n: [0, 0, 1], h: 0.8 }]],
    ["two tiers of 8", tieredPlanes(8)],
    ["60 random facets", randomPlanes(60, 5)],
    ["120 random facets", randomPlanes(120, 6)],
  ];
  for (const [name, planes] of cuts)
    it(`every pixel to 1e-6, smooth, every glass: ${name}`, () => {
      for (const glass of GLASSES)
        for (const dispersion of [true, false]) {
          const { worst, lost } = furnace({ planes, glass, dispersion });
          expect(worst, `${glass.name}, dispersion ${dispersion}`).toBeLessThan(1e-6);
          expect(lost).toBe(0);
        }
    });

  it("every pixel to 1e-6 at any number of samples", () => {
    for (const samples of [1, 2, 3, 16, 33, 64, 70])
      expect(furnace({ planes: tieredPlanes(6), glass: own(1.6, 35), samples }).worst).toBeLessThan(1e-6);
  });

  it("every pixel to 1e-6 with a bubble inside", () => {
    expect(furnace({ planes: tieredPlanes(6), glass: own(1.5, 60), bubble: true }).worst).toBeLessThan(1e-6);
  });

  it("the mean within 0.5 % for rough facets, dry and wet", () => {
    for (const roughness of [ROUGHNESS.prepolished, ROUGHNESS.ground, 1])
      for (const wet of [false, true])
        for (const glass of [own(1.47, 65), own(1.9, 20)]) {
          const { mean } = furnace({ planes: tieredPlanes(8), glass, roughness, wet });
          expect(Math.abs(mean - 1), `alpha ${roughness}, wet ${wet}`).toBeLessThan(0.005);
        }
  });

  it("fails to come back white when the glass swallows light", () => {
    expect(furnace({ planes: [], glass: SODA_LIME }).mean).toBeLessThan(0.99);
  });
});
