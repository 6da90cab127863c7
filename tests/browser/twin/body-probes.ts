/** Where a ray meets the body: by the planes whose caps it may leave by, and on rounded edges. */
import { addScaled, normalize, scale, sub } from "../../../src/core/geometry/vec.ts";
import { bodyNormal, enterBody, NOWHERE, nextOnBody, pointOnBody } from "../../../src/core/optics/body.ts";
import { roundedNormal } from "../../../src/core/optics/edges.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import { capTexels, packScene } from "../../../src/render/pack-scene.ts";
import { randomDirection } from "../../core/optics/helpers.ts";
import { clearPiece } from "../look-scenes.ts";
import { NONE, type Probe, sent, vec } from "./probe.ts";

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
export const CAPPED: readonly Probe[] = [
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
export const EDGES: readonly Probe[] = (["0", "1"] as const).map((caps) => ({
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
