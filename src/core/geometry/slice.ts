/**
 * What is left of one plane on the ball: a disc cut by the half-planes of all the others, as a closed ring of
 * straight pieces and arcs. Unit sphere; 2D coordinates are (across, meridian) about the foot of the normal.
 *
 * The ring is clipped by one half-plane after another (Sutherland and Hodgman 1974, with arcs). A vertex within
 * EPSILON of a line counts as on it, so that any number of planes may pass through one point.
 */
import { isClear } from "./crossing.ts";
import { type FacetFrame, frameOf, type Plane } from "./plane.ts";
import { SKIN } from "./solid-types.ts";
import { COINCIDENT, EPSILON, TANGENT } from "./tolerance.ts";
import { sweep } from "./turn.ts";
import { addScaled, scale, type Vec3 } from "./vec.ts";

/** Ring of pieces: piece i runs counter-clockwise from vertex i to vertex i + 1. No vertices: the whole circle, or nothing. */
export interface Slice {
  readonly state: "whole" | "part" | "none";
  readonly frame: FacetFrame;
  readonly h: number;
  /** Radius of the uncut circle. */
  readonly radius: number;
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** Plane beyond piece i, or SKIN for an arc. */
  readonly labels: readonly number[];
  readonly duplicateOf: number;
}

interface Ring {
  xs: number[];
  ys: number[];
  labels: number[];
}

/** The half-plane a x + b y <= c that plane j leaves of plane k's; (a, b) is unit. */
interface HalfPlane {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/**
 * How plane j bears on plane k: a half-plane, or for parallel planes "free", "gone" or "same".
 * Differences of nearly equal vectors are exact, so the line keeps its digits for nearly parallel planes.
 */
function bearing(k: Plane, frame: FacetFrame, j: Plane): HalfPlane | "free" | "gone" | "same" {
  const { across: u, meridian: v } = frame;
  const sign = k.n[0] * j.n[0] + k.n[1] * j.n[1] + k.n[2] * j.n[2] < 0 ? -1 : 1;
  const dx = j.n[0] - sign * k.n[0];
  const dy = j.n[1] - sign * k.n[1];
  const dz = j.n[2] - sign * k.n[2];
  const a = dx * u[0] + dy * u[1] + dz * u[2];
  const b = dx * v[0] + dy * v[1] + dz * v[2];
  const sine = Math.sqrt(a * a + b * b);
  // n_j.n_k = sign (1 - |n_j - sign n_k|^2 / 2)
  const offset = j.h - sign * k.h + (sign * k.h * (dx * dx + dy * dy + dz * dz)) / 2;
  if (sine > COINCIDENT) return { a: a / sine, b: b / sine, c: offset / sine };
  if (sign > 0 && Math.abs(offset) <= COINCIDENT) return "same";
  return offset > COINCIDENT ? "free" : "gone";
}

/** Clips the whole circle: one arc and one chord. */
function clipCircle(radius: number, line: HalfPlane, label: number): Ring {
  const half = Math.sqrt((radius - line.c) * (radius + line.c));
  const [fx, fy] = [line.a * line.c, line.b * line.c];
  return {
    xs: [fx - line.b * half, fx + line.b * half],
    ys: [fy + line.a * half, fy - line.a * half],
    labels: [SKIN, label],
  };
}

/**
 * True when a line clearly cuts nothing off a ring: every corner lies within it, and so does the point of each arc that is
 * farthest out, the only place where an arc between such corners could reach over. An arc lies to the right of its chord.
 */
function clearlyKeeps({ xs, ys, labels }: Ring, radius: number, { a, b, c }: HalfPlane): boolean {
  const count = xs.length;
  for (let i = 0; i < count; i++) if (a * xs[i] + b * ys[i] - c >= -EPSILON) return false;
  const [x, y] = [a * radius, b * radius];
  for (let i = 0; i < count; i++) {
    if (labels[i] !== SKIN) continue;
    const next = i + 1 === count ? 0 : i + 1;
    if ((xs[next] - xs[i]) * (y - ys[i]) - (ys[next] - ys[i]) * (x - xs[i]) <= EPSILON) return false;
  }
  return true;
}

/** Clips a ring by a half-plane whose line crosses the circle; the same ring object when nothing is cut away. */
function clipRing(ring: Ring, radius: number, line: HalfPlane, label: number): Ring {
  if (clearlyKeeps(ring, radius, line)) return ring;
  const count = ring.xs.length;
  const beyond = new Array<number>(count);
  let mayCut = false;
  for (let i = 0; i < count; i++) {
    const d = line.a * ring.xs[i] + line.b * ring.ys[i] - line.c;
    beyond[i] = Math.abs(d) <= EPSILON ? 0 : d;
    mayCut ||= d > EPSILON || ring.labels[i] === SKIN;
  }
  if (!mayCut) return ring;

  // Counter-clockwise along the circle the line is met first going out (at `exit`), then coming back in (at `entry`).
  const half = Math.sqrt((radius - line.c) * (radius + line.c));
  const [fx, fy] = [line.a * line.c, line.b * line.c];
  const [exitX, exitY] = [fx + line.b * half, fy - line.a * half];
  const [entryX, entryY] = [fx - line.b * half, fy + line.a * half];
  const exitAngle = Math.atan2(exitY, exitX);
  const entryAngle = Math.atan2(entryY, entryX);

  const xs: number[] = [];
  const ys: number[] = [];
  const labels: number[] = [];
  const emit = (x: number, y: number, by: number) => {
    xs.push(x);
    ys.push(y);
    labels.push(by);
  };
  /** A vertex on the line stands for the crossing it is nearer to: 1 the exit, -1 the entry, 0 none. */
  const standsFor = (i: number): number => {
    if (beyond[i] !== 0) return 0;
    const [x, y] = [ring.xs[i], ring.ys[i]];
    const toExit = (x - exitX) ** 2 + (y - exitY) ** 2;
    const toEntry = (x - entryX) ** 2 + (y - entryY) ** 2;
    return toExit < toEntry ? 1 : toEntry < toExit ? -1 : 0;
  };

  for (let i = 0; i < count; i++) {
    const next = i + 1 === count ? 0 : i + 1;
    const d0 = beyond[i];
    const d1 = beyond[next];
    const x0 = ring.xs[i];
    const y0 = ring.ys[i];
    if (ring.labels[i] !== SKIN) {
      if (d0 < 0 || (d0 === 0 && d1 <= 0)) emit(x0, y0, ring.labels[i]);
      else if (d0 === 0) emit(x0, y0, label);
      if (d0 * d1 < 0) {
        const t = d0 / (d0 - d1);
        emit(x0 + t * (ring.xs[next] - x0), y0 + t * (ring.ys[next] - y0), d0 < 0 ? label : ring.labels[i]);
      }
      continue;
    }
    // An arc: its own ends first, then the crossings that lie strictly within it, in order.
    const from = Math.atan2(y0, x0);
    const span = sweep(from, Math.atan2(ring.ys[next], ring.xs[next]));
    const [start, end] = [standsFor(i), standsFor(next)];
    const [toExit, toEntry] = [sweep(from, exitAngle), sweep(from, entryAngle)];
    const leaves = start !== 1 && end !== 1 && toExit < span;
    const enters = start !== -1 && end !== -1 && toEntry < span;
    if (d0 <= 0) emit(x0, y0, start === 1 ? label : SKIN);
    if (leaves && enters && toExit > toEntry) {
      emit(entryX, entryY, SKIN);
      emit(exitX, exitY, label);
    } else {
      if (leaves) emit(exitX, exitY, label);
      if (enters) emit(entryX, entryY, SKIN);
    }
  }
  return { xs, ys, labels };
}

/** A ring without area: fewer than two vertices, or straight pieces only between two. */
const isEmpty = (ring: Ring): boolean =>
  ring.xs.length < 2 || (ring.xs.length === 2 && ring.labels[0] !== SKIN && ring.labels[1] !== SKIN);

/**
 * The outline of plane k on the ball cut by all `planes`.
 * @param skip planes for which this is true are left out (tiers not yet cut)
 * Degenerate: a plane that misses the ball, only touches it, or coincides with an earlier one has state "none".
 */
export function sliceFacet(k: number, planes: readonly Plane[], skip?: (j: number) => boolean): Slice {
  const plane = planes[k];
  const { h } = plane;
  const frame = frameOf(plane.n);
  const radius = Math.sqrt(Math.max(0, (1 - h) * (1 + h)));
  const none = (duplicateOf = -1): Slice => ({
    state: "none",
    frame,
    h,
    radius,
    xs: [],
    ys: [],
    labels: [],
    duplicateOf,
  });
  if (radius * radius <= TANGENT) return none();

  let ring: Ring | null = null;
  for (let j = 0; j < planes.length; j++) {
    if (j === k || skip?.(j) || isClear(plane, planes[j])) continue;
    const line = bearing(plane, frame, planes[j]);
    if (line === "free" || (line === "same" && j > k)) continue;
    if (line === "same") return none(j);
    if (line === "gone") return none();
    const half2 = (radius - line.c) * (radius + line.c);
    if (half2 <= TANGENT) {
      if (line.c > 0) continue;
      return none();
    }
    ring = ring ? clipRing(ring, radius, line, j) : clipCircle(radius, line, j);
    if (isEmpty(ring)) return none();
  }
  if (!ring) return { state: "whole", frame, h, radius, xs: [], ys: [], labels: [], duplicateOf: -1 };
  const { xs, ys, labels } = ring;
  return { state: "part", frame, h, radius, xs, ys, labels, duplicateOf: -1 };
}

/** The point of the unit sphere's frame at (x, y) of a slice. */
export const toSpace = ({ frame, h }: Slice, x: number, y: number): Vec3 =>
  addScaled(addScaled(scale(frame.n, h), frame.across, x), frame.meridian, y);

/** Where the arcs of a slice begin and end; for a whole circle, one point of it. */
export function arcEndsOf(slice: Slice): Vec3[] {
  const { state, xs, ys, labels, radius } = slice;
  if (state === "whole") return [toSpace(slice, radius, 0)];
  return labels.flatMap((label, i) => {
    if (label !== SKIN) return [];
    const next = (i + 1) % xs.length;
    return [toSpace(slice, xs[i], ys[i]), toSpace(slice, xs[next], ys[next])];
  });
}

/** [xMin, xMax, yMin, yMax] */
export type Box = readonly [number, number, number, number];

/** Bounds of a ring drawn flat about the foot of the normal, arcs of the circle included. */
export function boxOf(
  xs: readonly number[],
  ys: readonly number[],
  labels: readonly number[],
  r: number,
): Box {
  const box: [number, number, number, number] = [
    Math.min(...xs),
    Math.max(...xs),
    Math.min(...ys),
    Math.max(...ys),
  ];
  labels.forEach((label, i) => {
    if (label !== SKIN) return;
    const next = (i + 1) % xs.length;
    const from = Math.atan2(ys[i], xs[i]);
    const span = sweep(from, Math.atan2(ys[next], xs[next]));
    if (sweep(from, 0) < span) box[1] = r;
    if (sweep(from, Math.PI) < span) box[0] = -r;
    if (sweep(from, Math.PI / 2) < span) box[3] = r;
    if (sweep(from, -Math.PI / 2) < span) box[2] = -r;
  });
  return box;
}

/** Bounds of a slice across and along the meridian, arcs included; zeros when nothing is left. */
export function extentOf({ state, radius: r, xs, ys, labels }: Slice): Box {
  if (state === "none") return [0, 0, 0, 0];
  if (state === "whole") return [-r, r, -r, r];
  return boxOf(xs, ys, labels, r);
}

/** Extent of the outline across, arcs included; 0 when nothing is left. */
export const widthOf = (slice: Slice): number => {
  const box = extentOf(slice);
  return box[1] - box[0];
};
/** Extent of the outline along the meridian, arcs included. */
export const heightOf = (slice: Slice): number => {
  const box = extentOf(slice);
  return box[3] - box[2];
};
