/** The table under the piece, and the ring on it. */
import { addScaled, normalize, scale, sub } from "../../../src/core/geometry/vec.ts";
import { MATERIALS, type MaterialName, reflectanceAt } from "../../../src/core/optics/materials.ts";
import { nextRandom, type Random } from "../../../src/core/optics/random.ts";
import { hitRing, RING_RGB } from "../../../src/core/optics/ring.ts";
import { makeTabletop } from "../../../src/core/optics/tabletop.ts";
import { randomDirection } from "../../core/optics/helpers.ts";
import { type Probe, padded, vec } from "./probe.ts";

/** From a hair to beyond what whole numbers of the shader hold: nearly level ways end anywhere. */
export const TABLES: readonly Probe[] = (Object.keys(MATERIALS) as MaterialName[]).map((name) => ({
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
export const ON_RING: readonly Probe[] = [
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
