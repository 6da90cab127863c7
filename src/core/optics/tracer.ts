/**
 * One light path through the piece, followed backwards from the eye. The shader does the same with the same names.
 *
 * A path carries three numbers: either red, green and blue, which then share one index (no dispersion), or three times the
 * value at one wavelength. At a smooth boundary both ways are taken while they matter: the part that leaves a convex body meets
 * nothing but the light, so it costs one look-up. At a rough boundary and for small parts chance takes one way, by Fresnel.
 * Radiances inside are divided by n^2 (basic radiance), so crossing a boundary leaves a weight as it is.
 */
import { dot, type Vec3 } from "../geometry/vec.ts";
import { type BodyHit, bodyNormal, NOWHERE, nextOnBody, pointOnBody } from "./body.ts";
import { crossRoughFacet } from "./finish.ts";
import { fresnel, reflectRay, refractRay } from "./fresnel.ts";
import { indexAt } from "./glasses.ts";
import {
  BUBBLE,
  bubbleExit,
  bubbleNormal,
  type DesignHit,
  hitDesign,
  isWithin,
  lengthWithin,
  TINTED_CORE,
} from "./inside.ts";
import { lightRadiance } from "./lights.ts";
import { nextRandom, type Random, scatterPair } from "./random.ts";
import { absorptionOfTint, type Scene } from "./scene.ts";
import { type Rgb, type Stratum, wavelengthIn } from "./spectrum.ts";

/** Index, absorption and colour arithmetic that one path lives by. */
export interface PathColour {
  readonly index: number;
  /** Absorption per unit length for the three numbers of the path. */
  readonly sigma: Rgb;
  /** Stratum of a path at one wavelength; null for red, green, blue side by side. */
  readonly stratum: Stratum | null;
}

/** Counts what a picture must admit: energy dropped at the cap, and how many surfaces were met. */
export interface PathTally {
  lost: number;
  meetings: number;
}

/** Surfaces a path may meet when no cap is asked for; only light caught for ages between facets gets there. */
export const SAFETY_CAP = 10_000;
/** A smooth boundary is followed both ways while the part that stays inside is above this. */
const SPLIT_ABOVE = 0.01;
/** Paths weaker than this are ended by chance, the survivors made up for it. Lossless paths never get so weak. */
const ROULETTE_BELOW = 1e-3;

/** Path at one wavelength of a stratum, 0 <= u < 1 within it. */
export function colourOfStratum(scene: Scene, stratum: number, u: number): PathColour {
  const s = scene.strata[stratum];
  const sigma = scene.sigma[stratum];
  return { index: indexAt(scene.dispersion, wavelengthIn(s, u)), sigma: [sigma, sigma, sigma], stratum: s };
}

/** Path without dispersion: n_d for all light, red, green and blue independent. */
export const colourOfChannels = (scene: Scene): PathColour => ({
  index: scene.nd,
  sigma: scene.sigmaRgb,
  stratum: null,
});

/** What a linear sRGB colour means to a path. */
function colourFor(rgb: Rgb, colour: PathColour): Rgb {
  if (!colour.stratum) return rgb;
  const { basis } = colour.stratum;
  const v = rgb[0] * basis[0] + rgb[1] * basis[1] + rgb[2] * basis[2];
  return [v, v, v];
}

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
function crossRough(scene: Scene, surface: number, d: Vec3, outside: boolean, index: number, random: Random) {
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

/** Direction about n with density cos / pi. */
function scatterDiffuse(n: Vec3, random: Random): Vec3 {
  const [u, v] = scatterPair(random);
  const phi = 2 * Math.PI * v;
  const r = Math.sqrt(u);
  const [x, y] = frameOf(n);
  return fromFrame(x, y, n, [r * Math.cos(phi), r * Math.sin(phi), Math.sqrt(1 - u)]);
}

const roughnessOf = (scene: Scene, surface: number): number => (surface < 0 ? 0 : scene.roughness[surface]);

/** Position of the bubble that holds p, or NOWHERE. */
function bubbleAt(scene: Scene, p: Vec3): number {
  for (let i = 0; i < scene.designs.length; i++)
    if (scene.designs[i].kind === BUBBLE && isWithin(scene.designs[i], p)) return i;
  return NOWHERE;
}

/** Where a path stands inside the piece. Designs are told apart by position, grains of a speckle by their own. */
interface Walker {
  p: Vec3;
  d: Vec3;
  /** Surface of the body just left, and the design and grain just left; NOWHERE for none. */
  surface: number;
  design: number;
  grain: number;
  /** Position of the bubble it is in, NOWHERE in glass. */
  bubble: number;
  /** Weight of the path. */
  weight: [number, number, number];
}

const weaken = (w: Walker, r: number, g: number, b: number): void => {
  w.weight[0] *= r;
  w.weight[1] *= g;
  w.weight[2] *= b;
};

/** Remembers what the path stands on. */
const leave = (w: Walker, surface: number, design: number, grain: number): void => {
  w.surface = surface;
  w.design = design;
  w.grain = grain;
};

const strongest = (w: Walker): number => Math.max(w.weight[0], w.weight[1], w.weight[2]);

/** Adds light from direction d, seen with a share of the walker's weight. */
function gather(
  scene: Scene,
  colour: PathColour,
  w: Walker,
  d: Vec3,
  share: number,
  sum: [number, number, number],
): void {
  const light = colourFor(lightRadiance(scene.light, d), colour);
  sum[0] += share * w.weight[0] * light[0];
  sum[1] += share * w.weight[1] * light[1];
  sum[2] += share * w.weight[2] * light[2];
}

/** Beer-Lambert over a stretch of glass, and over the parts of it within tinted cores. */
function absorb(scene: Scene, colour: PathColour, w: Walker, t: number): void {
  const { sigma } = colour;
  if (sigma[0] !== 0 || sigma[1] !== 0 || sigma[2] !== 0)
    weaken(w, Math.exp(-sigma[0] * t), Math.exp(-sigma[1] * t), Math.exp(-sigma[2] * t));
  for (const design of scene.designs) {
    if (design.kind !== TINTED_CORE) continue;
    // A tinted core shows its colour along its whole width.
    const width = 2 * design.size[0];
    const along = lengthWithin(design, w.p, w.d, t);
    if (along === 0) continue;
    const [r, g, b] = colourFor(design.rgb, colour).map((v) => Math.exp(-absorptionOfTint(v, width) * along));
    weaken(w, r, g, b);
  }
}

/** Nearest design within tMax: its position and the hit, or null. */
function nearestDesign(scene: Scene, w: Walker, tMax: number): { hit: DesignHit; design: number } | null {
  let best: DesignHit | null = null;
  let design = NOWHERE;
  for (let i = 0; i < scene.designs.length; i++) {
    const from = i === w.design ? w.grain : -1;
    const hit = hitDesign(scene.designs[i], w.p, w.d, best ? best.t : tMax, from);
    if (!hit) continue;
    best = hit;
    design = i;
  }
  return best && { hit: best, design };
}

const moveTo = (w: Walker, t: number): void => {
  w.p = [w.p[0] + t * w.d[0], w.p[1] + t * w.d[1], w.p[2] + t * w.d[2]];
};

/** Chance takes the mirrored or the refracted way at a smooth boundary; true when it went through. `n` stands against d. */
function crossByChance(w: Walker, n: Vec3, eta: number, random: Random): boolean {
  const cosI = -dot(w.d, n);
  const through = nextRandom(random) >= fresnel(cosI, eta);
  w.d = through ? refractRay(w.d, n, cosI, eta) : reflectRay(w.d, n, cosI);
  return through;
}

/** Meets a design: opaque ones scatter evenly, a bubble's wall is a boundary to air. */
function meetDesign(
  scene: Scene,
  colour: PathColour,
  w: Walker,
  met: { hit: DesignHit; design: number },
  random: Random,
): void {
  const { hit, design } = met;
  moveTo(w, hit.t);
  leave(w, NOWHERE, design, hit.grain);
  const n: Vec3 = dot(hit.n, w.d) < 0 ? hit.n : [-hit.n[0], -hit.n[1], -hit.n[2]];
  if (scene.designs[design].kind === BUBBLE) {
    if (crossByChance(w, n, colour.index, random)) w.bubble = design;
    return;
  }
  const [r, g, b] = colourFor(hit.rgb, colour);
  weaken(w, r, g, b);
  w.d = scatterDiffuse(n, random);
}

/** Crosses the air in a bubble. True when it leaves through a facet that opens the bubble, false when it meets the wall. */
function crossBubble(scene: Scene, colour: PathColour, w: Walker, random: Random): boolean {
  const bubble = scene.designs[w.bubble];
  const t = bubbleExit(bubble, w.p, w.d);
  if (nextOnBody(scene, w.p, w.d, w.surface).t < t) return true;
  moveTo(w, t);
  const outward = bubbleNormal(bubble, w.p);
  leave(w, NOWHERE, w.bubble, 0);
  const inward: Vec3 = [-outward[0], -outward[1], -outward[2]];
  if (crossByChance(w, inward, 1 / colour.index, random)) w.bubble = NOWHERE;
  return false;
}

/** Ends weak paths by chance without bias; true when it ended. */
function roulette(w: Walker, random: Random): boolean {
  const strength = strongest(w);
  if (strength >= ROULETTE_BELOW) return false;
  const survive = strength / ROULETTE_BELOW;
  if (nextRandom(random) >= survive) return true;
  weaken(w, 1 / survive, 1 / survive, 1 / survive);
  return false;
}

/**
 * Meets the body's surface from within. True when the path has ended outside.
 * @param sum gets the light that leaves this way
 */
function meetBody(
  scene: Scene,
  colour: PathColour,
  w: Walker,
  surface: number,
  random: Random,
  sum: [number, number, number],
): boolean {
  leave(w, surface, NOWHERE, 0);
  if (roughnessOf(scene, surface) > 0) {
    const crossing = crossRough(scene, surface, w.d, false, colour.index, random);
    w.d = crossing.d;
    if (crossing.outside) gather(scene, colour, w, w.d, 1, sum);
    return crossing.outside;
  }
  const outward = bodyNormal(scene, surface, w.p);
  const n: Vec3 = [-outward[0], -outward[1], -outward[2]];
  const cosI = Math.max(0, -dot(w.d, n));
  const mirrored = fresnel(cosI, colour.index);
  // Total reflection, both ways while the mirrored part matters, else one by chance.
  if (mirrored < 1) {
    if (strongest(w) * mirrored > SPLIT_ABOVE) {
      gather(scene, colour, w, refractRay(w.d, n, cosI, colour.index), 1 - mirrored, sum);
      weaken(w, mirrored, mirrored, mirrored);
    } else if (nextRandom(random) >= mirrored) {
      gather(scene, colour, w, refractRay(w.d, n, cosI, colour.index), 1, sum);
      return true;
    }
  }
  w.d = reflectRay(w.d, n, cosI);
  return false;
}

/**
 * Enters the body at its first meeting, adding the mirrored light; null when nothing goes in. A facet that opens a bubble is a
 * hole: no glass there.
 */
function enterPiece(
  scene: Scene,
  colour: PathColour,
  o: Vec3,
  d: Vec3,
  t: number,
  surface: number,
  random: Random,
  sum: [number, number, number],
): Walker | null {
  const p = pointOnBody(scene, o, d, t, surface);
  const w: Walker = {
    p,
    d,
    surface,
    design: NOWHERE,
    grain: 0,
    bubble: bubbleAt(scene, p),
    weight: [1, 1, 1],
  };
  if (w.bubble !== NOWHERE) return w;
  if (roughnessOf(scene, surface) > 0) {
    const crossing = crossRough(scene, surface, d, true, colour.index, random);
    w.d = crossing.d;
    if (!crossing.outside) return w;
    gather(scene, colour, w, w.d, 1, sum);
    return null;
  }
  const n = bodyNormal(scene, surface, p);
  const cosI = -dot(d, n);
  const mirrored = fresnel(cosI, 1 / colour.index);
  gather(scene, colour, w, reflectRay(d, n, cosI), mirrored, sum);
  weaken(w, 1 - mirrored, 1 - mirrored, 1 - mirrored);
  w.d = refractRay(d, n, cosI, 1 / colour.index);
  return w;
}

/**
 * Radiance that a ray from outside the piece (o, unit d) brings back from where it meets the body: three equal numbers at the
 * path's wavelength, or red, green, blue without dispersion.
 * @param cap surfaces a path may meet, the first included; what is still inside then is lost and counted in `tally`
 */
export function tracePath(
  scene: Scene,
  colour: PathColour,
  o: Vec3,
  d: Vec3,
  entry: BodyHit,
  cap: number,
  random: Random,
  tally: PathTally,
): Rgb {
  const sum: [number, number, number] = [0, 0, 0];
  if (cap < 1) {
    tally.lost++;
    return sum;
  }
  const w = enterPiece(scene, colour, o, d, entry.t, entry.surface, random, sum);
  if (!w) return sum;
  for (let meetings = 1; meetings < cap; meetings++) {
    tally.meetings++;
    if (w.bubble !== NOWHERE) {
      if (!crossBubble(scene, colour, w, random)) continue;
      gather(scene, colour, w, w.d, 1, sum);
      return sum;
    }
    const ahead = nextOnBody(scene, w.p, w.d, w.surface);
    const met = scene.designs.length > 0 ? nearestDesign(scene, w, ahead.t) : null;
    absorb(scene, colour, w, met ? met.hit.t : ahead.t);
    if (roulette(w, random)) return sum;
    if (met) {
      meetDesign(scene, colour, w, met, random);
      continue;
    }
    w.p = pointOnBody(scene, w.p, w.d, ahead.t, ahead.surface);
    if (meetBody(scene, colour, w, ahead.surface, random, sum)) return sum;
  }
  tally.lost += (w.weight[0] + w.weight[1] + w.weight[2]) / 3;
  return sum;
}
