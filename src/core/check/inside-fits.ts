/** Whether what is inside the glass lies within the uncut ball, and how large each of its lengths may be for that. */
import { normalize, type Vec3 } from "../geometry/vec.ts";
import { packDesign } from "../inside/pack.ts";
import { BACKING, type SceneDesign } from "../inside/scene-design.ts";
import { indexAt, LINE_D_NM, opticalGlass } from "../optics/glasses.ts";
import type { InsideDesign, Piece } from "../plan/document.ts";
import type { Range } from "../plan/limits.ts";
import { reachOf } from "./inside-clearance.ts";

/** Directions that are looked along first, spread evenly (a spiral of the golden angle). */
const FIRST_LOOKS = 160;
const GOLDEN = Math.PI * (3 - Math.sqrt(5));
const LOOKS: readonly Vec3[] = Array.from({ length: FIRST_LOOKS }, (_, i) => {
  const z = 1 - (2 * i + 1) / FIRST_LOOKS;
  const level = Math.sqrt(1 - z * z);
  return [level * Math.cos(GOLDEN * i), level * Math.sin(GOLDEN * i), z];
});
/** Steps around the farthest direction, halved when none goes farther. */
const FIRST_STEP = 0.2;
const LEAST_STEP = 1e-4;
const AROUND: readonly Vec3[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];

/** How far from the ball's centre a design reaches at the most, unit sphere: the greatest of its reach in all directions. */
function farthest(design: SceneDesign): number {
  let best = LOOKS[0];
  for (const n of LOOKS) if (reachOf(design, n) > reachOf(design, best)) best = n;
  for (let step = FIRST_STEP; step > LEAST_STEP; ) {
    const near = AROUND.map(([x, y, z]) =>
      normalize([best[0] + step * x, best[1] + step * y, best[2] + step * z]),
    );
    const next = near.reduce((a, b) => (reachOf(design, b) > reachOf(design, a) ? b : a));
    if (reachOf(design, next) > reachOf(design, best)) best = next;
    else step /= 2;
  }
  return reachOf(design, best);
}

/** How far a design reaches out of the uncut ball, mm; 0 for one that lies within, and for a backing, which lies at the skin. */
export function outsideMm(piece: Piece, design: InsideDesign): number {
  const nd = indexAt(opticalGlass(piece.glass).dispersion, LINE_D_NM);
  const bodies = packDesign(piece, design, nd).filter(({ kind }) => kind !== BACKING);
  const out = (Math.max(0, ...bodies.map(farthest)) - 1) * (piece.diameterMm / 2);
  return out > SLACK_MM ? out : 0;
}
/** Below this nothing is made outside. */
const SLACK_MM = 1e-3;

const GRAIN_MM = 0.1;
const HALVINGS = 24;

/** The last value from one that fits towards one that does not, in whole tenths. */
function lastThatFits(from: number, to: number, fits: (mm: number) => boolean): number {
  if (fits(to)) return to;
  let [yes, no] = [from, to];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (yes + no) / 2;
    if (fits(middle)) yes = middle;
    else no = middle;
  }
  const inward = to > from ? Math.floor : Math.ceil;
  return Number((inward(Number((yes / GRAIN_MM).toFixed(6))) * GRAIN_MM).toFixed(6));
}

/**
 * Where one length of a design may lie so that the design stays within this piece, all else of it as it is; where nothing does,
 * what makes it no worse: from the range's own least (of a place: the middle) to what it is now. mm
 * @param at the length as it is now
 * @param change the design with another length
 * @param allowed what a plan may say at all; one that reaches below 0 is a place and goes both ways from the middle
 */
export function rangeWithin(
  piece: Piece,
  at: number,
  change: (mm: number) => InsideDesign,
  allowed: Range,
): Range {
  const { diameterMm } = piece;
  const fits = (mm: number): boolean => outsideMm(piece, change(mm)) === 0;
  const isPlace = allowed.min < 0;
  const start = isPlace ? 0 : allowed.min;
  const [min, max] = [Math.max(allowed.min, -diameterMm), Math.min(allowed.max, diameterMm)];
  if (!fits(start)) return { min: Math.min(start, at), max: Math.max(start, at) };
  return {
    min: isPlace ? lastThatFits(0, min, fits) : min,
    max: lastThatFits(start, max, fits),
  };
}
