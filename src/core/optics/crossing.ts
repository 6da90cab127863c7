/** Which way a path goes on where chance decides: across a boundary, or scattered. The shader does the same with the same names. */
import { dot, normalize, scale, type Vec3 } from "../geometry/vec.ts";
import { bodyNormal, NOWHERE } from "./body.ts";
import { crossRoughFacet } from "./finish.ts";
import { fresnel, reflectRay, refractRay } from "./fresnel.ts";
import { nextRandom, type Random, scatterPair } from "./random.ts";
import type { Scene } from "./scene.ts";
import type { SeedHit } from "./seeds.ts";
import { leave, moveTo, type PathColour, type Walker } from "./walker.ts";

/** Local frame of a facet and back; z is the normal. Source: T. Duff et al., Building an Orthonormal Basis, Revisited, JCGT 6(1), 2017. */
function frameOf(n: Vec3): readonly [Vec3, Vec3] {
  const sign = n[2] >= 0 ? 1 : -1;
  const a = -1 / (sign + n[2]);
  const b = n[0] * n[1] * a;
  return [
    [1 + sign * n[0] * n[0] * a, sign * b, -sign * n[0]],
    [b, sign + n[1] * n[1] * a, -n[1]],
  ];
}

const fromFrame = (x: Vec3, y: Vec3, z: Vec3, v: Vec3): Vec3 => [
  v[0] * x[0] + v[1] * y[0] + v[2] * z[0],
  v[0] * x[1] + v[1] * y[1] + v[2] * z[1],
  v[0] * x[2] + v[1] * y[2] + v[2] * z[2],
];

/** Sends a ray across rough plane `surface`; tells whether it goes on outside. */
export function crossRough(
  scene: Scene,
  surface: number,
  d: Vec3,
  outside: boolean,
  index: number,
  random: Random,
) {
  const n = bodyNormal(scene, surface, d);
  const [x, y] = frameOf(n);
  const alpha = scene.roughness[surface];
  const crossing = crossRoughFacet(
    [dot(d, x), dot(d, y), dot(d, n)],
    outside,
    alpha,
    index,
    scene.wet,
    random,
  );
  return { d: fromFrame(x, y, n, crossing.d), outside: crossing.outside };
}

/** Chance takes the mirrored or the refracted way at a smooth boundary; true when it went through. `n` stands against d. */
export function crossByChance(w: Walker, n: Vec3, eta: number, random: Random): boolean {
  const cosI = -dot(w.d, n);
  const through = nextRandom(random) >= fresnel(cosI, eta);
  w.d = through ? refractRay(w.d, n, cosI, eta) : reflectRay(w.d, n, cosI);
  return through;
}

/** Comes to a seed's wall and, mirrored there or through its air, leaves it again. */
export function crossSeed(colour: PathColour, w: Walker, { t, centre: g }: SeedHit, random: Random): void {
  /** From the centre to where the path stands, a radius long. */
  const out = (): Vec3 => [w.p[0] - g[0], w.p[1] - g[1], w.p[2] - g[2]];
  moveTo(w, t);
  leave(w, NOWHERE, NOWHERE, 0);
  if (!crossByChance(w, normalize(out()), colour.index, random)) return;
  do moveTo(w, -2 * dot(w.d, out()));
  while (!crossByChance(w, scale(normalize(out()), -1), 1 / colour.index, random));
}

/** Direction about n with density cos / pi. */
export function scatterDiffuse(n: Vec3, random: Random): Vec3 {
  const [u, v] = scatterPair(random);
  const phi = 2 * Math.PI * v;
  const r = Math.sqrt(u);
  const [x, y] = frameOf(n);
  return fromFrame(x, y, n, [r * Math.cos(phi), r * Math.sin(phi), Math.sqrt(1 - u)]);
}
