/**
 * The shader against its twin, function by function: each on the same thousand random inputs, so that a difference names its
 * culprit. The shader reckons in single precision, which the bounds allow for: away from edges (of a shape, of total reflection)
 * each number agrees to `within`, and at most `stray` of the inputs may lie so near an edge that they differ.
 */
import { expect, it } from "vitest";
import { addScaled, normalize, scale, sub, type Vec3 } from "../../src/core/geometry/vec.ts";
import { placeIn } from "../../src/core/inside/media.ts";
import { toLocal } from "../../src/core/inside/scene-design.ts";
import { fieldAt } from "../../src/core/measure/caps.ts";
import { bodyNormal, enterBody, NOWHERE, nextOnBody, pointOnBody } from "../../src/core/optics/body.ts";
import { lengthWithinBall } from "../../src/core/optics/casing.ts";
import { roundedNormal } from "../../src/core/optics/edges.ts";
import { fresnel, reflectRay, refractRay } from "../../src/core/optics/fresnel.ts";
import { indexAt } from "../../src/core/optics/glasses.ts";
import { bubbleExit, hitDesign, isWithin, lengthWithin } from "../../src/core/optics/inside.ts";
import { inUnits, LIGHT_SETTINGS, type Light, lightRadiance } from "../../src/core/optics/lights.ts";
import { MATERIALS, type MaterialName, reflectanceAt } from "../../src/core/optics/materials.ts";
import { sampleVisibleNormal, smithLambda, walkMicrosurface } from "../../src/core/optics/microfacet.ts";
import { passMediaBy } from "../../src/core/optics/pass-media.ts";
import { nextRandom, type Random } from "../../src/core/optics/random.ts";
import { hitRing, RING_RGB } from "../../src/core/optics/ring.ts";
import { makeScene, putOnTable } from "../../src/core/optics/scene.ts";
import { nextSeed } from "../../src/core/optics/seeds.ts";
import { wavelengthIn } from "../../src/core/optics/spectrum.ts";
import { bareAt, makeTabletop } from "../../src/core/optics/tabletop.ts";
import { facingNormal } from "../../src/core/optics/waviness.ts";
import type { InsideDesign } from "../../src/core/plan/document.ts";
import { capTexels, packScene } from "../../src/render/pack-scene.ts";
import type { ByteTexels, Texels } from "../../src/render/packed-scene.ts";
import { LIMIT_DEFINES } from "../../src/render/shader-limits.ts";
import { chance, randomDirection } from "../core/optics/helpers.ts";
import { clearPiece, paintedSky, RASTERS } from "./look-scenes.ts";
import { sharedThing } from "./shared.ts";
import { openPage } from "./support.ts";
import type { ProbeWish, SentTexels } from "./twin-page.ts";

const INPUTS = 1000;

interface Probe {
  readonly name: string;
  readonly wish: Partial<Omit<ProbeWish, "inputs">> & Pick<ProbeWish, "include" | "body">;
  /** Four numbers a texel. */
  readonly input: (random: Random) => readonly number[];
  /** What the twin makes of an input: eight numbers at most. */
  readonly twin: (given: readonly number[]) => readonly number[];
  readonly within?: number;
  readonly stray?: number;
}

const opened = sharedThing(
  async () => {
    const open = await openPage("tests/browser/twin-page.html");
    await open.page.waitForFunction("'probe' in window");
    return open;
  },
  ({ close }) => close(),
  ({ errors }) => expect(errors).toEqual([]),
);

const sent = ({ width, height, rgba }: Texels | ByteTexels): SentTexels => ({
  width,
  height,
  bytes: rgba instanceof Uint8Array,
  rgba: Array.from(rgba),
});
/** No texture beside the inputs. */
const NONE: ProbeWish["samplers"] = {};
const single = (values: readonly number[]): number[] => values.map(Math.fround);

/** How many inputs the two disagree on, and the first of them. */
async function disagreement({ name, wish, input, twin, within = 1e-4 }: Probe) {
  const random = chance(name.length);
  const inputs = Array.from({ length: INPUTS }, () => single(input(random)));
  const whole: ProbeWish = { defines: {}, uniforms: {}, blocks: {}, samplers: {}, ...wish, inputs };
  const ours = await opened().page.evaluate<number[][]>(`probe(${JSON.stringify(whole)})`);
  let [differ, told] = [0, 0];
  let first = "";
  inputs.forEach((given, i) => {
    const expected = twin(given);
    if (expected.some((v) => v !== 0)) told++;
    const isSame = expected.every((v, k) => Math.abs(ours[i][k] - v) <= within * Math.max(1, Math.abs(v)));
    if (isSame) return;
    if (differ++ === 0) first = `${given.join(" ")} gives ${ours[i].join(" ")} and not ${expected.join(" ")}`;
  });
  return { share: differ / INPUTS, first, told: told / INPUTS };
}

const between = (random: Random, low: number, high: number): number =>
  low + (high - low) * nextRandom(random);
const padded = (...values: readonly number[]): readonly number[] => [
  ...values,
  ...new Array<number>((4 - (values.length % 4)) % 4).fill(0),
];
const vec = (given: readonly number[], at: number): Vec3 => [given[at], given[at + 1], given[at + 2]];
/** A whole number of 32 bits as two of 16. */
const halves = (random: Random) => [
  Math.floor(65536 * nextRandom(random)),
  Math.floor(65536 * nextRandom(random)),
];
const state = (high: number, low: number): Random => ({
  state: ((high << 16) | low) >>> 0,
  sample: 0,
  scramble: 0,
  even: false,
});

const BOUNDARY: readonly Probe[] = [
  {
    name: "the field of the ball that a direction lies in",
    wish: {
      include: ["caps.glsl"],
      defines: LIMIT_DEFINES,
      body: "first.x = float(fieldAt(given(0).xyz));",
    },
    input: (random: Random) => [...randomDirection(random), 0],
    twin: ([x, y, z]: readonly number[]) => [fieldAt(x, y, z)],
    within: 1e-6,
  },
  {
    name: "Fresnel",
    wish: { include: ["fresnel.glsl"], body: "first.x = fresnel(given(0).x, given(0).y);" },
    input: (random) => padded(between(random, 0.02, 1), between(random, 0.5, 2)),
    twin: ([cosI, eta]) => [fresnel(cosI, eta)],
    // near total reflection the slope has no bound
    within: 1e-3,
    stray: 0.002,
  },
  {
    name: "mirror and refraction",
    wish: {
      include: ["fresnel.glsl"],
      body: `vec3 d = given(0).xyz; vec3 n = given(1).xyz; float cosI = -dot(d, n);
  first.xyz = reflectRay(d, n, cosI); second.xyz = refractRay(d, n, cosI, given(0).w);`,
    },
    input: (random) => {
      const n = randomDirection(random);
      const d = randomDirection(random);
      const sign = d[0] * n[0] + d[1] * n[1] + d[2] * n[2] < 0 ? 1 : -1;
      return [...d, between(random, 0.6, 1), ...n.map((v) => sign * v), 0];
    },
    twin: (given) => {
      const [d, n] = [vec(given, 0), vec(given, 4)];
      const cosI = -(d[0] * n[0] + d[1] * n[1] + d[2] * n[2]);
      return [...reflectRay(d, n, cosI), 0, ...refractRay(d, n, cosI, given[3])];
    },
  },
  {
    name: "Smith's Lambda and a visible normal",
    wish: {
      include: ["microfacet.glsl"],
      body: `first.x = smithLambda(given(0).z, given(0).w);
  second.xyz = sampleVisibleNormal(given(0).xyz, given(0).w, given(1).x, given(1).y);`,
    },
    input: (random) => [
      ...randomDirection(random),
      between(random, 0.05, 0.6),
      ...padded(nextRandom(random), nextRandom(random)),
    ],
    twin: (given) => [
      smithLambda(given[2], given[3]),
      ...[0, 0, 0],
      ...sampleVisibleNormal(vec(given, 0), given[3], given[4], given[5]),
    ],
    within: 1e-3,
    stray: 0.01,
  },
  {
    name: "a walk on a rough facet",
    wish: {
      include: ["microfacet.glsl"],
      body: `uint random = whole(given(1).xy);
  Crossing c = walkMicrosurface(given(0).xyz, given(1).z > 0.5, given(0).w, 1.0 / 1.5, random);
  first = vec4(c.d, c.outside ? 1.0 : 0.0);`,
    },
    input: (random) => {
      const outside = nextRandom(random) < 0.5;
      const [x, y, z] = randomDirection(random);
      return [x, y, outside ? -Math.abs(z) : Math.abs(z), 0.3, ...halves(random), outside ? 1 : 0, 0];
    },
    twin: (given) => {
      const { d, outside } = walkMicrosurface(
        vec(given, 0),
        given[6] > 0.5,
        given[3],
        1 / 1.5,
        state(given[4], given[5]),
      );
      return [...d, outside ? 1 : 0];
    },
    within: 2e-3,
    // a chance that falls the other way by rounding sends it elsewhere
    stray: 0.01,
  },
  {
    name: "chance",
    wish: {
      include: ["random.glsl"],
      body: "uint random = whole(given(0).xy); first.x = nextRandom(random); first.y = nextRandom(random);",
    },
    input: (random) => padded(...halves(random)),
    twin: ([high, low]) => {
      const random = state(high, low);
      return [nextRandom(random), nextRandom(random)];
    },
    within: 0,
  },
];

const faceted = clearPiece();
const packedFaceted = packScene(faceted);
/** The same body with another finish on each facet. */
const finished = { ...faceted, roughness: faceted.roughness.map((_, i) => (i + 1) / 100) };
const packedFinished = packScene(finished);
const ON_CAPS = {
  include: ["body.glsl"],
  defines: { ...packedFaceted.defines, CAPS: "1" },
  samplers: { planes: sent(capTexels(packedFinished)) },
};
/** Where a ray meets the body, by the planes whose caps it may leave by. */
const CAPPED: readonly Probe[] = [
  {
    name: "leaving the body, asking few planes",
    wish: {
      ...ON_CAPS,
      body: `Surface ahead = leaveBody(given(0).xyz, given(1).xyz);
  first = vec4(ahead.n, ahead.t); second.x = roughnessOf(ahead.id);`,
    },
    input: (random) => [
      ...scale(randomDirection(random), 0.7 * Math.cbrt(nextRandom(random))),
      0,
      ...randomDirection(random),
      0,
    ],
    twin: (given) => {
      const [o, d] = [vec(given, 0), vec(given, 4)];
      const { t, surface } = nextOnBody(faceted, o, d, NOWHERE);
      return [...bodyNormal(faceted, surface, addScaled(o, d, t)), t, finished.roughness[surface] ?? 0];
    },
    // where it all but meets an edge either side is right
    stray: 0.005,
  },
  {
    name: "entering the body, asking few planes",
    wish: {
      ...ON_CAPS,
      body: `Surface entry = enterBody(given(0).xyz, given(1).xyz);
  if (entry.id != NOTHING) first = vec4(entry.n, entry.t);`,
    },
    input: (random) => {
      const from = scale(randomDirection(random), 3);
      const aim = scale(randomDirection(random), 1.1);
      return [...from, 0, ...normalize(addScaled(aim, from, -1)), 0];
    },
    twin: (given) => {
      const [o, d] = [vec(given, 0), vec(given, 4)];
      const entry = enterBody(faceted, o, d);
      return entry
        ? [...bodyNormal(faceted, entry.surface, addScaled(o, d, entry.t)), entry.t]
        : [0, 0, 0, 0];
    },
    stray: 0.005,
  },
];

const SPECTRUM: Probe = {
  name: "the spectrum",
  wish: {
    include: ["spectrum.glsl"],
    defines: { ...packedFaceted.defines, CHANNELS: "1" },
    samplers: { spectrum: sent(packedFaceted.spectrum) },
    body: `PathColour c = colourOfStratum(given(0).x);
  first = vec4(c.basis, c.index); second = vec4(weightOfStratum(given(0).x), c.sigma);`,
  },
  input: (random) => padded(nextRandom(random)),
  twin: ([u]) => {
    const j = Math.floor(u * faceted.strata.length);
    const s = faceted.strata[j];
    const index = indexAt(faceted.dispersion, wavelengthIn(s, u * faceted.strata.length - j));
    return [...s.basis, index, ...s.weight, faceted.sigma[j]];
  },
  // the shader takes the index straight from end to middle to end of a stratum
  within: 2e-4,
};

const lights: readonly (readonly [string, Light])[] = [
  ...Object.entries(LIGHT_SETTINGS).map(
    ([name, setting]) => [name, { kind: "setting", setting, turnRad: 0.4 }] as const,
  ),
  ["a picture", paintedSky()],
];
const LIGHTS: readonly Probe[] = lights.map(([name, light]) => {
  const packed = packScene(
    makeScene({ piece: { diameterMm: 30, glass: "borosilicate" }, planes: [], light }),
  );
  return {
    name: `the light of ${name}`,
    wish: {
      include: ["light.glsl"],
      defines: packed.defines,
      uniforms: packed.uniforms,
      samplers: packed.environment ? { environment: sent(packed.environment) } : NONE,
      body: "first.xyz = lightFrom(given(1).xyz, given(0).xyz);",
    },
    input: (random) => [
      ...padded(...randomDirection(random)),
      ...padded(between(random, -5, 5), between(random, -1, 4), between(random, -5, 5)),
    ],
    twin: (given) => lightRadiance(inUnits(light, 15), vec(given, 0), vec(given, 4)),
    within: 2e-3,
    stray: 0.005,
  };
});

/** The lamp over a tilted table. */
const lampLit = putOnTable(
  makeScene({
    piece: { diameterMm: 40, glass: "borosilicate" },
    planes: [],
    light: { kind: "setting", setting: LIGHT_SETTINGS["lamp-at-hand"], turnRad: 0.4 },
  }),
  normalize([0.3, 0.8, -0.5]),
  -0.9,
  { material: MATERIALS.paper, radiusMm: 20 },
);
const packedLampLit = packScene(lampLit);
const ON_TABLE: Probe = {
  name: "light near by on a bare table",
  wish: {
    include: ["light.glsl", "tabletop.glsl"],
    defines: packedLampLit.defines,
    uniforms: packedLampLit.uniforms,
    samplers: packedLampLit.nearLight ? { nearLight: sent(packedLampLit.nearLight) } : NONE,
    body: "first.xyz = bareAt(given(0).x * tableAcross + given(0).y * tableAlong + tableHeight * tableUp);",
  },
  input: (random) => padded(between(random, -40, 40), between(random, -40, 40)),
  twin: ([x, y]) => {
    const { tabletop } = lampLit;
    if (!tabletop) throw new Error("no table");
    const { across, along, up, height } = tabletop;
    return bareAt(tabletop, addScaled(addScaled(scale(across, x), along, y), up, height));
  },
  // straight between texels
  within: 3e-3,
  stray: 0.002,
};

const RGB = [0.8, 0.3, 0.2] as const;
const RGB2 = [0.1, 0.4, 0.9] as const;
const PLACED = { atMm: [1, -2, 1.5], tiltDeg: 25, turnDeg: 50 } as const;
const DESIGNS: readonly InsideDesign[] = [
  { kind: "core", diameterMm: 14, lengthMm: 18, rgb: RGB, ...PLACED },
  { kind: "bubble", diameterMm: 14, atMm: [1, 2, 3] },
  {
    kind: "ribbon",
    widthMm: 14,
    lengthMm: 20,
    thicknessMm: 1.5,
    turns: 1.5,
    rgb: RGB,
    rgb2: RGB2,
    ...PLACED,
  },
  { kind: "petals", count: 6, diameterMm: 22, depthMm: 7, rgb: RGB, rgb2: RGB2, ...PLACED },
  { kind: "backing", heightMm: 9, rgb: RGB, tiltDeg: 20 },
  { kind: "speckle", count: 200, grainMm: 1.6, diameterMm: 22, rgb: RGB, seed: 4 },
  { kind: "picture", shape: "disc", diameterMm: 22, picture: "front", back: "back", ...PLACED },
  { kind: "picture", shape: "core", diameterMm: 18, picture: "front", back: "back", ...PLACED },
];
const nameOf = (design: InsideDesign): string =>
  design.kind === "picture" ? `${design.kind} on a ${design.shape}` : design.kind;

/** A piece with one thing inside, as the shader gets it. */
function packedWith(design: InsideDesign) {
  const piece = { diameterMm: 30, glass: "borosilicate", inside: [design] } as const;
  const scene = makeScene({ piece, planes: [], light: { kind: "uniform" }, rasters: RASTERS });
  const packed = packScene(scene);
  const wish = {
    include: ["inside.glsl"],
    defines: packed.defines,
    uniforms: packed.uniforms,
    blocks: { Designs: Array.from(packed.designs) },
    samplers: packed.pictures ? { pictures: sent(packed.pictures) } : NONE,
  };
  return { body: scene.designs[0], wish };
}

/** A ray that begins in the ball and runs near its middle; the rest is for chance. */
function rayInside(random: Random): readonly number[] {
  const o = randomDirection(random).map((v) => 0.95 * v) as unknown as Vec3;
  const d = normalize(sub(randomDirection(random).map((v) => 0.5 * v) as unknown as Vec3, o));
  return [...o, 0, ...d, 0, ...padded(...halves(random))];
}

const HITS: readonly Probe[] = DESIGNS.map((design) => {
  const { body, wish } = packedWith(design);
  return {
    name: nameOf(design),
    wish: {
      ...wish,
      body: `uint random = whole(given(2).xy);
  DesignHit hit = hitDesign(0, designAt(0), given(0).xyz, given(1).xyz, 1.7, -1, random);
  if (hit.t >= 0.0) { first = vec4(hit.n, hit.t); second.xyz = hit.rgb; }`,
    },
    input: rayInside,
    twin: (given) => {
      const random = state(given[8], given[9]);
      const hit = hitDesign(body, vec(given, 0), vec(given, 4), 1.7, -1, random);
      return hit ? [...hit.n, hit.t, ...hit.rgb] : [0, 0, 0, 0, 0, 0, 0];
    },
    within: 0.01,
    stray: 0.015,
  };
});

const tinted = packedWith({ kind: "core", diameterMm: 16, rgb: RGB, opaque: false, ...PLACED });
const hollow = packedWith({ kind: "bubble", diameterMm: 18, atMm: [1, 2, 3] });
const THROUGH: readonly Probe[] = [
  {
    name: "the way through a tinted core",
    wish: {
      ...tinted.wish,
      body: "first.x = lengthWithin(designAt(0), given(0).xyz, given(1).xyz, 1.2);",
    },
    input: rayInside,
    twin: (given) => [lengthWithin(tinted.body, vec(given, 0), vec(given, 4), 1.2)],
    // the root's slope has no bound where a ray grazes
    within: 1e-3,
  },
  {
    name: "the way out of a bubble, and whether one is in it",
    wish: {
      ...hollow.wish,
      body: `vec3 p = 0.9 * given(0).xyz; first.x = bubbleExit(designAt(0), p, given(1).xyz);
  first.y = isWithin(designAt(0), 0.7 * p) ? 1.0 : 0.0;`,
    },
    input: rayInside,
    twin: (given) => {
      const p = vec(given, 0).map((v) => 0.9 * v) as unknown as Vec3;
      const isIn = isWithin(hollow.body, p.map((v) => 0.7 * v) as unknown as Vec3);
      return [bubbleExit(hollow.body, p, vec(given, 4)), isIn ? 1 : 0];
    },
    within: 1e-3,
    stray: 0.002,
  },
];

const layered = makeScene({
  piece: {
    diameterMm: 30,
    glass: "borosilicate",
    tint: { rgb: RGB, atMm: 9 },
    cased: [{ diameterMm: 12, tint: { rgb: RGB2, atMm: 7 } }, { diameterMm: 22 }],
    seeds: { count: 400, diameterMm: 1, seed: 6 },
    waviness: { slopeDeg: 4, acrossMm: 5, seed: 3 },
  },
  planes: [],
  light: { kind: "uniform" },
});
const packedLayered = packScene(layered);
const GLASS: readonly Probe[] = [
  {
    name: "what layers of the glass take",
    wish: {
      include: ["spectrum.glsl", "casing.glsl"],
      defines: { ...packedLayered.defines, CHANNELS: "3" },
      uniforms: packedLayered.uniforms,
      body: "first.xyz = exp(-takenByCasings(given(0).xyz, given(1).xyz, 1.3, colourOfChannels()));",
    },
    input: rayInside,
    twin: (given) =>
      [0, 1, 2].map((c) =>
        Math.exp(
          -layered.casings.reduce(
            (sum, { radius, sigmaRgb }) =>
              sum + sigmaRgb[c] * lengthWithinBall(radius, vec(given, 0), vec(given, 4), 1.3),
            0,
          ),
        ),
      ),
    // the root's slope has no bound where a ray grazes a layer
    within: 5e-3,
  },
  {
    name: "the next seed",
    wish: {
      include: ["random.glsl", "grains.glsl", "body.glsl", "seeds.glsl"],
      defines: packedLayered.defines,
      uniforms: packedLayered.uniforms,
      blocks: { Body: Array.from(packedLayered.body) },
      body: `SeedHit hit = nextSeed(given(0).xyz, given(1).xyz, 1.7);
  if (hit.t >= 0.0) first = vec4(hit.centre, hit.t);`,
    },
    input: rayInside,
    twin: (given) => {
      if (!layered.seeds) throw new Error("no seeds");
      const hit = nextSeed(layered, layered.seeds, vec(given, 0), vec(given, 4), 1.7);
      return hit ? [...hit.centre, hit.t] : [0, 0, 0, 0];
    },
    // the root's slope has no bound where a ray grazes
    within: 0.01,
    stray: 0.01,
  },
  {
    name: "a wavy skin's normal",
    wish: {
      include: ["waviness.glsl"],
      defines: packedLayered.defines,
      uniforms: packedLayered.uniforms,
      body: "first.xyz = facingNormal(given(0).xyz, given(0).xyz, given(1).xyz);",
    },
    input: (random) => [...randomDirection(random), 0, ...randomDirection(random), 0],
    twin: (given) => {
      if (!layered.waviness) throw new Error("no waviness");
      return facingNormal(layered.waviness, vec(given, 0), vec(given, 0), vec(given, 4));
    },
    stray: 0.002,
  },
];

/** A cut piece whose edges are rounded so far that chance finds them. */
const rounded = makeScene({
  piece: { diameterMm: 30, glass: "borosilicate" },
  planes: Array.from({ length: 26 }, (_, k) => ({
    n: normalize([Math.cos(2.4 * k), Math.sin(2.4 * k), (2 * k + 1) / 26 - 1.05]),
    h: 0.86 + 0.004 * k,
  })),
  edgeMm: 3,
  light: { kind: "uniform" },
});
const packedRounded = packScene(rounded);
/** Where chance meets it from outside, the surface, and the ray. */
function metRounded(given: readonly number[]) {
  const [o, d] = [vec(given, 0), vec(given, 4)];
  const hit = enterBody(rounded, o, d);
  if (!hit) return null;
  const p = pointOnBody(rounded, o, d, hit.t, hit.surface);
  return { surface: hit.surface, p, n: bodyNormal(rounded, hit.surface, p), d };
}
const EDGES: readonly Probe[] = (["0", "1"] as const).map((caps) => ({
  name: `the rounded edges of a cut piece${caps === "1" ? ", asking few planes" : ""}`,
  wish: {
    include: ["edges.glsl"],
    defines: { ...packedRounded.defines, CAPS: caps },
    uniforms: packedRounded.uniforms,
    blocks: { Body: Array.from(packedRounded.body) },
    samplers: caps === "1" ? { planes: sent(capTexels(packedRounded)) } : NONE,
    body: `Surface met = enterBody(given(0).xyz, given(1).xyz);
  vec3 p = given(0).xyz + met.t * given(1).xyz;
  if (met.id != NOTHING) first.xyz = roundedNormal(met.id, p, met.n, given(1).xyz);`,
  },
  input: (random) => {
    const from = scale(randomDirection(random), 3);
    return [...from, 0, ...normalize(sub(scale(randomDirection(random), nextRandom(random)), from)), 0];
  },
  twin: (given) => {
    const met = metRounded(given);
    return met ? roundedNormal(rounded, met.surface, met.p, met.n, met.d) : [0, 0, 0];
  },
  within: 2e-3,
  // where a ray runs flat, or grazes the ball
  stray: 0.005,
}));

const MELTED: readonly InsideDesign[] = [
  {
    kind: "twist",
    strands: 5,
    strandMm: 2.5,
    diameterMm: 12,
    lengthMm: 22,
    pitchMm: 14,
    taper: 0.5,
    veil: 8,
    rgb: RGB,
    rgb2: RGB2,
    irregularity: 0.4,
    ...PLACED,
  },
  {
    kind: "ribbon",
    widthMm: 14,
    lengthMm: 20,
    thicknessMm: 3,
    turns: 1,
    rgb: RGB,
    rgb2: RGB2,
    fadeMm: 0.5,
    irregularity: 0.4,
    ...PLACED,
  },
  {
    kind: "petals",
    count: 6,
    diameterMm: 24,
    depthMm: 7,
    rgb: RGB,
    rgb2: RGB2,
    vein: 0.6,
    milky: 0.6,
    irregularity: 0.4,
    ...PLACED,
  },
  {
    kind: "swirl",
    arms: 4,
    turns: -0.7,
    diameterMm: 24,
    depthMm: 8,
    thicknessMm: 3,
    rgb: RGB,
    rgb2: RGB2,
    irregularity: 0.4,
    ...PLACED,
  },
];
const THROUGH_MELTED: readonly Probe[] = MELTED.map((design) => {
  const { body, wish } = packedWith(design);
  return {
    name: `the way through a melted ${design.kind}`,
    wish: {
      ...wish,
      include: ["spectrum.glsl", "inside.glsl", "media.glsl"],
      defines: { ...wish.defines, CHANNELS: "3" },
      body: `Passage passage = passMediaBy(given(0).xyz, given(1).xyz, 1.7, given(0).w, given(1).w, colourOfChannels());
  first = vec4(passage.left, passage.scattered ? 1.0 : 0.0); second.x = passage.t;`,
    },
    input: (random) => {
      const ray = rayInside(random);
      return [...ray.slice(0, 3), -Math.log(1 - nextRandom(random)), ...ray.slice(4, 7), nextRandom(random)];
    },
    twin: (given) => {
      const passage = passMediaBy(
        [body],
        vec(given, 0),
        vec(given, 4),
        1.7,
        given[3],
        given[7],
        (rgb) => rgb,
      );
      return [...passage.left, passage.scattered ? 1 : 0, passage.t];
    },
    within: 0.01,
    // where a step falls beside a thin part the next ones fall elsewhere
    stray: 0.02,
  };
});

const PLACES: readonly Probe[] = MELTED.map((design) => {
  const { body, wish } = packedWith(design);
  return {
    name: `a place of a melted ${design.kind}`,
    wish: {
      ...wish,
      include: ["spectrum.glsl", "inside.glsl", "media.glsl"],
      defines: { ...wish.defines, CHANNELS: "3" },
      body: `MediumPoint place = placeIn(designAt(0), mediumAt(0), (given(0).xyz - designAt(0).centre) * designAt(0).axes);
  first.xyz = vec3(place.distance_, place.density, place.density > 0.0 ? place.mix_ : 0.0);`,
    },
    input: (random) => {
      const r = 0.7 * Math.cbrt(nextRandom(random));
      return padded(...randomDirection(random).map((v) => r * v));
    },
    twin: (given) => {
      const { distance, density, mix } = placeIn(body, toLocal(body, vec(given, 0)));
      return [distance, density, density > 0 ? mix : 0];
    },
    within: 2e-3,
    stray: 0.005,
  };
});

/** From a hair to beyond what whole numbers of the shader hold: nearly level ways end anywhere. */
const TABLES: readonly Probe[] = (Object.keys(MATERIALS) as MaterialName[]).map((name) => ({
  name: `a table of ${name}, near and far`,
  wish: {
    include: ["material.glsl"],
    defines: { MATERIAL: String(MATERIALS[name].pattern) },
    body: "first = vec4(patternAt(given(0).xy), 0.0, 0.0, 0.0);",
  },
  input: (random) => {
    const far = () => (nextRandom(random) < 0.5 ? -1 : 1) * 10 ** (13 * nextRandom(random) - 1);
    return [far(), far(), 0, 0];
  },
  twin: ([x, y]) => [reflectanceAt({ ...MATERIALS[name], rgb: [1, 1, 1] }, x, y)[0]],
  // a place 20 m away is told to 2 micrometres
  within: 0.02,
  // where one thread goes over another the cloth has a step
  ...(name === "linen" && { stray: 0.002 }),
}));

const RING_STAGE = makeTabletop(
  normalize([0.2, -0.9, 0.4]),
  -1.1,
  { material: MATERIALS.slate, radiusMm: 15 },
  { kind: "uniform" },
  true,
);
const RING_HIT = `RingHit hit = hitRing(vec3(${RING_STAGE.up.map((v) => v.toFixed(9))}), -1.1, given(0).xyz, given(1).xyz, given(1).w);`;
const ringHit = (given: readonly number[]) => hitRing(RING_STAGE, vec(given, 0), vec(given, 4), given[7]);
/** A way from somewhere about the ring to somewhere nearer, and how far it is asked. */
function wayToRing(random: Random): readonly number[] {
  const foot = scale(RING_STAGE.up, -1);
  const [from, to] = [
    addScaled(foot, randomDirection(random), 0.9),
    addScaled(foot, randomDirection(random), 0.5),
  ];
  return [...from, 0, ...normalize(sub(to, from)), 3 * nextRandom(random)];
}
const ON_RING: readonly Probe[] = [
  {
    name: "whether a ring stands in the way",
    wish: { include: ["ring.glsl"], body: `${RING_HIT} first.x = hit.t >= 0.0 ? 1.0 : 0.0;` },
    input: wayToRing,
    twin: (given) => [ringHit(given) ? 1 : 0],
    // a way that grazes it
    stray: 0.002,
  },
  {
    name: "where a ring stands in the way, and how it faces that",
    wish: { include: ["ring.glsl"], body: `${RING_HIT} first = vec4(hit.n, hit.t);` },
    input: wayToRing,
    twin: (given) => {
      const hit = ringHit(given);
      return hit ? [...hit.n, hit.t] : [0, 0, 0, -1];
    },
    within: 1e-3,
    // besides, one along a wall, or through its rim
    stray: 0.005,
  },
  {
    name: "what the wood of a ring throws back",
    wish: { include: ["ring.glsl"], body: "first.xyz = RING_RGB;" },
    input: () => padded(0),
    twin: () => RING_RGB,
    within: 1e-6,
  },
];

it.each(
  [
    ...ON_RING,
    ...TABLES,
    ...BOUNDARY,
    SPECTRUM,
    ...CAPPED,
    ...LIGHTS,
    ON_TABLE,
    ...HITS,
    ...THROUGH,
    ...GLASS,
    ...EDGES,
    ...PLACES,
    ...THROUGH_MELTED,
  ].map((probe) => [probe.name, probe] as const),
)("gives what its twin gives: %s", async (_, probe) => {
  const { share, first, told } = await disagreement(probe);
  expect(told, "inputs that say something").toBeGreaterThan(0.2);
  expect(share, first).toBeLessThanOrEqual(probe.stray ?? 0);
});
