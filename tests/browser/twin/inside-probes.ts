/** What may be inside: where a ray meets it, and the way through it. */
import type { Vec3 } from "../../../src/core/geometry/vec.ts";
import { bubbleExit, hitDesign, isWithin, lengthWithin } from "../../../src/core/optics/inside.ts";
import type { InsideDesign } from "../../../src/core/plan/document.ts";
import { PLACED, packedWith, RGB, RGB2, rayInside } from "./piece-inside.ts";
import { type Probe, state, vec } from "./probe.ts";

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

export const HITS: readonly Probe[] = DESIGNS.map((design) => {
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
export const THROUGH: readonly Probe[] = [
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
