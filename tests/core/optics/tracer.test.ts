import { describe, expect, it } from "vitest";
import { cameraFrom } from "../../../src/core/optics/camera.ts";
import { fresnel } from "../../../src/core/optics/fresnel.ts";
import { cauchyFrom, indexAt, LINE_C_NM, LINE_F_NM } from "../../../src/core/optics/glasses.ts";
import type { Light, LightSetting } from "../../../src/core/optics/lights.ts";
import { type PictureSettings, renderRows } from "../../../src/core/optics/picture.ts";
import { makeScene, type Scene, sceneOfPlan } from "../../../src/core/optics/scene.ts";
import type { InsideDesign, Piece, Plan } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { clearPiece, tieredPlanes } from "./helpers.ts";

const UNIFORM: Light = { kind: "uniform" };
const dark: LightSetting = {
  zenith: [0, 0, 0],
  horizon: [0, 0, 0],
  floor: [0, 0, 0],
  nadir: [0, 0, 0],
  spread: 1,
  panels: [],
};

/** A dark room with one disc of radiance 1 behind the piece, seen by a camera in front. */
const lampBehind: Light = {
  kind: "setting",
  turnRad: 0,
  setting: {
    ...dark,
    panels: [
      {
        towards: [0, 0, -1],
        right: [1, 0, 0],
        up: [0, 1, 0],
        halfWidth: 0.5,
        halfHeight: 0.5,
        round: true,
        columns: 1,
        rows: 1,
        bar: 0,
        soft: 1e-6,
        rgb: [1, 1, 1],
        rgbBelow: [1, 1, 1],
      },
    ],
  },
};

const base: PictureSettings = { size: 8, samples: 16, seed: 2, dispersion: true, bounces: null };

function look(scene: Scene, settings: Partial<PictureSettings> = {}, fieldDeg = 14): Float32Array {
  const s = { ...base, ...settings };
  return renderRows(scene, cameraFrom(0, 90, 10, fieldDeg), s, 0, s.size, { lost: 0, meetings: 0 });
}
const mean = (values: ArrayLike<number>): number =>
  Array.from(values).reduce((a, b) => a + b, 0) / values.length;

/** Field so narrow that every ray runs through the centre. */
const PINPOINT = 1e-3;
const tinted = (through: number, nd = 1.5): Piece => ({
  ...clearPiece(nd),
  tint: { rgb: [through, through, through], atMm: 30 },
});

describe("a path through the middle of a ball", () => {
  it("weakens as the closed form says: R + (1-R)^2 T / (1 - R T)", () => {
    for (const [nd, through] of [
      [1.5, 0.5],
      [1.9, 0.9],
      [1.47, 0.02],
    ]) {
      const r = fresnel(1, 1 / nd);
      const exact = r + ((1 - r) ** 2 * through) / (1 - r * through);
      const scene = makeScene({ piece: tinted(through, nd), planes: [], light: UNIFORM });
      expect(mean(look(scene, { dispersion: false, samples: 256 }, PINPOINT))).toBeCloseTo(exact, 3);
    }
  });

  it("is ended by chance without bias when little is left: (1-R)^2 T / (1 - R^2 T^2)", () => {
    const r = fresnel(1, 1 / 1.5);
    const through = 2e-4;
    const exact = (1 - r) ** 2 * through;
    const scene = makeScene({ piece: tinted(through), planes: [], light: lampBehind });
    const seen = mean(look(scene, { dispersion: false, samples: 4096 }, PINPOINT));
    expect(Math.abs(seen / exact - 1)).toBeLessThan(0.02);
  });

  it("sees the lamp behind through a clear ball with twice the Fresnel loss", () => {
    const r = fresnel(1, 1 / 1.5);
    const exact = (1 - r) ** 2 / (1 - r * r);
    const scene = makeScene({ piece: clearPiece(), planes: [], light: lampBehind });
    // The ray that is mirrored twice inside still reaches the lamp; odd numbers go back to the dark.
    expect(mean(look(scene, { dispersion: false, samples: 256 }, PINPOINT))).toBeCloseTo(exact, 3);
  });

  it("is cut off by the cap, and the loss is told", () => {
    const scene = makeScene({ piece: clearPiece(), planes: [], light: UNIFORM });
    const r = fresnel(1, 1 / 1.5);
    const tally = { lost: 0, meetings: 0 };
    const settings = { ...base, dispersion: false, bounces: 1 };
    const rows = renderRows(scene, cameraFrom(0, 90, 10, PINPOINT), settings, 0, base.size, tally);
    expect(mean(rows)).toBeCloseTo(r, 6);
    expect(tally.lost / (base.size * base.size * base.samples)).toBeCloseTo(1 - r, 6);
  });
});

describe("what is inside, in uniform light", () => {
  const WHITE = [1, 1, 1] as const;
  const BLACK = [0, 0, 0] as const;
  const withInside = (inside: readonly InsideDesign[], planes = tieredPlanes(8)) =>
    makeScene({ piece: { ...clearPiece(), inside }, planes, light: UNIFORM });
  const opaque = (rgb: readonly [number, number, number]): readonly InsideDesign[] => [
    { kind: "core", diameterMm: 8, lengthMm: 12, rgb, opaque: true, tiltDeg: 40, turnDeg: 10 },
    { kind: "ribbon", widthMm: 14, lengthMm: 20, thicknessMm: 1, turns: 1.5, rgb, tiltDeg: -30 },
    { kind: "petals", count: 7, diameterMm: 18, depthMm: 5, rgb, atMm: [0, 1, -2] },
    { kind: "backing", heightMm: 5, rgb },
    { kind: "speckle", count: 400, grainMm: 0.8, diameterMm: 26, rgb },
  ];

  it("gives all light back when it is perfectly white, whatever its shape", () => {
    for (const design of opaque(WHITE))
      for (const v of look(withInside([design]), { size: 12, samples: 4 }))
        expect(Math.abs(v - 1), design.kind).toBeLessThan(1e-6);
  });

  it("gives nothing back but the mirrored light when it is black and fills the view", () => {
    const scene = withInside([{ kind: "core", diameterMm: 16, rgb: BLACK, opaque: true }], []);
    expect(mean(look(scene, { dispersion: false }, PINPOINT))).toBeCloseTo(fresnel(1, 1 / 1.5), 6);
  });

  it("hides some of the light when it is black", () => {
    for (const design of opaque(BLACK))
      expect(mean(look(withInside([design]), { size: 16 })), design.kind).toBeLessThan(0.99);
  });

  it("shows a tinted core's colour across its whole width", () => {
    const inside: readonly InsideDesign[] = [
      { kind: "core", diameterMm: 10, rgb: [0.8, 0.4, 0.1], opaque: false },
    ];
    // With the index of air nothing is mirrored: exactly the colour remains.
    const scene = makeScene({ piece: { ...clearPiece(1), inside }, planes: [], light: UNIFORM });
    for (const dispersion of [true, false]) {
      const rows = look(scene, { dispersion, samples: 64 }, PINPOINT);
      [0.8, 0.4, 0.1].forEach((v, c) => {
        expect(rows[c]).toBeCloseTo(v, 5);
      });
    }
  });

  it("is seen n times as large at the centre: a black core of radius r covers the disc of radius n r", () => {
    const inside: readonly InsideDesign[] = [{ kind: "core", diameterMm: 10, rgb: BLACK, opaque: true }];
    const scene = makeScene({ piece: { ...clearPiece(1.5), inside }, planes: [], light: UNIFORM });
    const size = 200;
    const settings = { ...base, size, samples: 1, dispersion: false };
    // From so far away that rays are parallel; the field is as wide as the ball.
    const far = 1e5;
    const field = 2 * Math.atan(1 / far) * (180 / Math.PI);
    const rows = renderRows(scene, cameraFrom(0, 90, far, field), settings, 0, size, {
      lost: 0,
      meetings: 0,
    });
    const covered = rows.filter((v, i) => i % 3 === 0 && v < 0.5).length;
    const radius = Math.sqrt(covered / Math.PI) / (size / 2);
    expect(radius).toBeCloseTo((1.5 * 10) / 30, 2);
  });
});

describe("dispersion", () => {
  it("changes nothing when the glass has next to none, and the light is the same for all colours", () => {
    const scene = makeScene({ piece: clearPiece(1.6, 1e9), planes: tieredPlanes(6), light: lampBehind });
    const with_ = look(scene, { size: 12, samples: 256 });
    const without = look(scene, { size: 12, samples: 256, dispersion: false });
    expect(Math.abs(mean(with_) - mean(without))).toBeLessThan(0.01 * mean(without));
  });

  it("shows red as a glass of its index at C would, blue as one of its index at F", () => {
    // One tilted facet in front makes a prism of the ball's middle; the lamp's edge is seen through it.
    const planes = [
      { n: [0, 0.5, Math.sqrt(0.75)] as const, h: 0.75 },
      { n: [0, 0, -1] as const, h: 0.7 },
    ];
    const seen = (piece: Piece, dispersion: boolean) =>
      look(makeScene({ piece, planes, light: lampBehind }), { size: 48, samples: 64, dispersion }, 6);
    const strong = cauchyFrom(1.7, 20);
    const parted = seen(clearPiece(1.7, 20), true);
    const atF = seen(clearPiece(indexAt(strong, LINE_F_NM)), false);
    const atC = seen(clearPiece(indexAt(strong, LINE_C_NM)), false);
    const distance = (c: number, other: Float32Array) =>
      parted.reduce((sum, v, i) => sum + (i % 3 === c ? Math.abs(v - other[i]) : 0), 0);
    expect(distance(0, atC)).toBeLessThan(0.6 * distance(0, atF));
    expect(distance(2, atF)).toBeLessThan(0.6 * distance(2, atC));
  });
});

describe("a plan's picture", () => {
  it("is rough only where a tier's finish says so", () => {
    const tier = { id: "a", name: "a", side: "front", armAngleDeg: 40, count: 3, startDeg: 0 } as const;
    const plan: Plan = {
      format: "glintwright-plan",
      version: 1,
      name: "finishes",
      piece: clearPiece(),
      rig: { wheelStops: null },
      tiers: [
        { ...tier, depth: { rule: "depth", mm: 1 }, finish: "ground" },
        { ...tier, id: "b", armAngleDeg: 60, depth: { rule: "depth", mm: 1 }, finish: "prepolished" },
        { ...tier, id: "c", armAngleDeg: 10, depth: { rule: "depth", mm: 1 } },
      ],
    };
    const scene = sceneOfPlan(solvePlan(plan), UNIFORM);
    expect(Array.from(scene.roughness)).toEqual([0.394, 0.394, 0.394, 0.1, 0.1, 0.1, 0, 0, 0]);
    expect(scene.planeCount).toBe(9);
    // as the command line traces it, to be held against other tracers: polished faces are flat up to their edges
    expect(scene.edgeRadius).toBe(0);
  });
});
