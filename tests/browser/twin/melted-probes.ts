/** Glass melted into the glass. */
import { placeIn } from "../../../src/core/inside/media.ts";
import { toLocal } from "../../../src/core/inside/scene-design.ts";
import { passMediaBy } from "../../../src/core/optics/pass-media.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import type { InsideDesign } from "../../../src/core/plan/document.ts";
import { randomDirection } from "../../core/optics/helpers.ts";
import { PLACED, packedWith, RGB, RGB2, rayInside } from "./piece-inside.ts";
import { type Probe, padded, vec } from "./probe.ts";

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
export const THROUGH_MELTED: readonly Probe[] = MELTED.map((design) => {
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

export const PLACES: readonly Probe[] = MELTED.map((design) => {
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
