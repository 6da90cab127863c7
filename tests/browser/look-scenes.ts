/** Scenes that the shader and its TypeScript twin both trace; made by the same code in Node and in the browser. */
import { facetFrame, type Plane } from "../../src/core/geometry/plane.ts";
import type { Vec3 } from "../../src/core/geometry/vec.ts";
import { ROUGHNESS } from "../../src/core/optics/finish.ts";
import { N_BK7, type OpticalGlass } from "../../src/core/optics/glasses.ts";
import type { Light, LightSetting } from "../../src/core/optics/lights.ts";
import { MATERIALS, plainMaterial } from "../../src/core/optics/materials.ts";
import type { Raster, Rasters } from "../../src/core/optics/raster.ts";
import { makeScene, putOnTable, type Scene } from "../../src/core/optics/scene.ts";
import type { Piece } from "../../src/core/plan/document.ts";
import lightsThen from "../fixtures/look/lights.json" with { type: "json" };

/** Made-up pixels: stripes one way in red, the other way in green; the right part half there, and a hole. */
function painted(width: number, height: number, blue: number): Raster {
  const rgba = new Uint8Array(4 * width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const isHole = (x - width / 3) ** 2 + (y - height / 3) ** 2 < (height / 8) ** 2;
      const alpha = isHole ? 0 : x > (3 * width) / 4 ? 128 : 255;
      rgba.set([(x >> 2) & 1 ? 230 : 40, (y >> 2) & 1 ? 210 : 60, blue, alpha], 4 * (y * width + x));
    }
  return { width, height, rgba };
}

export const RASTERS: Rasters = new Map([
  ["front", painted(48, 32, 20)],
  ["back", painted(24, 40, 220)],
]);

/** `count` facets on each side at 36 degrees with their planes at `h`, and a flat at the pole. */
function crown(count: number, h: number): Plane[] {
  const ring = (side: "front" | "back", armAngleDeg: number) =>
    Array.from({ length: count }, (_, k) => ({
      n: facetFrame(armAngleDeg, (360 * k) / count + (side === "back" ? 180 / count : 0), side).n,
      h,
    }));
  return [...ring("front", 36), { n: [0, 0, 1], h: 0.9 }, ...ring("back", 41)];
}

/** Ten rings of a hundred facets, that meet their neighbours. */
function thousand(): Plane[] {
  const rings = [-56, -40, -27, -15, -4, 7, 18, 30, 43, 58];
  return rings.flatMap((angle, ring) =>
    Array.from({ length: 100 }, (_, k) => ({
      n: facetFrame(Math.abs(angle), 3.6 * (k + ring / 2), angle < 0 ? "back" : "front").n,
      h: 0.985,
    })),
  );
}

const PIECE: Piece = { diameterMm: 30, glass: "borosilicate" };
/** As our settings once were: the references were traced in them, and a light that is made better asks for no new ones. */
const LIGHTS = lightsThen as unknown as Readonly<
  Record<"north-window" | "showroom-spots" | "overcast" | "one-lamp" | "lamp-at-hand", LightSetting>
>;
const lit = (name: keyof typeof LIGHTS, turnRad = 0): Light => ({
  kind: "setting",
  setting: LIGHTS[name],
  turnRad,
});
const overcast = lit("overcast");

/** A made-up picture all around: smooth, coloured, different everywhere. */
export function paintedSky(): Light {
  const [width, height] = [64, 32];
  const data = new Float32Array(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [a, b] = [(2 * Math.PI * x) / width, (Math.PI * y) / height];
      data.set(
        [1.2 + Math.sin(a), 1 + 0.8 * Math.cos(b), 1.5 + Math.cos(2 * a) * Math.sin(b)],
        3 * (y * width + x),
      );
    }
  return { kind: "picture", picture: { width, height, data }, turnRad: 0.7 };
}

export interface LookScene {
  /** Also the name of the twin's kept pictures under `tests/fixtures/look/`. */
  readonly name: string;
  readonly make: () => Scene;
  readonly hasDispersion: boolean;
  /** Azimuth and elevation of the eye, degrees. */
  readonly from: readonly [number, number];
  /** What picture up is the projection of, in place of +y. */
  readonly up?: Vec3;
}

const scene = (
  name: string,
  make: () => Scene,
  how: Partial<Pick<LookScene, "hasDispersion" | "from" | "up">> = {},
): LookScene => ({ name, make, hasDispersion: true, from: [20, 65], ...how });

const inside = (...designs: NonNullable<Piece["inside"]>): Piece => ({ ...PIECE, inside: designs });
const check: OpticalGlass = N_BK7;

const WINDOW = lit("north-window", 0.3);

/** Polished all over, of one glass, nothing inside. */
export const clearPiece = (): Scene => makeScene({ piece: PIECE, planes: crown(12, 0.88), light: WINDOW });

const polishedBut = (count: number, isRough: (k: number) => boolean, alpha: number): readonly number[] =>
  Array.from({ length: count }, (_, k) => (isRough(k) ? alpha : ROUGHNESS.polished));

/**
 * Each has much in it, since each costs programs of its own. Between them: each finish, dry and wet, what scatters inside, holes,
 * tints, layers, rounded edges, what the flame leaves, dispersion on and off, no, many and as many facets as a plan may have, a ring
 * on a table. With those further down, whose answer is known otherwise, they have all that the shader knows: a test looks.
 */
export const LOOK_SCENES: readonly LookScene[] = [
  scene(
    "uncut as the flame left it without dispersion",
    () =>
      makeScene({
        piece: { ...PIECE, waviness: { slopeDeg: 1.5, acrossMm: 7 }, seeds: { count: 60, diameterMm: 0.9 } },
        planes: [],
        light: WINDOW,
      }),
    { hasDispersion: false },
  ),
  scene("holes in layers of check glass with 81 facets", () =>
    makeScene({
      piece: {
        ...inside(
          { kind: "core", diameterMm: 10, rgb: [0.9, 0.5, 0.1], opaque: false, atMm: [-5, 3, 0] },
          { kind: "bubble", diameterMm: 5, atMm: [6, 2, 0] },
          { kind: "bubbles", shape: "ring", count: 6, bubbleMm: 2.5, spanMm: 12, atMm: [0, -4, 3] },
          {
            kind: "swirl",
            arms: 5,
            turns: 0.8,
            diameterMm: 12,
            depthMm: 4,
            thicknessMm: 1.5,
            rgb: [0.1, 0.2, 0.7],
            rgb2: [0.3, 0.8, 0.7],
            milky: 0.4,
            atMm: [3, 0, -6],
          },
        ),
        tint: { rgb: [0.75, 0.9, 0.92], atMm: 20 },
        cased: [{ diameterMm: 17, tint: { rgb: [0.95, 0.75, 0.6], atMm: 15 } }, { diameterMm: 24 }],
      },
      planes: crown(40, 0.95),
      glass: check,
      edgeMm: 0.3,
      light: paintedSky(),
    }),
  ),
  scene("opaque things in soda-lime under water", () => {
    const planes = crown(10, 0.88);
    return makeScene({
      piece: {
        ...inside(
          {
            kind: "core",
            diameterMm: 7,
            lengthMm: 9,
            rgb: [0.8, 0.2, 0.1],
            atMm: [-7, 3, 0],
            tiltDeg: 30,
          },
          {
            kind: "ribbon",
            widthMm: 7,
            lengthMm: 13,
            thicknessMm: 1,
            turns: 1,
            rgb: [0.1, 0.3, 0.8],
            rgb2: [0.9, 0.8, 0.3],
            atMm: [4, 6, 0],
            tiltDeg: 70,
          },
          {
            kind: "petals",
            count: 6,
            diameterMm: 11,
            depthMm: 4,
            rgb: [0.8, 0.3, 0.5],
            rgb2: [0.95, 0.9, 0.8],
            atMm: [-4, -6, 0],
          },
          {
            kind: "picture",
            shape: "disc",
            diameterMm: 11,
            atMm: [5, -5, 2],
            tiltDeg: 25,
            turnDeg: 40,
            picture: "front",
          },
          { kind: "backing", heightMm: 4, rgb: [0.05, 0.05, 0.06] },
        ),
        glass: "soda-lime",
      },
      planes,
      roughness: polishedBut(planes.length, (k) => k < 5 || k > 14, ROUGHNESS.prepolished),
      wet: true,
      light: paintedSky(),
      rasters: RASTERS,
    });
  }),
  scene(
    "a painted ball and grains in a thousand facets with a ground ring from behind",
    () => {
      const planes = thousand();
      return makeScene({
        piece: inside(
          {
            kind: "picture",
            shape: "core",
            diameterMm: 13,
            atMm: [-3, 2, 0],
            picture: "front",
            back: "back",
          },
          {
            kind: "speckle",
            count: 60,
            grainMm: 1.2,
            diameterMm: 14,
            rgb: [0.9, 0.7, 0.2],
            atMm: [6, -4, 0],
          },
        ),
        planes,
        roughness: polishedBut(planes.length, (k) => k >= 100 && k < 200, ROUGHNESS.ground),
        light: overcast,
        rasters: RASTERS,
      });
    },
    { hasDispersion: false, from: [30, -35] },
  ),
  scene(
    "a core and ground facets on a ring on a linen table by a window",
    () => {
      const core = inside({ kind: "core", diameterMm: 10, rgb: [0.8, 0.2, 0.1], atMm: [2, 1, 0] });
      const planes = crown(8, 0.9);
      const roughness = polishedBut(planes.length, (k) => k < 2, ROUGHNESS.ground);
      return putOnTable(
        makeScene({ piece: core, planes, roughness, light: WINDOW }),
        [0, 1, 0],
        -1,
        { material: MATERIALS.linen, radiusMm: 15 },
        true,
      );
    },
    { from: [25, 60], up: [0, 1, 0] },
  ),
];

/** Polished, with dispersion and nothing inside: what shows of colour is what its facets part. */
export const FACETED: LookScene = scene("faceted by a window", clearPiece);

/** On these it is judged how well noise is smoothed: clear with dispersion, and with something that scatters. */
export const NOISY: readonly LookScene[] = [
  FACETED,
  scene("opaque core off centre", () =>
    makeScene({
      piece: inside({
        kind: "core",
        diameterMm: 10,
        lengthMm: 14,
        rgb: [0.8, 0.2, 0.1],
        atMm: [2, 1, 0],
        tiltDeg: 30,
      }),
      planes: crown(12, 0.88),
      light: overcast,
    }),
  ),
];

/** A table that nothing is rough on: seen through, and through a lens. */
export const ON_LINEN: LookScene = scene(
  "on its back on a linen table by a window",
  () => putOnTable(clearPiece(), [0, 0, 1], -1, { material: MATERIALS.linen, radiusMm: 15 }),
  { from: [30, 30], up: [0, 0, 1] },
);

const CLEAR: Piece = { ...PIECE, glass: { name: "clear", nd: 1.6, vd: 35, densityGcm3: 2.5 } };
const WHITE = [1, 1, 1] as const;
/** Every shape that melts into the glass. */
const MELTED: NonNullable<Piece["inside"]> = [
  {
    kind: "twist",
    strands: 4,
    strandMm: 2,
    diameterMm: 10,
    lengthMm: 20,
    pitchMm: 10,
    taper: 0.5,
    veil: 9,
    rgb: WHITE,
    milky: 0.6,
  },
  {
    kind: "ribbon",
    widthMm: 12,
    lengthMm: 18,
    thicknessMm: 2,
    turns: 1.5,
    rgb: WHITE,
    fadeMm: 0.4,
    milky: 0.6,
  },
  {
    kind: "petals",
    count: 7,
    diameterMm: 18,
    depthMm: 5,
    vein: 0.5,
    rgb: WHITE,
    milky: 0.6,
    irregularity: 0.5,
  },
  {
    kind: "swirl",
    arms: 5,
    turns: 0.8,
    diameterMm: 18,
    depthMm: 6,
    thicknessMm: 1.5,
    rgb: WHITE,
    milky: 0.6,
  },
];

/** White in even light: all that is seen is 1, however often light goes to and fro. */
export const FURNACES: readonly LookScene[] = [
  scene("glass melted into it", () =>
    makeScene({ piece: { ...CLEAR, inside: MELTED }, planes: crown(12, 0.9), light: { kind: "uniform" } }),
  ),
  scene("a table, on its side", () => onWhite(crown(12, 0.88), [0, 1, 0], -1), {
    from: [35, 55],
    up: [0, 1, 0],
  }),
  scene("a table, on its flat", () => onWhite(crown(12, 0.88), [0, 0, -1], -0.9), {
    from: [30, -25],
    up: [0, 0, -1],
  }),
];

/** A ball that swallows all light and mirrors none (its index is 1), on a table in even light: its shade has a closed form. And a piece whose light is gathered by chance alone. */
export const SHADES: readonly LookScene[] = [
  scene(
    "a black ball on a table",
    () =>
      putOnTable(
        makeScene({
          piece: {
            diameterMm: 30,
            glass: { name: "black", nd: 1, vd: 60, densityGcm3: 2.5 },
            tint: { rgb: [1e-4, 1e-4, 1e-4], atMm: 0.01 },
          },
          planes: [],
          light: { kind: "uniform" },
        }),
        [0, 0, 1],
        -1,
        { material: plainMaterial([0.5, 0.5, 0.5]), radiusMm: 15 },
      ),
    { hasDispersion: false },
  ),
  scene(
    "a cut piece on paper under a lamp close by",
    () => {
      const bare = makeScene({ piece: PIECE, planes: crown(12, 0.88), light: lit("lamp-at-hand", 0.3) });
      return putOnTable(bare, [0, 1, 0], -1, { material: MATERIALS.paper, radiusMm: 15 });
    },
    { hasDispersion: false },
  ),
];

function onWhite(planes: Plane[], up: Vec3, height: number): Scene {
  return putOnTable(makeScene({ piece: CLEAR, planes, light: { kind: "uniform" } }), up, height, {
    material: plainMaterial([1, 1, 1]),
    radiusMm: 15,
  });
}

/** In the order in which the page that traces them counts. */
export const ALL_SCENES: readonly LookScene[] = [...LOOK_SCENES, ...FURNACES, ...SHADES, ...NOISY, ON_LINEN];
