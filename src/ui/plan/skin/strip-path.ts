/**
 * Outlines and edges of the solid as SVG path data on the unrolled strip.
 *
 * A ring is followed with its azimuth unwrapped, so a facet across the seam is one shape that runs past the border;
 * the strip is drawn once more a turn to each side. A ring that winds once around a pole is closed along that pole's
 * border. A vertex on the axis has no azimuth: it is drawn as the stretch of the border between its two neighbours.
 */
import type { OutlinePiece } from "../../../core/geometry/solid-types.ts";
import type { Vec3 } from "../../../core/geometry/vec.ts";
import { azimuthOf, carriedOut, type Strip, sineOfElevation, stripX, stripY } from "./projection.ts";
import { pieceCurve, sampleCurve, startingParts } from "./sample-outline.ts";

export type StripPoint = readonly [number, number];

const TURN = 2 * Math.PI;
/** A path may be this far from the true curve, in the strip's units (screen pixels). */
const DRAWING_TOLERANCE = 0.25;

/** The angle congruent to `a` that is nearest to `near`. */
export const nearestTurn = (a: number, near: number): number => a + TURN * Math.round((near - a) / TURN);

/** A direction as the strip sees it; on the axis it has no azimuth, and `sine` tells which pole. */
interface Placed {
  readonly azimuth: number | null;
  readonly sine: number;
}
const placedOn =
  (strip: Strip) =>
  (v: Vec3): Placed => {
    const out = carriedOut(strip, v);
    return { azimuth: azimuthOf(out), sine: sineOfElevation(out) };
  };

/** Middle of a part judged on the strip: parts that end on the axis by their height alone, parts across it never. */
function straightOn(strip: Strip) {
  return (a: Placed, m: Placed, b: Placed): boolean => {
    if (m.azimuth === null) return false;
    const dy = ((m.sine - (a.sine + b.sine) / 2) / 2) * strip.height;
    if (a.azimuth === null || b.azimuth === null) return Math.abs(dy) < DRAWING_TOLERANCE;
    const [from, to] = [nearestTurn(a.azimuth, m.azimuth), nearestTurn(b.azimuth, m.azimuth)];
    const dx = ((m.azimuth - (from + to) / 2) / TURN) * strip.width;
    return Math.abs(to - from) < Math.PI / 2 && dx * dx + dy * dy < DRAWING_TOLERANCE ** 2;
  };
}

interface Follower {
  /** Unwrapped azimuth and sine of elevation of each point. */
  readonly azimuths: number[];
  readonly sines: number[];
}

/** Follows directions with unwrapped azimuth; a point on the axis becomes two, one at each neighbour's azimuth. */
function follow(points: readonly Placed[]): Follower {
  const azimuths: number[] = [];
  const sines: number[] = [];
  let pole: number | null = null;
  for (const p of points) {
    const own = p.azimuth;
    const last = azimuths.at(-1);
    if (own === null) {
      pole = Math.sign(p.sine);
      if (last !== undefined) push(last, pole);
      continue;
    }
    const next = last === undefined ? own : nearestTurn(own, last);
    if (pole !== null) push(next, pole);
    pole = null;
    push(next, p.sine);
  }
  return { azimuths, sines };

  function push(azimuth: number, sine: number): void {
    azimuths.push(azimuth);
    sines.push(sine);
  }
}

const toStrip = (strip: Strip, f: Follower): StripPoint[] =>
  f.azimuths.map((a, i) => [stripX(strip, a), stripY(strip, f.sines[i])]);

/** Points of an open curve of the solid (an edge or an arc) on the strip, about the unit normal n when it is an arc. */
export function strokeOnStrip(strip: Strip, piece: OutlinePiece, n: Vec3): StripPoint[] {
  const points = sampleCurve(
    pieceCurve(piece, n),
    startingParts(piece, n),
    placedOn(strip),
    straightOn(strip),
  );
  return toStrip(strip, follow(points));
}

export interface StripRing {
  /** Closed; possibly beyond the strip's borders. */
  readonly points: readonly StripPoint[];
  /** The outline alone: without the way along a pole's border by which a ring around that pole is closed. */
  readonly outline: readonly StripPoint[];
  readonly isOutlineClosed: boolean;
}

const NO_RING: StripRing = { points: [], outline: [], isOutlineClosed: true };

/**
 * A facet's outline as one ring on the strip; without points for a swallowed facet.
 * A ring around the front pole winds forward, one around the back pole backward (seen from outside both run
 * counter-clockwise), which tells the border along which it is closed.
 */
export function ringOnStrip(strip: Strip, outline: readonly OutlinePiece[], n: Vec3): StripRing {
  if (outline.length === 0) return NO_RING;
  const points: Placed[] = [];
  const isStraight = straightOn(strip);
  const placed = placedOn(strip);
  for (const piece of outline) {
    points.push(...sampleCurve(pieceCurve(piece, n), startingParts(piece, n), placed, isStraight).slice(1));
  }
  // Begin away from the axis, so that the first point has an azimuth, and come back to it.
  const start = points.findIndex((p) => p.azimuth !== null);
  if (start < 0) return NO_RING;
  const around = [...points.slice(start), ...points.slice(0, start), points[start]];
  const f = follow(around);
  const ring = toStrip(strip, f);
  const winding = Math.round((f.azimuths[f.azimuths.length - 1] - f.azimuths[0]) / TURN);
  if (winding === 0) {
    // A facet seen from outside runs one way round; one that runs the other way holds all but what its ring encloses.
    const points = signedArea(ring) <= 0 ? ring : aroundHole(strip, ring);
    return { points, outline: ring, isOutlineClosed: true };
  }
  const border = winding > 0 ? 0 : strip.height;
  const closed: StripPoint[] = [...ring, [ring[ring.length - 1][0], border], [ring[0][0], border]];
  return { points: closed, outline: ring, isOutlineClosed: false };
}

/** The whole strip, one turn of it around the ring's middle, less the ring. */
function aroundHole(strip: Strip, ring: readonly StripPoint[]): StripPoint[] {
  const xs = ring.map((p) => p[0]);
  const left = (Math.min(...xs) + Math.max(...xs) - strip.width) / 2;
  const [right, low] = [left + strip.width, strip.height];
  const last = ring[ring.length - 1];
  // The border runs counter-clockwise, as outlines do, so that the ring is a hole in it.
  const corners: StripPoint[] = [
    [left, low],
    [right, low],
    [right, 0],
    [left, 0],
  ];
  return [...ring, [left, last[1]], ...corners, [left, last[1]], last];
}

/** Place of a point of the piece on the strip, within one turn from the left border. */
export function pointOnStrip(strip: Strip, at: Vec3): StripPoint {
  const v = carriedOut(strip, at);
  const azimuth = azimuthOf(v) ?? strip.left + Math.PI;
  const turn = (((azimuth - strip.left) % TURN) + TURN) % TURN;
  return [(turn / TURN) * strip.width, stripY(strip, sineOfElevation(v))];
}

const hundredths = (value: number): number => Math.round(value * 100) / 100;

/** SVG path data with two decimals: a hundredth of a pixel. Moved to the right by `dx`. */
export function pathData(points: readonly StripPoint[], isClosed: boolean, dx = 0): string {
  if (points.length === 0) return "";
  let text = "";
  // A path begun without a second letter goes on in lines.
  for (const [x, y] of points) text += `${text === "" ? "M" : " "}${hundredths(x + dx)} ${hundredths(y)}`;
  return isClosed ? `${text}Z` : text;
}

/** Area of a closed ring on the strip by the shoelace rule, in the strip's units squared. */
export const ringArea = (ring: readonly StripPoint[]): number => Math.abs(signedArea(ring));

/** Below zero for a ring that runs counter-clockwise as one sees it, y being downward. */
function signedArea(ring: readonly StripPoint[]): number {
  let twice = 0;
  ring.forEach(([x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length];
    twice += x * v - u * y;
  });
  return twice / 2;
}

/**
 * The turns (whole numbers) by which a ring has to be shifted to show all of it between `from` and `to` along x.
 * A ring that lies between them already gives [0], one without points none.
 */
export function shiftsToShow(strip: Strip, ring: readonly StripPoint[], from: number, to: number): number[] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const [x] of ring) {
    low = Math.min(low, x);
    high = Math.max(high, x);
  }
  const shifts: number[] = [];
  for (let k = Math.ceil((from - high) / strip.width); k * strip.width + low <= to; k++) shifts.push(k);
  return shifts;
}
