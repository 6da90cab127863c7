/** At a boundary: how much is mirrored, and which way light goes on. */
import { fieldAt } from "../../../src/core/measure/caps.ts";
import { fresnel, reflectRay, refractRay } from "../../../src/core/optics/fresnel.ts";
import { sampleVisibleNormal, smithLambda, walkMicrosurface } from "../../../src/core/optics/microfacet.ts";
import { nextRandom, type Random } from "../../../src/core/optics/random.ts";
import { LIMIT_DEFINES } from "../../../src/render/shader-limits.ts";
import { randomDirection } from "../../core/optics/helpers.ts";
import { between, halves, type Probe, padded, state, vec } from "./probe.ts";

export const BOUNDARY: readonly Probe[] = [
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
