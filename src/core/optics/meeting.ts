/** What a path meets inside the piece, and what that takes of it. The shader does the same with the same names. */
import { dot, type Vec3 } from "../geometry/vec.ts";
import { mediaOf } from "../inside/media.ts";
import { NOWHERE, nextOnBody } from "./body.ts";
import { absorptionOfTint, lengthWithinBall } from "./casing.ts";
import { crossByChance, scatterDiffuse } from "./crossing.ts";
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
import { type Passage, passMedia } from "./pass-media.ts";
import { type Random, scatterPair } from "./random.ts";
import type { Scene } from "./scene.ts";
import { colourFor, leave, moveTo, type PathColour, type Walker, weaken } from "./walker.ts";

/** Position of the bubble that holds p, or NOWHERE. */
export function bubbleAt(scene: Scene, p: Vec3): number {
  for (let i = 0; i < scene.designs.length; i++)
    if (scene.designs[i].kind === BUBBLE && isWithin(scene.designs[i], p)) return i;
  return NOWHERE;
}

/** Beer-Lambert over a stretch of glass, and over the parts of it within layers of another colour and tinted cores. */
export function absorb(scene: Scene, colour: PathColour, w: Walker, t: number): void {
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
export function crossMedia(
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
export function scatterInMedium(w: Walker, t: number, random: Random): void {
  moveTo(w, t);
  leave(w, NOWHERE, NOWHERE, 0);
  const [u, v] = scatterPair(random);
  const z = 1 - 2 * u;
  const level = Math.sqrt(Math.max(0, 1 - z * z));
  w.d = [level * Math.cos(2 * Math.PI * v), level * Math.sin(2 * Math.PI * v), z];
}

/** Nearest design within tMax: its position and the hit, or null. */
export function nearestDesign(
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

/** Meets a design: opaque ones scatter evenly, a bubble's wall is a boundary to air. */
export function meetDesign(
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
export function crossBubble(scene: Scene, colour: PathColour, w: Walker, random: Random): boolean {
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
