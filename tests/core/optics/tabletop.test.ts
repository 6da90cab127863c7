import { describe, expect, it } from "vitest";
import type { Plane } from "../../../src/core/geometry/plane.ts";
import { addScaled, dot, normalize, scale, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { bodyNormal, enterBody, nextOnBody, pointOnBody } from "../../../src/core/optics/body.ts";
import { cameraFrom, cameraRay } from "../../../src/core/optics/camera.ts";
import { ROUGHNESS } from "../../../src/core/optics/finish.ts";
import { fresnel, reflectRay, refractRay } from "../../../src/core/optics/fresnel.ts";
import { guided, makeGuide } from "../../../src/core/optics/guide.ts";
import { LIGHT_SETTINGS } from "../../../src/core/optics/light-settings.ts";
import { type Light, lightRadiance } from "../../../src/core/optics/lights.ts";
import { plainMaterial } from "../../../src/core/optics/materials.ts";
import { numbersOf, type PictureSettings, renderRows } from "../../../src/core/optics/picture.ts";
import { nextRandom, type Random } from "../../../src/core/optics/random.ts";
import { RESTS, restOnFacet } from "../../../src/core/optics/rest.ts";
import { makeScene, putOnTable, type Scene } from "../../../src/core/optics/scene.ts";
import type { Rgb } from "../../../src/core/optics/spectrum.ts";
import { lightOver, type Tabletop, tableFrame } from "../../../src/core/optics/tabletop.ts";
import type { Piece } from "../../../src/core/plan/document.ts";
import { chance, clearPiece, randomDirection, tieredPlanes } from "./helpers.ts";

const UNIFORM: Light = { kind: "uniform" };
const WHITE: Rgb = [1, 1, 1];
const BACK: Vec3 = RESTS.back.down;

/** Twelve facets behind, meeting at nothing, and a flat there to lie on. */
const PLANES: readonly Plane[] = [...tieredPlanes(6), { n: BACK, h: 0.8 }];

interface Setting {
  readonly piece?: Piece;
  readonly planes?: readonly Plane[];
  readonly roughness?: number;
  readonly light?: Light;
  readonly rgb?: Rgb;
  readonly down?: Vec3;
  readonly floor?: number;
}

function onTable(s: Setting): Scene {
  const planes = s.planes ?? [];
  const scene = makeScene({
    piece: s.piece ?? clearPiece(1.6, 35),
    planes,
    roughness: planes.map(() => s.roughness ?? 0),
    light: s.light ?? UNIFORM,
  });
  return putOnTable(scene, scale(s.down ?? RESTS.side.down, -1), s.floor ?? -1, {
    material: plainMaterial(s.rgb ?? WHITE),
    radiusMm: 15,
  });
}

const SETTINGS: PictureSettings = { size: 16, samples: 4, seed: 5, dispersion: true, bounces: null };

/** Rows of a picture from 25 degrees above the table, and what was lost. */
function seen(scene: Scene, change: Partial<PictureSettings> = {}, fieldDeg = 16, distance = 10) {
  const settings = { ...SETTINGS, ...change };
  const tally = { lost: 0, meetings: 0 };
  const up = scene.tabletop?.up ?? [0, 1, 0];
  const [az, el] = restOnFacet(scale(up, -1)).from;
  const camera = cameraFrom(az, el, distance, fieldDeg, up);
  const rows = renderRows(scene, camera, settings, 0, settings.size, tally);
  return { rows, lost: tally.lost, numbers: numbersOf(settings) };
}
const mean = (values: ArrayLike<number>): number =>
  Array.from(values).reduce((sum, v) => sum + v, 0) / values.length;
const worst = (values: ArrayLike<number>): number => Math.max(...Array.from(values, (v) => Math.abs(v - 1)));

describe("white furnace: a white table and clear glass give uniform light back as it came", () => {
  it.each([
    ["a ball on its side", {}],
    ["a ball on a point of its back", { down: BACK }],
    ["a cut piece on a facet", { planes: PLANES, down: BACK, floor: -0.8 }],
    ["a cut piece on a slanted facet", { planes: PLANES, down: PLANES[0].n, floor: -PLANES[0].h }],
    [
      "a bubble that a facet opens, on that facet",
      {
        piece: { ...clearPiece(), inside: [{ kind: "bubble", diameterMm: 9, atMm: [0, 0, -12] }] },
        planes: PLANES,
        down: BACK,
        floor: -0.8,
      },
    ],
  ] as readonly (readonly [string, Setting])[])("every pixel to 1e-6: %s", (_, setting) => {
    for (const dispersion of [true, false]) {
      const { rows, lost } = seen(onTable(setting), { dispersion });
      expect(worst(rows)).toBeLessThan(1e-6);
      expect(lost).toBe(0);
    }
  });

  it("in the mean for rough facets", () => {
    const scene = onTable({ planes: PLANES, down: BACK, floor: -0.8, roughness: ROUGHNESS.ground });
    expect(Math.abs(mean(seen(scene).rows) - 1)).toBeLessThan(0.01);
  });

  it("and not where the table keeps some of the light", () => {
    const { rows } = seen(onTable({ rgb: [0.5, 0.5, 0.5] }));
    expect(mean(rows)).toBeLessThan(0.9);
  });

  it("nothing is hidden: without a background the piece's colour is what it hides, and no shadow lies beside it", () => {
    const { rows } = seen(onTable({ planes: PLANES, down: BACK, floor: -0.8 }), {
      transparent: true,
      dispersion: false,
    });
    let [most, beside] = [0, 0];
    for (let i = 0; i < rows.length; i += 4) {
      for (let c = 0; c < 3; c++) expect(Math.abs(rows[i + c] - rows[i + 3])).toBeLessThan(1e-6);
      most = Math.max(most, rows[i + 3]);
      if (rows[i + 3] < 1e-6) beside++;
    }
    expect(most).toBeGreaterThan(0.3);
    expect(beside).toBeGreaterThan(20);
  });
});

/** A round lamp alone in the dark: half its width and its height over the horizon, degrees. */
function lamp(halfDeg: number, heightDeg: number): Light {
  const rad = Math.PI / 180;
  const towards: Vec3 = [0, Math.sin(heightDeg * rad), Math.cos(heightDeg * rad)];
  const dark: Rgb = [0, 0, 0];
  const panel = {
    towards,
    right: [1, 0, 0] as Vec3,
    up: [0, towards[2], -towards[1]] as Vec3,
    halfWidth: Math.tan(halfDeg * rad),
    halfHeight: Math.tan(halfDeg * rad),
    round: true,
    columns: 1,
    rows: 1,
    bar: 0,
    soft: 1e-9,
    rgb: [10, 8, 5] as Rgb,
    rgbBelow: [10, 8, 5] as Rgb,
  };
  const setting = { zenith: dark, horizon: dark, floor: dark, nadir: dark, spread: 1, panels: [panel] };
  return { kind: "setting", setting, turnRad: 0 };
}
/** Glass of the index of air: the piece isn't there. */
const AIR = clearPiece(1);

describe("light on the table", () => {
  it.each([
    [8, 90],
    [8, 40],
    [20, 30],
  ])(
    "is that of a round lamp, %i degrees to its rim, %i high: E = pi L sin^2 a sin h, closed form",
    (half, height) => {
      // A uniform disc that is wholly above the horizon: its projected solid angle is pi sin^2 a sin h, a textbook result.
      const rad = Math.PI / 180;
      const share = Math.sin(half * rad) ** 2 * Math.sin(height * rad);
      const rgb: Rgb = [0.9, 0.5, 0.2];
      for (const down of [RESTS.side.down, RESTS.back.down, RESTS.front.down]) {
        const scene = onTable({ piece: AIR, light: lamp(half, height), rgb, down });
        const { rows } = seen(scene, { samples: 64, dispersion: false });
        for (let c = 0; c < 3; c++) {
          const expected = rgb[c] * [10, 8, 5][c] * share;
          expect(Math.abs(mean(rows.filter((_, i) => i % 3 === c)) / expected - 1)).toBeLessThan(0.02);
          expect(Math.abs((scene.tabletop?.bare[c] ?? 0) * rgb[c] - expected) / expected).toBeLessThan(0.03);
        }
      }
    },
  );

  it("lacks what a black ball hides: 1 - (R / d)^3 of an even sky, the view factor of a sphere from a plane's element", () => {
    // Siegel and Howell, Thermal Radiation Heat Transfer: (R / d)^2 cos for a sphere wholly above the element's horizon; here
    // it lies on the plane, so cos = R / d.
    const piece: Piece = {
      ...AIR,
      inside: [{ kind: "core", diameterMm: 30 * (1 - 1e-9), rgb: [0, 0, 0] }],
    };
    const scene = onTable({ piece, rgb: [0.7, 0.7, 0.7] });
    const size = 24;
    const [field, distance] = [30, 10];
    const change = { size, samples: 256, dispersion: false };
    const shown = seen(scene, change, field, distance).rows;
    const alone = seen(scene, { ...change, transparent: true }, field, distance).rows;
    const camera = cameraFrom(...restOnFacet(RESTS.side.down).from, distance, field, [0, 1, 0]);
    let places = 0;
    for (let y = 0; y < size; y++)
      for (let x = 0; x < size; x++) {
        const d = normalize(
          addScaled(
            addScaled(camera.forward, camera.right, (2 * x + 1) / size - 1),
            camera.up,
            1 - (2 * y + 1) / size,
          ),
        );
        // Pixels that are all table, not too far along it.
        if (d[1] > -0.1 || rayDistance(camera.at, d) < 1.15) continue;
        const q = addScaled(camera.at, d, (-1 - camera.at[1]) / d[1]);
        const hidden = 1 / (q[0] ** 2 + 1 + q[2] ** 2) ** 1.5;
        expect(Math.abs(shown[3 * (y * size + x)] - 0.7 * (1 - hidden))).toBeLessThan(0.05);
        expect(Math.abs(alone[4 * (y * size + x) + 3] - hidden)).toBeLessThan(0.06);
        expect(alone[4 * (y * size + x)]).toBe(0);
        places++;
      }
    expect(places).toBeGreaterThan(100);
  });

  it("comes from above only: what is below the horizon is not seen, not even in the glass", () => {
    const dark: Rgb = [0, 0, 0];
    const below = { zenith: dark, horizon: dark, floor: WHITE, nadir: WHITE, spread: 1, panels: [] };
    const light: Light = { kind: "setting", setting: below, turnRad: 0 };
    // Only the blurred line of the horizon gives a little.
    expect(mean(seen(onTable({ light, planes: PLANES })).rows)).toBeLessThan(0.02);
  });
});

/** Distance of a ray's line from the centre. */
const rayDistance = (o: Vec3, d: Vec3): number => Math.sqrt(Math.max(0, dot(o, o) - dot(o, d) ** 2));

/** One path by nothing but chance: Fresnel's at every surface, the plain cosine on the table. What is the light where it ends? */
function plainPath(scene: Scene, at: Vec3, towards: Vec3, random: Random): number {
  const { up, height, material } = scene.tabletop as Tabletop;
  let [p, d, weight]: [Vec3, Vec3, number] = [at, towards, 1];
  let entry = enterBody(scene, p, d);
  for (;;) {
    if (entry) {
      p = pointOnBody(scene, p, d, entry.t, entry.surface);
      let surface = entry.surface;
      let n = bodyNormal(scene, surface, p);
      let cos = -dot(d, n);
      const goesIn = nextRandom(random) >= fresnel(cos, 1 / scene.nd);
      d = goesIn ? refractRay(d, n, cos, 1 / scene.nd) : reflectRay(d, n, cos);
      for (let isIn = goesIn; isIn; ) {
        const ahead = nextOnBody(scene, p, d, surface);
        p = pointOnBody(scene, p, d, ahead.t, ahead.surface);
        surface = ahead.surface;
        n = scale(bodyNormal(scene, surface, p), -1);
        cos = Math.max(0, -dot(d, n));
        isIn = nextRandom(random) < fresnel(cos, scene.nd);
        d = isIn ? reflectRay(d, n, cos) : refractRay(d, n, cos, scene.nd);
      }
    }
    const down = -dot(d, up);
    if (down <= 0) return weight * lightRadiance(scene.light, d)[1];
    p = addScaled(p, d, Math.max(0, (dot(p, up) - height) / down));
    weight *= material.rgb[1];
    // Lambert: the normal and a point of the unit sphere, added.
    d = normalize(addScaled(up, randomDirection(random), 1));
    const ahead = enterBody(scene, addScaled(p, d, -1e-9), d);
    entry = ahead && { ...ahead, t: ahead.t - 1e-9 };
  }
}

describe("a piece on a table in a room is seen as by a tracer that leaves everything to plain chance:", () => {
  it.each([
    ["cut, on a slanted facet", PLANES, PLANES[0]],
    // Most of what it shows is the table that it stands on, through the flat that it stands with.
    ["half a ball", [{ n: BACK, h: 0.2 }], { n: BACK, h: 0.2 }],
  ] as const)("%s", (_, planes, { n: down, h }) => {
    const light: Light = { kind: "setting", setting: LIGHT_SETTINGS["north-window"], turnRad: 0.5 };
    const scene = onTable({ planes, light, down, floor: -h, rgb: [0.9, 0.7, 0.3] });
    const size = 6;
    const camera = cameraFrom(...restOnFacet(down).from, 10, 20, scale(down, -1));
    const settings = { size, samples: 3000, seed: 2, dispersion: false, bounces: null };
    const rows = renderRows(scene, camera, settings, 0, size, { lost: 0, meetings: 0 });
    const random = chance(77);
    const count = 12_000;
    let chi = 0;
    for (let i = 0; i < size * size; i++) {
      let [sum, squares] = [0, 0];
      for (let k = 0; k < count; k++) {
        const x = (2 * ((i % size) + nextRandom(random))) / size - 1;
        const y = 1 - (2 * (Math.floor(i / size) + nextRandom(random))) / size;
        const value = plainPath(scene, camera.at, cameraRay(camera, x, y), random);
        sum += value;
        squares += value * value;
      }
      const expected = sum / count;
      const variance = (squares / count - expected ** 2) / count;
      // The tracer's own noise is no larger than that of as many plain paths.
      const off = (rows[3 * i + 1] - expected) ** 2 / (variance * (1 + count / settings.samples));
      expect(off, `pixel ${i}`).toBeLessThan(16);
      chi += off / (size * size);
    }
    expect(chi).toBeLessThan(1.5);
  });
});

describe("a named light over a table", () => {
  it("has its up along the table's normal, and stands as ever over a piece on its side", () => {
    const { sweep: _, ...setting } = LIGHT_SETTINGS["north-window"];
    const light: Light = { kind: "setting", setting, turnRad: 0.4 };
    const random = chance(8);
    for (const down of [RESTS.side.down, RESTS.back.down, RESTS.front.down, PLANES[0].n]) {
      const { up, across, along } = tableFrame(scale(down, -1));
      const over = lightOver(light, up, WHITE);
      for (let k = 0; k < 50; k++) {
        const d = randomDirection(random);
        const turned = addScaled(addScaled(scale(across, d[0]), up, d[1]), along, d[2]);
        const [own, there] = [lightRadiance(light, d), lightRadiance(over, turned)];
        for (let c = 0; c < 3; c++) expect(there[c]).toBeCloseTo(own[c], 9);
      }
    }
    expect(tableFrame([0, 1, 0])).toEqual({ up: [0, 1, 0], across: [1, 0, 0], along: [0, 0, 1] });
    expect(lightOver(UNIFORM, [0, 0, 1], WHITE)).toBe(UNIFORM);
  });
});

describe("the usual view of a piece on a table", () => {
  it("looks down on it from 25 degrees above, and on a flat at the back as at rest on the back", () => {
    for (const { n } of PLANES) {
      const [az, el] = restOnFacet(n).from;
      const height = -dot(cameraFrom(az, el, 1, 10).at, n);
      expect(height).toBeCloseTo(Math.sin((25 * Math.PI) / 180), 9);
    }
    const [az, el] = restOnFacet(RESTS.back.down).from;
    expect([az, el].map((v) => Math.round(1e6 * v) / 1e6)).toEqual([...RESTS.back.from]);
  });
});

describe("the guide", () => {
  it("has a density that is made up for exactly, and never leaves a direction out", () => {
    const guide = makeGuide((row, column) => (row === 3 && column > 100 ? 50 : row % 2));
    const random = chance(4);
    const cells = new Float64Array(8);
    let [least, inverse] = [Number.POSITIVE_INFINITY, 0];
    const count = 200_000;
    for (let k = 0; k < count; k++) {
      const [x, , density] = guided(guide, nextRandom(random), nextRandom(random));
      least = Math.min(least, density);
      inverse += 1 / density / count;
      cells[Math.floor(8 * x)] += 1 / density / count;
    }
    expect(least).toBeGreaterThanOrEqual(0.5 - 1e-9);
    expect(inverse).toBeCloseTo(1, 2);
    for (const share of cells) expect(share).toBeCloseTo(1 / 8, 2);
  });
});
