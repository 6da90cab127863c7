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
import { addScaled, dot, type Vec3 } from "../geometry/vec.ts";
import {
  type BodyHit,
  bodyNormal,
  enterTouchingBody,
  NOWHERE,
  nextOnBody,
  pointOnBody,
  SKIN,
} from "./body.ts";
import { crossRough, crossSeed, scatterDiffuse } from "./crossing.ts";
import { roundedNormal } from "./edges.ts";
import { fresnel, reflectRay, refractRay } from "./fresnel.ts";
import { lightRadiance } from "./lights.ts";
import {
  absorb,
  bubbleAt,
  crossBubble,
  crossMedia,
  meetDesign,
  nearestDesign,
  scatterInMedium,
} from "./meeting.ts";
import { nextRandom } from "./random.ts";
import { hitRing, meetsRing, RING_LIFT, RING_RGB, type RingHit } from "./ring.ts";
import type { Scene } from "./scene.ts";
import { nextSeed } from "./seeds.ts";
import {
  bareAt,
  goesDown,
  pointOnTable,
  scatterOnTable,
  type Tabletop,
  tableReflectance,
} from "./tabletop.ts";
import {
  type Behind,
  colourFor,
  gather,
  leave,
  lose,
  roulette,
  strongest,
  type Trace,
  type Walker,
  walker,
  weaken,
} from "./walker.ts";
import { facingNormal } from "./waviness.ts";

/** Surfaces a path may meet when no cap is asked for; only light caught for ages between facets gets there. */
export const SAFETY_CAP = 10_000;
/** A smooth boundary is followed both ways while the part that stays inside is above this. */
const SPLIT_ABOVE = 0.01;
/** The same where either part has a long way to go: through the glass and by the table. */
const SPLIT_TO_TABLE_ABOVE = 0.1;
const roughnessOf = (scene: Scene, surface: number): number => (surface < 0 ? 0 : scene.roughness[surface]);

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
