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
function paintedSky(): Light {
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

/** Between them: each light, each finish, each design, tint and layers, dispersion on and off, no, few, many and as many facets as a plan may have. */
export const LOOK_SCENES: readonly LookScene[] = [
  scene(
    "uncut as the flame left it without dispersion",
    () =>
      makeScene({
        piece: { ...PIECE, waviness: { slopeDeg: 1.5, acrossMm: 7 }, seeds: { count: 60, diameterMm: 0.9 } },
        planes: [],
        light: lit("north-window", 0.3),
      }),
    { hasDispersion: false },
  ),
  scene("faceted by a window", () =>
    makeScene({ piece: PIECE, planes: crown(12, 0.88), light: lit("north-window", 0.3) }),
  ),
  scene("check glass with 81 facets under a painted sky", () =>
    makeScene({ piece: PIECE, planes: crown(40, 0.95), glass: check, light: paintedSky() }),
  ),
  scene("cased soda-lime under one lamp", () =>
    makeScene({
      piece: {
        diameterMm: 30,
        glass: "soda-lime",
        tint: { rgb: [0.2, 0.6, 0.8], atMm: 20 },
        cased: [{ diameterMm: 13, tint: { rgb: [0.9, 0.4, 0.1], atMm: 9 } }, { diameterMm: 21 }],
      },
      planes: crown(9, 0.9),
      light: lit("one-lamp"),
    }),
  ),
  scene("pre-polished under water", () => {
    const planes = crown(10, 0.88);
    const roughness = planes.map(() => ROUGHNESS.prepolished);
    return makeScene({ piece: PIECE, planes, roughness, wet: true, light: overcast });
  }),
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
  scene("tinted core and bubble under spots", () =>
    makeScene({
      piece: inside(
        { kind: "core", diameterMm: 12, rgb: [0.9, 0.5, 0.1], opaque: false, atMm: [-3, 0, 0] },
        { kind: "bubble", diameterMm: 5, atMm: [6, 2, 0] },
      ),
      planes: crown(12, 0.88),
      light: lit("showroom-spots"),
    }),
  ),
  scene("twisted ribbon", () =>
    makeScene({
      piece: inside({
        kind: "ribbon",
        widthMm: 9,
        lengthMm: 18,
        thicknessMm: 1,
        turns: 1.5,
        rgb: [0.1, 0.3, 0.8],
        rgb2: [0.9, 0.8, 0.3],
      }),
      planes: crown(6, 0.9),
      light: overcast,
    }),
  ),
  scene("petals over a backing", () =>
    makeScene({
      piece: inside(
        {
          kind: "petals",
          count: 6,
          diameterMm: 16,
          depthMm: 5,
          rgb: [0.8, 0.3, 0.5],
          rgb2: [0.95, 0.9, 0.8],
        },
        { kind: "backing", heightMm: 4, rgb: [0.05, 0.05, 0.06] },
      ),
      planes: crown(6, 0.9),
      light: overcast,
    }),
  ),
  scene("pictures on a tilted sheet", () =>
    makeScene({
      piece: inside({
        kind: "picture",
        shape: "disc",
        diameterMm: 20,
        atMm: [1, -1, -2],
        tiltDeg: 25,
        turnDeg: 40,
        picture: "front",
      }),
      planes: crown(6, 0.9),
      light: overcast,
      rasters: RASTERS,
    }),
  ),
  scene(
    "pictures on a ball seen from behind",
    () =>
      makeScene({
        piece: inside({
          kind: "picture",
          shape: "core",
          diameterMm: 16,
          atMm: [0, 2, 1],
          picture: "front",
          back: "back",
        }),
        planes: crown(6, 0.9),
        light: overcast,
        rasters: RASTERS,
      }),
    { from: [30, -35] },
  ),
  scene("speckle behind half-ground facets", () => {
    const planes = crown(6, 0.9);
    const roughness = planes.map((_, k) => (k < 6 ? ROUGHNESS.ground : ROUGHNESS.polished));
    const speckle = {
      kind: "speckle",
      count: 60,
      grainMm: 1.2,
      diameterMm: 18,
      rgb: [0.9, 0.7, 0.2],
    } as const;
    return makeScene({ piece: inside(speckle), planes, roughness, light: overcast });
  }),
  scene(
    "a thousand facets with a ground ring",
    () => {
      const planes = thousand();
      const roughness = planes.map((_, k) => (k >= 900 ? ROUGHNESS.ground : ROUGHNESS.polished));
      return makeScene({ piece: PIECE, planes, roughness, light: lit("north-window", 0.3) });
    },
    { hasDispersion: false },
  ),
  scene(
    "on its back on a linen table by a window",
    () => {
      const bare = makeScene({ piece: PIECE, planes: crown(12, 0.88), light: lit("north-window", 0.3) });
      return putOnTable(bare, [0, 0, 1], -1, { material: MATERIALS.linen, radiusMm: 15 });
    },
    { from: [30, 30], up: [0, 0, 1] },
  ),
  scene(
    "a core and ground facets on their side on a slate table",
    () => {
      const core = inside({ kind: "core", diameterMm: 12, rgb: [0.8, 0.2, 0.1], atMm: [2, 1, 0] });
      const planes = crown(8, 0.9);
      const roughness = planes.map((_, k) => (k < 4 ? ROUGHNESS.ground : ROUGHNESS.polished));
      return putOnTable(makeScene({ piece: core, planes, roughness, light: overcast }), [0, 1, 0], -1, {
        material: MATERIALS.slate,
        radiusMm: 15,
      });
    },
    { from: [35, 55], up: [0, 1, 0] },
  ),
  scene(
    "on a ring on a paper table under spots",
    () => {
      const bare = makeScene({ piece: PIECE, planes: crown(9, 0.9), light: lit("showroom-spots", 0.3) });
      return putOnTable(bare, [0, 1, 0], -1, { material: MATERIALS.paper, radiusMm: 15 }, true);
    },
    { from: [25, 70], up: [0, 1, 0] },
  ),
];

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
  scene("a black ball on a table", () =>
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
