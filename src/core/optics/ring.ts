/**
 * A small ring that the piece lies on, its axis upright: a short tube, turned of a dark wood and matt. Where it stands in a way, and
 * how it faces that. Unit-sphere lengths, the piece's own axes.
 */
import { addScaled, cross, dot, normalize, scale, type Vec3 } from "../geometry/vec.ts";
import type { Scene } from "./scene.ts";
import type { Rgb } from "./spectrum.ts";
import type { Tabletop } from "./tabletop.ts";

type Body = Pick<Scene, "planes" | "planeCount">;

/** Radii of the tube's inner and outer wall, and how high it is, in radii of the ball. */
export const RING = { inner: 0.44, outer: 0.52, high: 0.2 } as const;

/** What its wood throws back, linear sRGB: oiled walnut (common practice, no source). */
export const RING_RGB: Rgb = [0.125, 0.07, 0.042];

/** What leaves the ring starts so far above it, so that it isn't met at once. */
export const RING_LIFT = 1e-5;

/** Places round the ring at which it is asked how low the piece is, and how often the part of the best one is made smaller. */
const [PLACES, THIRDS] = [720, 40];

/** How far below the centre the body ends over a place beside the axis; less than -1 where nothing of it is there. */
function depthBeside({ planes, planeCount }: Body, up: Vec3, beside: Vec3): number {
  let depth = Math.sqrt(Math.max(0, 1 - dot(beside, beside)));
  for (let i = 0; i < planeCount; i++) {
    const n: Vec3 = [planes[4 * i], planes[4 * i + 1], planes[4 * i + 2]];
    const down = -dot(n, up);
    const above = planes[4 * i + 3] - dot(n, beside);
    if (down > 0) depth = Math.min(depth, above / down);
    else if (down === 0 && above < 0) return Number.NEGATIVE_INFINITY;
  }
  return depth;
}

/** Greatest value over a full turn: of even places, and then between the neighbours of the best one, by thirds. */
function greatestRound(valueAt: (turn: number) => number): number {
  const step = (2 * Math.PI) / PLACES;
  let best = 0;
  for (let k = 1; k < PLACES; k++) if (valueAt(k * step) > valueAt(best * step)) best = k;
  let [low, high] = [(best - 1) * step, (best + 1) * step];
  for (let k = 0; k < THIRDS; k++) {
    const third = (high - low) / 3;
    if (valueAt(low + third) < valueAt(high - third)) low += third;
    else high -= third;
  }
  return Math.max(valueAt(best * step), valueAt((low + high) / 2));
}

/**
 * How high the foot of the ring lies along `up`, when the piece is let down on it until they touch. A body is convex, so over the
 * tube's wall it is lowest at the inner or the outer border.
 * @param lowest how high the piece's lowest point lies: a piece that goes through the hole stands on the table
 */
export function footOfRing(
  body: Body,
  { up, across, along }: Pick<Tabletop, "up" | "across" | "along">,
  lowest: number,
): number {
  const depthAt = (r: number, turn: number): number => {
    const [a, b] = [r * Math.cos(turn), r * Math.sin(turn)];
    const part = (k: 0 | 1 | 2) => a * across[k] + b * along[k];
    return depthBeside(body, up, [part(0), part(1), part(2)]);
  };
  const deepest = Math.max(...[RING.inner, RING.outer].map((r) => greatestRound((turn) => depthAt(r, turn))));
  return Math.min(-deepest - RING.high, lowest);
}

/** From where to where a t^2 + 2 b t + c <= 0, as along a line where it is within a cylinder; null for nowhere. */
function within(a: number, b: number, c: number): readonly [number, number] | null {
  if (a === 0) return c <= 0 ? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] : null;
  const disc = b * b - a * c;
  if (disc <= 0) return null;
  const root = Math.sqrt(disc);
  return [(-b - root) / a, (-b + root) / a];
}

/** Where a way meets the ring, and the ring's unit normal there, against the way. */
export interface RingHit {
  readonly t: number;
  readonly n: Vec3;
}

/** Where the tabletop's ring first stands in the way from p along unit d, nearer than tMax; null for nowhere. */
export function hitRing(tabletop: Tabletop | null, p: Vec3, d: Vec3, tMax: number): RingHit | null {
  if (!tabletop?.hasRing) return null;
  const { up, height: foot } = tabletop;
  const rim = foot + RING.high;
  const [height, rise] = [dot(p, up), dot(d, up)];
  // between the heights of foot and rim
  let [from, to] = [0, tMax];
  let isWall = true;
  if (rise === 0) {
    if (height <= foot || height >= rim) return null;
  } else {
    const [t0, t1] = [(foot - height) / rise, (rim - height) / rise];
    isWall = Math.min(t0, t1) < 0;
    from = Math.max(from, Math.min(t0, t1));
    to = Math.min(to, Math.max(t0, t1));
  }
  const [aside, ahead] = [cross(up, p), cross(up, d)];
  const [a, b, square] = [dot(ahead, ahead), dot(aside, ahead), dot(aside, aside)];
  const outer = within(a, b, square - RING.outer ** 2);
  if (!outer) return null;
  isWall ||= outer[0] > from;
  from = Math.max(from, outer[0]);
  to = Math.min(to, outer[1]);
  if (from >= to) return null;
  const hole = within(a, b, square - RING.inner ** 2);
  const isInHole = hole !== null && from >= hole[0] && from < hole[1];
  // all of that way may lie in the hole
  if (isInHole && to <= hole[1]) return null;
  const t = isInHole ? hole[1] : from;
  return { t, n: facingRing(up, addScaled(p, d, t), d, isWall || isInHole) };
}

/** The ring's normal at q against d: of one of its walls, or of rim or foot. */
function facingRing(up: Vec3, q: Vec3, d: Vec3, isWall: boolean): Vec3 {
  const n = isWall ? normalize(addScaled(q, up, -dot(q, up))) : up;
  return dot(n, d) > 0 ? scale(n, -1) : n;
}

/** Whether the tabletop has a ring that stands in the way from p along unit d, nearer than tMax. */
export const meetsRing = (tabletop: Tabletop | null, p: Vec3, d: Vec3, tMax: number): boolean =>
  hitRing(tabletop, p, d, tMax) !== null;
