/**
 * What planes leave of a ball, found the slow way: every edge by clipping the line of two planes by all others and by the
 * ball, every arc by taking off each circle what other planes cover, areas by Green's theorem from these, volume and skin by
 * looking along evenly spread directions. Shares no code with the engine; lengths in the unit of the radius.
 */
export type Point = readonly [number, number, number];
export interface CutPlane {
  readonly n: Point;
  readonly h: number;
}
interface FoundEdge {
  readonly a: number;
  readonly b: number;
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
}
export interface Found {
  readonly edges: readonly FoundEdge[];
  readonly areas: readonly number[];
}

const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const along = (p: Point, d: Point, s: number): Point => [p[0] + s * d[0], p[1] + s * d[1], p[2] + s * d[2]];
const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Shorter than this, in radii, nothing counts as there. */
const NOTHING = 1e-7;

/** The piece of the line of planes i and j that all others and the unit ball leave; null when none. */
function clippedLine(planes: readonly CutPlane[], i: number, j: number): { from: Point; to: Point } | null {
  const [p, q] = [planes[i], planes[j]];
  const d = cross(p.n, q.n);
  const d2 = dot(d, d);
  if (d2 < 1e-16) return null;
  // the point of both planes nearest to the centre
  const u = cross(d, [q.n[0] * p.h - p.n[0] * q.h, q.n[1] * p.h - p.n[1] * q.h, q.n[2] * p.h - p.n[2] * q.h]);
  const foot: Point = [-u[0] / d2, -u[1] / d2, -u[2] / d2];
  const room = 1 - dot(foot, foot);
  if (room <= 0) return null;
  const size = Math.sqrt(d2);
  const unit: Point = [d[0] / size, d[1] / size, d[2] / size];
  let [lo, hi] = [-Math.sqrt(room), Math.sqrt(room)];
  for (let k = 0; k < planes.length; k++) {
    if (k === i || k === j) continue;
    const slope = dot(planes[k].n, unit);
    const left = planes[k].h - dot(planes[k].n, foot);
    if (Math.abs(slope) < 1e-12) {
      if (left < -1e-9) return null;
    } else if (slope > 0) hi = Math.min(hi, left / slope);
    else lo = Math.max(lo, left / slope);
    if (hi - lo < NOTHING) return null;
  }
  return { from: along(foot, unit, lo), to: along(foot, unit, hi) };
}

/** Parts of plane i's circle that no other plane covers, as angles [from, to] about (u, v). */
function bareArcs(planes: readonly CutPlane[], i: number, u: Point, v: Point): [number, number][] {
  const { n, h } = planes[i];
  const r = Math.sqrt(Math.max(0, 1 - h * h));
  const ends = [0, 2 * Math.PI];
  const covers: [number, number][] = [];
  planes.forEach((other, j) => {
    if (j === i) return;
    // n_j.x > h_j on x = h n + r (u cos t + v sin t)
    const [a, b] = [r * dot(other.n, u), r * dot(other.n, v)];
    const c = other.h - h * dot(other.n, n);
    const reach = Math.hypot(a, b);
    if (reach <= c) return;
    if (reach <= -c) {
      covers.push([0, 2 * Math.PI]);
      return;
    }
    const half = Math.acos(c / reach);
    const from = (((Math.atan2(b, a) - half) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
    covers.push([from, Math.min(2 * Math.PI, from + 2 * half)]);
    if (from + 2 * half > 2 * Math.PI) covers.push([0, from + 2 * half - 2 * Math.PI]);
  });
  covers.sort((x, y) => x[0] - y[0]);
  const bare: [number, number][] = [];
  let at = ends[0];
  for (const [from, to] of covers) {
    if (from > at) bare.push([at, from]);
    at = Math.max(at, to);
  }
  if (at < ends[1]) bare.push([at, ends[1]]);
  return bare;
}

/** Area of what is left of plane i: Green's theorem over its edges, each once, and its bare arcs. */
function areaOf(
  planes: readonly CutPlane[],
  i: number,
  lines: readonly { from: Point; to: Point }[],
): number {
  const { n, h } = planes[i];
  const helper: Point = Math.abs(n[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0];
  const raw = cross(n, helper);
  const size = Math.sqrt(dot(raw, raw));
  const u: Point = [raw[0] / size, raw[1] / size, raw[2] / size];
  const v = cross(n, u);
  let twice = 0;
  const flat = (p: Point): [number, number] => [dot(p, u), dot(p, v)];
  for (const { from, to } of lines) {
    const [[x0, y0], [x1, y1]] = [flat(from), flat(to)];
    twice += x0 * y1 - x1 * y0;
  }
  for (const [from, to] of bareArcs(planes, i, u, v)) twice += Math.max(0, 1 - h * h) * (to - from);
  return twice / 2;
}

/** Earlier planes keep the face of later ones that coincide with them. */
const isTwin = (p: CutPlane, q: CutPlane): boolean => apart(p.n, q.n) < 1e-9 && Math.abs(p.h - q.h) < 1e-9;

/** Edges between facets that have an area, and that area, by brute force. */
export function bruteForce(planes: readonly CutPlane[]): Found {
  const twins = planes.map((p, i) => planes.some((q, j) => j < i && isTwin(q, p)));
  const own = planes.map((p, i) => (twins[i] ? { n: p.n, h: 2 } : p));
  const lines: { from: Point; to: Point }[][] = planes.map(() => []);
  const found: FoundEdge[] = [];
  for (let i = 0; i < planes.length; i++) {
    for (let j = i + 1; j < planes.length; j++) {
      if (twins[i] || twins[j]) continue;
      const line = clippedLine(own, i, j);
      if (!line) continue;
      // seen from outside, the facet lies on the left of its edge
      const isAhead =
        dot(
          cross(own[i].n, [line.to[0] - line.from[0], line.to[1] - line.from[1], line.to[2] - line.from[2]]),
          own[j].n,
        ) < 0;
      const [from, to] = isAhead ? [line.from, line.to] : [line.to, line.from];
      const add = (k: number, edge: { from: Point; to: Point }) => {
        // planes through one line: the facet has that edge once
        if (
          !lines[k].some(
            (other) => apart(other.from, edge.from) < NOTHING && apart(other.to, edge.to) < NOTHING,
          )
        )
          lines[k].push(edge);
      };
      add(i, { from, to });
      add(j, { from: to, to: from });
      found.push({ a: i, b: j, from, to, length: apart(from, to) });
    }
  }
  const areas = own.map((p, i) =>
    twins[i] || Math.abs(p.h) >= 1 ? 0 : Math.max(0, areaOf(own, i, lines[i])),
  );
  return { edges: found.filter(({ a, b }) => areas[a] > NOTHING && areas[b] > NOTHING), areas };
}

const spread = new Map<number, readonly Point[]>();

/** Directions spread evenly by the golden angle (Gonzalez 2010). */
function directions(count: number): readonly Point[] {
  const known = spread.get(count);
  if (known) return known;
  const golden = Math.PI * (3 - Math.sqrt(5));
  const made = Array.from({ length: count }, (_, k): Point => {
    const z = 1 - (2 * k + 1) / count;
    const r = Math.sqrt(1 - z * z);
    return [r * Math.cos(k * golden), r * Math.sin(k * golden), z];
  });
  spread.set(count, made);
  return made;
}

/** Volume and round skin by looking out from the centre; null when the centre is not well inside. */
export function sampled(planes: readonly CutPlane[], count: number): { volume: number; skin: number } | null {
  if (planes.some(({ h }) => h < 0.05)) return null;
  let [cubes, bare] = [0, 0];
  for (const [x, y, z] of directions(count)) {
    let reach = 1;
    for (let k = 0; k < planes.length; k++) {
      const { n, h } = planes[k];
      const cosine = n[0] * x + n[1] * y + n[2] * z;
      if (cosine * reach > h) reach = h / cosine;
    }
    cubes += reach ** 3;
    if (reach === 1) bare++;
  }
  return { volume: (4 * Math.PI * cubes) / (3 * count), skin: (4 * Math.PI * bare) / count };
}
