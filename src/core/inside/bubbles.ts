/** Bubbles in a row along the axis, or in a ring about it: many balls of air. */

import { add, type Vec3, vec3 } from "../geometry/vec.ts";
import { hash, unitOf } from "../optics/hash.ts";
import { RANGES } from "../plan/limits.ts";
import { count, maybe, mm, oneOf, PLACE } from "./fields.ts";
import type { InsideRecord } from "./record.ts";
import { BUBBLE, type SceneDesign, turnToWorld } from "./scene-design.ts";

export const BUBBLES_FIELDS = {
  shape: oneOf("chain", "ring"),
  count: count(RANGES.bubbles),
  bubbleMm: mm(RANGES.sizeMm),
  /** From the first bubble's middle to the last one's; of a ring, across it from middle to middle. */
  spanMm: mm(RANGES.sizeMm),
  irregularity: maybe(count(RANGES.unit, 0.05), 0),
  seed: maybe(count(RANGES.seed), 1),
  ...PLACE,
} as const;

/** How far a full irregularity moves a bubble, in its own diameters, and changes its size, as a share. */
const STRAY = 0.35;
const UNEVEN = 0.4;

/** Three numbers -1 .. 1 of a bubble. */
function strayOf(seed: number, k: number): Vec3 {
  const a = hash((hash(seed) + k) >>> 0);
  const b = hash(a);
  const stray = (of: number) => 2 * unitOf(of) - 1;
  return [stray(a), stray(b), stray(hash(b))];
}

export const bubbles: InsideRecord<"bubbles"> = {
  // size: radius, thrice; one body a bubble.
  pack: (design, { toUnit, base }) => {
    const irregular = design.irregularity ?? 0;
    const radius = (design.bubbleMm * toUnit) / 2;
    const span = design.spanMm * toUnit;
    return Array.from({ length: design.count }, (_, k): SceneDesign => {
      const stray = strayOf(design.seed ?? 1, k);
      const angle = (2 * Math.PI * k) / design.count;
      const exact: Vec3 =
        design.shape === "ring"
          ? [(span / 2) * Math.cos(angle), (span / 2) * Math.sin(angle), 0]
          : [0, 0, span * (k / (design.count - 1) - 0.5)];
      const from = turnToWorld(
        { ...base, kind: BUBBLE, size: exact },
        vec3((c) => exact[c] + 2 * STRAY * irregular * radius * stray[c]),
      );
      const r = radius * (1 + UNEVEN * irregular * strayOf(design.seed ?? 1, k + design.count)[0]);
      const centre = add(base.centre, from);
      return { ...base, kind: BUBBLE, centre, size: [r, r, r] };
    });
  },
  first: (share) => ({
    kind: "bubbles",
    shape: "ring",
    count: 8,
    bubbleMm: Math.max(1, share(0.05)),
    spanMm: share(0.4),
    irregularity: 0.15,
    seed: 1,
  }),
  moves: ["up", "tiltDeg", "turnDeg"],
};
