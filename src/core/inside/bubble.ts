/** A bubble: a ball of air in the glass, with a wall that light crosses. */
import { normalize, type Vec3 } from "../geometry/vec.ts";
import { realSizeMm } from "../optics/apparent-size.ts";
import { RANGES } from "../plan/limits.ts";
import { crossEllipsoid, hitEllipsoid, reachOfEllipsoid } from "./ellipsoid.ts";
import { maybe, mm, oneOf, PLACE } from "./fields.ts";
import type { InsideRecord } from "./record.ts";
import { type Body, BUBBLE, type SceneDesign, toLocal, turnToLocal } from "./scene-design.ts";

export const BUBBLE_FIELDS = {
  diameterMm: mm(RANGES.sizeMm),
  sizeAs: maybe(oneOf("real", "seen")),
  ...PLACE,
} as const;

/** Distance from inside a bubble to its wall. */
export function bubbleExit(s: SceneDesign, o: Vec3, d: Vec3): number {
  const t = crossEllipsoid(s.size, toLocal(s, o), turnToLocal(s, d));
  return t ? Math.max(0, t[1]) : 0;
}

/** Outward normal of a ball design at p. */
export const bubbleNormal = (s: SceneDesign, p: Vec3): Vec3 =>
  normalize([p[0] - s.centre[0], p[1] - s.centre[1], p[2] - s.centre[2]]);

export const bubbleOfAir: Body = { hit: hitEllipsoid, reach: reachOfEllipsoid };

export const bubble: InsideRecord<"bubble"> = {
  // size: radius, thrice.
  pack: (design, { piece, nd, toUnit, base }) => {
    const r = (realSizeMm(piece, design, nd) * toUnit) / 2;
    return [{ ...base, kind: BUBBLE, size: [r, r, r] }];
  },
  first: (share) => ({ kind: "bubble", diameterMm: share(0.2) }),
  moves: ["up"],
};
