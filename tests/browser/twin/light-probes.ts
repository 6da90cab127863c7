/** The spectrum and the lights. */
import { addScaled, normalize, scale } from "../../../src/core/geometry/vec.ts";
import { indexAt } from "../../../src/core/optics/glasses.ts";
import { LIGHT_SETTINGS } from "../../../src/core/optics/light-settings.ts";
import { inUnits, type Light, lightRadiance } from "../../../src/core/optics/lights.ts";
import { MATERIALS } from "../../../src/core/optics/materials.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import { makeScene, putOnTable } from "../../../src/core/optics/scene.ts";
import { wavelengthIn } from "../../../src/core/optics/spectrum.ts";
import { bareAt } from "../../../src/core/optics/tabletop.ts";
import { packScene } from "../../../src/render/pack-scene.ts";
import { randomDirection } from "../../core/optics/helpers.ts";
import { clearPiece, paintedSky } from "../look-scenes.ts";
import { between, NONE, type Probe, padded, sent, vec } from "./probe.ts";

const faceted = clearPiece();
const packedFaceted = packScene(faceted);

export const SPECTRUM: Probe = {
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
export const LIGHTS: readonly Probe[] = lights.map(([name, light]) => {
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
export const ON_TABLE: Probe = {
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
