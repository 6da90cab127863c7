/**
 * One light path through the piece, followed backwards from the eye. The shader does the same with the same names.
 *
 * A path carries three numbers: either red, green and blue, which then share one index (no dispersion), or three times the
 * value at one wavelength. At a smooth boundary both ways are taken while they matter: the part that leaves a convex body meets
 * nothing but the light, so it costs one look-up. At a rough boundary and for small parts chance takes one way, by Fresnel.
 * Radiances inside are divided by n^2 (basic radiance), so crossing a boundary leaves a weight as it is.
 *
 * Over a table what leaves downwards is scattered there and comes to the light or back to the piece, as often as it likes. On
 * the way from the eye to the first table both ways are still taken where much goes either way, after that one by chance.
 */
import { addScaled, dot, normalize, scale, type Vec3 } from "../geometry/vec.ts";
import { mediaOf } from "../inside/media.ts";
import {
  type BodyHit,
  bodyNormal,
  enterTouchingBody,
  NOWHERE,
  nextOnBody,
  pointOnBody,
  SKIN,
} from "./body.ts";
import { absorptionOfTint, lengthWithinBall } from "./casing.ts";
import { roundedNormal } from "./edges.ts";
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
import { type Passage, passMedia } from "./pass-media.ts";
import { nextRandom, type Random, scatterPair } from "./random.ts";
import { hitRing, meetsRing, RING_LIFT, RING_RGB, type RingHit } from "./ring.ts";
import type { Scene } from "./scene.ts";
import { nextSeed, type SeedHit } from "./seeds.ts";
import { type Rgb, type Stratum, wavelengthIn } from "./spectrum.ts";
import {
  bareAt,
  goesDown,
  pointOnTable,
  scatterOnTable,
  type Tabletop,
  tableReflectance,
} from "./tabletop.ts";
import { facingNormal } from "./waviness.ts";

/** Index, absorption and colour arithmetic that one path lives by. */
export interface PathColour {
  readonly index: number;
  /** Absorption per unit length for the three numbers of the path. */
  readonly sigma: Rgb;
  /** What each layer of the glass adds to it. */
  readonly casings: readonly Rgb[];
  /** Stratum of a path at one wavelength; null for red, green, blue side by side. */
  readonly stratum: Stratum | null;
}

/** Counts what a picture must admit: energy dropped at the cap, and how many surfaces were met. */
export interface PathTally {
  lost: number;
  meetings: number;
}

/** One path's work: what it goes by, and what it has gathered. */
export interface Trace {
  readonly scene: Scene;
  readonly colour: PathColour;
  /** Surfaces it may meet, the first included; what is still under way then is lost and counted in `tally`. */
  readonly cap: number;
  readonly random: Random;
  readonly tally: PathTally;
  /** Radiance: three equal numbers at the path's wavelength, or red, green, blue without dispersion. */
  readonly sum: [number, number, number];
  /** For a picture without a background; else null. */
  readonly behind: Behind | null;
}

/** What lies behind the piece is left out of the radiance, and how much of it one would see is gathered by itself. */
interface Behind {
  /** Unit direction of the view: light from the half-space ahead of it is behind the piece, and so is the table seen that way. */
  readonly away: Vec3;
  /** The share seen of what is behind; of a table, less the light that the piece takes from it. */
  readonly seen: [number, number, number];
}

/** Surfaces a path may meet when no cap is asked for; only light caught for ages between facets gets there. */
export const SAFETY_CAP = 10_000;
/** A smooth boundary is followed both ways while the part that stays inside is above this. */
const SPLIT_ABOVE = 0.01;
/** The same where either part has a long way to go: through the glass and by the table. */
const SPLIT_TO_TABLE_ABOVE = 0.1;
/** Paths weaker than this are ended by chance, the survivors made up for it. Lossless paths never get so weak. */
const ROULETTE_BELOW = 1e-3;

/** Path at one wavelength of a stratum, 0 <= u < 1 within it. */
export function colourOfStratum(scene: Scene, stratum: number, u: number): PathColour {
  const s = scene.strata[stratum];
  const alike = (v: number): Rgb => [v, v, v];
  return {
    index: indexAt(scene.dispersion, wavelengthIn(s, u)),
    sigma: alike(scene.sigma[stratum]),
    casings: scene.casings.map(({ sigma }) => alike(sigma[stratum])),
    stratum: s,
  };
}

/** Path without dispersion: n_d for all light, red, green and blue independent. */
export const colourOfChannels = (scene: Scene): PathColour => ({
  index: scene.nd,
  sigma: scene.sigmaRgb,
  casings: scene.casings.map(({ sigmaRgb }) => sigmaRgb),
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
  /** Surfaces met so far. */
  meetings: number;
  /** On its way down to the table instead of in the piece. */
  isOutside: boolean;
  /** It came by the table: now chance takes one way everywhere, and all light that it finds is light on the table. */
  isFromTable: boolean;
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
function gather(trace: Trace, w: Walker, d: Vec3, share: number): void {
  const { scene, colour, behind, sum } = trace;
  if (behind && !w.isFromTable && dot(d, behind.away) > 0) {
    for (let c = 0; c < 3; c++) behind.seen[c] += share * w.weight[c];
    return;
  }
  const light = colourFor(lightRadiance(scene.light, d, w.p), colour);
  sum[0] += share * w.weight[0] * light[0];
  sum[1] += share * w.weight[1] * light[1];
  sum[2] += share * w.weight[2] * light[2];
}

/** What becomes of a path at a meeting. */
type Going = "on" | "over";

/** All of the path goes on outside along w.d: to the light, down to the table, or to the ring on it. */
function goOutside(trace: Trace, w: Walker): Going {
  const { tabletop } = trace.scene;
  const ring = hitRing(tabletop, w.p, w.d, Number.POSITIVE_INFINITY);
  if (ring) return leaveRing(trace, w, ring);
  w.isOutside = tabletop !== null && goesDown(tabletop, w.d);
  if (w.isOutside) return "on";
  gather(trace, w, w.d, 1);
  return "over";
}

/**
 * A smooth boundary, where the walker stands: the share `outside` goes along `outwards`, the rest along `inwards` within the
 * piece. Both ways while they matter, else one by chance.
 */
function part(trace: Trace, w: Walker, outwards: Vec3, outside: number, inwards: Vec3): Going {
  const { tabletop } = trace.scene;
  const inside = 1 - outside;
  const isToTable = tabletop !== null && goesDown(tabletop, outwards);
  const weaker = isToTable ? Math.min(inside, outside) : inside;
  const splits = isToTable
    ? !w.isFromTable && strongest(w) * weaker > SPLIT_TO_TABLE_ABOVE
    : strongest(w) * weaker > SPLIT_ABOVE;
  if (!splits && nextRandom(trace.random) >= inside) {
    w.d = outwards;
    return goOutside(trace, w);
  }
  if (splits) {
    // Up from low down the ring may still be met.
    if (isToTable || tabletop?.hasRing) followBranch(trace, w, outwards, outside);
    else gather(trace, w, outwards, outside);
    weaken(w, inside, inside, inside);
  }
  w.d = inwards;
  return "on";
}

/** Follows the part of a path that leaves, to the table or by a ring to the light. */
function followBranch(trace: Trace, w: Walker, d: Vec3, share: number): void {
  const [r, g, b] = w.weight;
  const leaving = { ...w, d, weight: [share * r, share * g, share * b] as [number, number, number] };
  if (goOutside(trace, leaving) === "on") follow(trace, leaving);
}

/** Beer-Lambert over a stretch of glass, and over the parts of it within layers of another colour and tinted cores. */
function absorb(scene: Scene, colour: PathColour, w: Walker, t: number): void {
  const { sigma } = colour;
  if (sigma[0] !== 0 || sigma[1] !== 0 || sigma[2] !== 0)
    weaken(w, Math.exp(-sigma[0] * t), Math.exp(-sigma[1] * t), Math.exp(-sigma[2] * t));
  for (let i = 0; i < scene.casings.length; i++) {
    const along = lengthWithinBall(scene.casings[i].radius, w.p, w.d, t);
    const [r, g, b] = colour.casings[i];
    if (along > 0) weaken(w, Math.exp(-r * along), Math.exp(-g * along), Math.exp(-b * along));
  }
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

/** Through coloured glass that is melted in, at most as far as `tMax`; null where there is none. */
function crossMedia(
  scene: Scene,
  colour: PathColour,
  w: Walker,
  tMax: number,
  random: Random,
): Passage | null {
  const media = mediaOf(scene.designs);
  if (media.length === 0) return null;
  const passage = passMedia(media, w.p, w.d, tMax, random, (rgb) => colourFor(rgb, colour));
  weaken(w, ...passage.left);
  return passage;
}

/** Scattered within melted glass: all directions alike. */
function scatterInMedium(w: Walker, t: number, random: Random): void {
  moveTo(w, t);
  leave(w, NOWHERE, NOWHERE, 0);
  const [u, v] = scatterPair(random);
  const z = 1 - 2 * u;
  const level = Math.sqrt(Math.max(0, 1 - z * z));
  w.d = [level * Math.cos(2 * Math.PI * v), level * Math.sin(2 * Math.PI * v), z];
}

/** Nearest design within tMax: its position and the hit, or null. */
function nearestDesign(
  scene: Scene,
  w: Walker,
  tMax: number,
  random: Random,
): { hit: DesignHit; design: number } | null {
  let best: DesignHit | null = null;
  let design = NOWHERE;
  for (let i = 0; i < scene.designs.length; i++) {
    const from = i === w.design ? w.grain : -1;
    const hit = hitDesign(scene.designs[i], w.p, w.d, best ? best.t : tMax, from, random);
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

/** Comes to a seed's wall and, mirrored there or through its air, leaves it again. */
function crossSeed(colour: PathColour, w: Walker, { t, centre: g }: SeedHit, random: Random): void {
  /** From the centre to where the path stands, a radius long. */
  const out = (): Vec3 => [w.p[0] - g[0], w.p[1] - g[1], w.p[2] - g[2]];
  moveTo(w, t);
  leave(w, NOWHERE, NOWHERE, 0);
  if (!crossByChance(w, normalize(out()), colour.index, random)) return;
  do moveTo(w, -2 * dot(w.d, out()));
  while (!crossByChance(w, scale(normalize(out()), -1), 1 / colour.index, random));
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

/** Outward normal where a ray along d crosses a smooth surface of the body at p. */
function smoothNormal(scene: Scene, surface: number, p: Vec3, d: Vec3): Vec3 {
  const n = bodyNormal(scene, surface, p);
  return scene.waviness && surface === SKIN ? facingNormal(scene.waviness, p, n, d) : n;
}

/** Meets the body's surface from within. */
function meetBody(trace: Trace, w: Walker, surface: number): Going {
  const { scene, colour, random } = trace;
  leave(w, surface, NOWHERE, 0);
  if (roughnessOf(scene, surface) > 0) {
    const crossing = crossRough(scene, surface, w.d, false, colour.index, random);
    w.d = crossing.d;
    return crossing.outside ? goOutside(trace, w) : "on";
  }
  const outward = smoothNormal(scene, surface, w.p, w.d);
  const n: Vec3 = [-outward[0], -outward[1], -outward[2]];
  const cosI = Math.max(0, -dot(w.d, n));
  const mirrored = fresnel(cosI, colour.index);
  const inwards = reflectRay(w.d, n, cosI);
  if (mirrored < 1) return part(trace, w, refractRay(w.d, n, cosI, colour.index), 1 - mirrored, inwards);
  w.d = inwards;
  return "on";
}

/** Comes to the body from outside. A facet that opens a bubble is a hole: no glass there. */
function enterPiece(trace: Trace, w: Walker, { t, surface }: BodyHit): Going {
  const { scene, colour, random } = trace;
  const { d } = w;
  w.p = pointOnBody(scene, w.p, d, t, surface);
  w.isOutside = false;
  w.bubble = bubbleAt(scene, w.p);
  leave(w, surface, NOWHERE, 0);
  if (w.bubble !== NOWHERE) return "on";
  if (roughnessOf(scene, surface) > 0) {
    const crossing = crossRough(scene, surface, d, true, colour.index, random);
    w.d = crossing.d;
    return crossing.outside ? goOutside(trace, w) : "on";
  }
  const n = roundedNormal(scene, surface, w.p, smoothNormal(scene, surface, w.p, d), d);
  const cosI = -dot(d, n);
  const mirrored = fresnel(cosI, 1 / colour.index);
  return part(trace, w, reflectRay(d, n, cosI), mirrored, refractRay(d, n, cosI, 1 / colour.index));
}

/** One step within the piece: to what comes next, and across or off it. */
function meetNext(trace: Trace, w: Walker): Going {
  const { scene, colour, random } = trace;
  if (w.bubble !== NOWHERE) return crossBubble(scene, colour, w, random) ? goOutside(trace, w) : "on";
  const ahead = nextOnBody(scene, w.p, w.d, w.surface);
  const seed = scene.seeds && nextSeed(scene, scene.seeds, w.p, w.d, ahead.t);
  const reach = seed ? seed.t : ahead.t;
  const met = scene.designs.length > 0 ? nearestDesign(scene, w, reach, random) : null;
  const clear = met ? met.hit.t : reach;
  const passage = crossMedia(scene, colour, w, clear, random);
  absorb(scene, colour, w, passage ? passage.t : clear);
  if (roulette(w, random)) return "over";
  if (passage?.scattered) {
    scatterInMedium(w, passage.t, random);
    return "on";
  }
  if (met) {
    meetDesign(scene, colour, w, met, random);
    return "on";
  }
  if (seed) {
    crossSeed(colour, w, seed, random);
    return "on";
  }
  w.p = pointOnBody(scene, w.p, w.d, ahead.t, ahead.surface);
  return meetBody(trace, w, ahead.surface);
}

/** From a way down: scattered by the table, then to the light or back to the piece. */
function meetTable(trace: Trace, w: Walker, tabletop: Tabletop): Going {
  const { colour, random, behind } = trace;
  w.p = pointOnTable(tabletop, w.p, w.d);
  if (behind && !w.isFromTable && dot(w.d, behind.away) > 0) {
    seeShadow(trace, w, tabletop, behind);
    return "over";
  }
  weaken(w, ...colourFor(tableReflectance(tabletop, w.p), colour));
  if (roulette(w, random)) return "over";
  w.isFromTable = true;
  const { d, factor } = scatterOnTable(tabletop, random);
  weaken(w, factor, factor, factor);
  return goFromMatt(trace, w, d);
}

/** Scattered by the ring, then to the light, to the table or back to the piece. */
function leaveRing(trace: Trace, w: Walker, { t, n }: RingHit): Going {
  const { colour, random } = trace;
  w.p = addScaled(addScaled(w.p, w.d, t), n, RING_LIFT);
  weaken(w, ...colourFor(RING_RGB, colour));
  if (roulette(w, random)) return "over";
  w.isFromTable = true;
  return goFromMatt(trace, w, scatterDiffuse(n, random));
}

/** From table or ring along d. */
function goFromMatt(trace: Trace, w: Walker, d: Vec3): Going {
  w.d = d;
  const entry = enterTouchingBody(trace.scene, w.p, d);
  if (!entry) return goOutside(trace, w);
  const ring = hitRing(trace.scene.tabletop, w.p, d, entry.t);
  if (ring) return leaveRing(trace, w, ring);
  if (w.meetings >= trace.cap) {
    lose(trace, w);
    return "over";
  }
  w.meetings++;
  trace.tally.meetings++;
  return enterPiece(trace, w, entry);
}

/**
 * The table behind the piece is not shown, but what the piece changes of its light: one direction up is asked, and where the
 * piece stands in the way, what comes through and by it takes the place of what would have come.
 */
function seeShadow(trace: Trace, w: Walker, tabletop: Tabletop, { seen }: Behind): void {
  const { scene, colour, random } = trace;
  const { d, factor } = scatterOnTable(tabletop, random);
  const lit: Trace = { ...trace, sum: [0, 0, 0], behind: null };
  const rising: Walker = { ...w, weight: [factor, factor, factor], isFromTable: true };
  const entry = enterTouchingBody(scene, w.p, d);
  for (let c = 0; c < 3; c++) seen[c] += w.weight[c];
  if (!entry && !meetsRing(tabletop, w.p, d, Number.POSITIVE_INFINITY)) return;
  if (goFromMatt(lit, rising, d) === "on") follow(lit, rising);
  const without = colourFor(lightRadiance(scene.light, d, w.p), colour);
  const bare = colourFor(bareAt(tabletop, w.p), colour);
  for (let c = 0; c < 3; c++)
    if (bare[c] > 0) seen[c] += (w.weight[c] * (lit.sum[c] - factor * without[c])) / bare[c];
}

const lose = ({ tally }: Trace, { weight }: Walker): void => {
  tally.lost += (weight[0] + weight[1] + weight[2]) / 3;
};

/** Goes on until the path is over. */
function follow(trace: Trace, w: Walker): void {
  const { cap, tally } = trace;
  const { tabletop } = trace.scene;
  while (w.meetings < cap) {
    w.meetings++;
    tally.meetings++;
    const going = w.isOutside && tabletop ? meetTable(trace, w, tabletop) : meetNext(trace, w);
    if (going === "over") return;
  }
  lose(trace, w);
}

const walker = (p: Vec3, d: Vec3, isFromTable: boolean): Walker => ({
  p,
  d,
  surface: NOWHERE,
  design: NOWHERE,
  grain: 0,
  bubble: NOWHERE,
  weight: [1, 1, 1],
  meetings: 0,
  isOutside: true,
  isFromTable,
});

/**
 * Follows a ray from outside (o, unit d) to where it meets the body, and on.
 * @param isFromTable it comes up from the table, which counts as met
 */
export function tracePath(trace: Trace, o: Vec3, d: Vec3, entry: BodyHit, isFromTable = false): void {
  const met = isFromTable ? 2 : 1;
  if (trace.cap < met) {
    trace.tally.lost++;
    return;
  }
  const w = walker(o, d, isFromTable);
  w.meetings = met;
  if (enterPiece(trace, w, entry) === "on") follow(trace, w);
}

/** Follows a ray from outside (o, unit d) that misses the body: to the table, or to the light. */
export function tracePast(trace: Trace, o: Vec3, d: Vec3): void {
  const w = walker(o, d, false);
  if (goOutside(trace, w) === "on") follow(trace, w);
}
