/** The glass itself: its layers, its seeds and its wavy skin. */
import { lengthWithinBall } from "../../../src/core/optics/casing.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import { nextSeed } from "../../../src/core/optics/seeds.ts";
import { facingNormal } from "../../../src/core/optics/waviness.ts";
import { packScene } from "../../../src/render/pack-scene.ts";
import { randomDirection } from "../../core/optics/helpers.ts";
import { RGB, RGB2, rayInside } from "./piece-inside.ts";
import { type Probe, vec } from "./probe.ts";

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
export const GLASS: readonly Probe[] = [
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
