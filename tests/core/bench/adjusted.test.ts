/**
 * After a slip everything that met meets again with the least change of angles: held against a brute force of its own, that
 * clips the line of every two planes by all others and looks for points where three planes meet, and never asks the engine.
 */
import { describe, expect, it } from "vitest";
import { type Adjusted, adjusted } from "../../../src/core/bench/as-cut/adjusted.ts";
import { fitAsCut } from "../../../src/core/bench/as-cut/as-cut.ts";
import type { DepthRule, Plan, Tier } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { plan, tier } from "./plans.ts";

type V = readonly [number, number, number];
const dot = (a: V, b: V) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: V, b: V): V => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const sum = ([v, by]: readonly [V, number], [w, wBy]: readonly [V, number] = [v, 0]): V => [
  v[0] * by + w[0] * wBy,
  v[1] * by + w[1] * wBy,
  v[2] * by + w[2] * wBy,
];

const TOLERANCE_MM = 0.05;

/** What meets, in mm: ids of pairs and the planes at every point where three or more meet. */
function bruteMeets(
  of: Plan,
  solved = solvePlan(of),
): { pairs: Set<string>; corners: number[][]; alive: Set<number> } {
  const R = solved.radiusMm;
  const planes = solved.planes.map(({ n, h }) => ({ n, h: h * R }));
  const isInside = ([x, y, z]: V, a: number, b: number, slack = 1e-9) => {
    for (let k = 0; k < planes.length; k++) {
      const { n, h } = planes[k];
      if (k !== a && k !== b && n[0] * x + n[1] * y + n[2] * z > h + slack) return false;
    }
    return true;
  };
  const pairs = new Set<string>();
  const alive = new Set<number>();
  const points: { at: V; facets: number[] }[] = [];
  for (let a = 0; a < planes.length; a++) {
    for (let b = a + 1; b < planes.length; b++) {
      const [p, q] = [planes[a], planes[b]];
      const u = cross(p.n, q.n);
      const sine2 = dot(u, u);
      if (sine2 < 1e-12) continue;
      const c = dot(p.n, q.n);
      const foot = sum([p.n, (p.h - q.h * c) / sine2], [q.n, (q.h - p.h * c) / sine2]);
      const half2 = R * R - dot(foot, foot);
      const gap = R * (Math.acos(c) - Math.acos(p.h / R) - Math.acos(q.h / R));
      if (Math.abs(gap) <= TOLERANCE_MM) {
        // On the great circle from a to b, half the gap beyond a's circle.
        const at = Math.acos(p.h / R) + gap / R / 2;
        const side = sum([q.n, 1 / Math.sqrt(sine2)], [p.n, -c / Math.sqrt(sine2)]);
        if (isInside(sum([p.n, R * Math.cos(at)], [side, R * Math.sin(at)]), a, b)) pairs.add(`${a} ${b}`);
      }
      if (half2 <= 0) continue;
      const along = sum([u, 1 / Math.sqrt(sine2)]);
      let [lo, hi] = [-Math.sqrt(half2), Math.sqrt(half2)];
      for (let k = 0; k < planes.length && hi - lo >= -1e-7; k++) {
        const { n, h } = planes[k];
        const slope = n[0] * along[0] + n[1] * along[1] + n[2] * along[2];
        if (k === a || k === b || Math.abs(slope) < 1e-9) continue;
        const s = (h - dot(n, foot)) / slope;
        if (slope > 0) hi = Math.min(hi, s);
        else lo = Math.max(lo, s);
      }
      const middle = sum([foot, 1], [along, (hi + lo) / 2]);
      if (hi - lo < -1e-7 || !isInside(middle, a, b, 1e-7)) continue;
      if (hi - lo > TOLERANCE_MM) pairs.add(`${a} ${b}`);
      if (hi - lo > 1e-6) for (const k of [a, b]) alive.add(k);
      for (const s of [lo, hi]) {
        const at = sum([foot, 1], [along, s]);
        const facets: number[] = [];
        for (let k = 0; k < planes.length; k++)
          if (Math.abs(dot(planes[k].n, at) - planes[k].h) < 1e-6) facets.push(k);
        if (facets.length > 2) points.push({ at, facets });
      }
    }
  }
  // Points that lie within the tolerance of each other are one corner.
  const group = points.map((_, i) => i);
  const root = (i: number): number => (group[i] === i ? i : root(group[i]));
  points.forEach(({ at }, i) => {
    for (let j = 0; j < i; j++)
      if (Math.hypot(...sum([at, 1], [points[j].at, -1])) <= TOLERANCE_MM) group[root(i)] = root(j);
  });
  const corners = new Map<number, Set<number>>();
  points.forEach(({ facets }, i) => {
    const all = corners.get(root(i)) ?? new Set<number>();
    for (const k of facets) all.add(k);
    corners.set(root(i), all);
  });
  return { pairs, corners: [...corners.values()].map((all) => [...all]), alive };
}

/** How many pairs, corners and facets there were that are not there now. */
function bruteLost(was: ReturnType<typeof bruteMeets>, now: ReturnType<typeof bruteMeets>): number {
  const pairs = [...was.pairs].filter((pair) => !now.pairs.has(pair)).length;
  const isThere = (facets: number[]) => now.corners.some((corner) => facets.every((k) => corner.includes(k)));
  const facets = [...was.alive].filter((k) => !now.alive.has(k)).length;
  return pairs + was.corners.filter((facets) => !isThere(facets)).length + facets;
}

interface Slip {
  readonly planned: Plan;
  /** With the slipped tier as it was cut. */
  readonly resolved: Plan;
  readonly index: number;
}

/** The plan with one tier cut at another angle, as deep as its rule asks there and a little more. */
function slip(of: Plan, index: number, byDeg: number, deeperMm = 0): Slip {
  const armAngleDeg = of.tiers[index].armAngleDeg + byDeg;
  const at = { ...of, tiers: of.tiers.with(index, { ...of.tiers[index], armAngleDeg }) };
  const mm = solvePlan(at).tiers[index].depthMm + deeperMm;
  const asCut = { readDeg: armAngleDeg };
  const cut: Tier = { ...of.tiers[index], armAngleDeg, asCut, depth: { rule: "depth", mm } };
  return {
    planned: { ...of, tiers: of.tiers.with(index, { ...of.tiers[index], asCut }) },
    resolved: { ...of, tiers: of.tiers.with(index, cut) },
    index,
  };
}

const squares = ({ changes }: Adjusted): number =>
  changes.reduce((s, { armAngleDeg: [from, to] }) => s + (to - from) ** 2, 0);

/** Turns of `size` tiers spread over a ball: along each tier, and Halton's points. */
function turnsWithin(size: number, radius: number, count: number): number[][] {
  const inverse = (i: number, base: number): number =>
    i === 0 ? 0 : ((i % base) + inverse(Math.floor(i / base), base)) / base;
  const alone = Array.from({ length: size }, (_, j) =>
    [1, -1, 0.7, -0.7, 0.4, -0.4].map((by) => Array.from({ length: size }, (_, l) => (l === j ? by : 0))),
  ).flat();
  const spread = Array.from({ length: count }, (_, i) =>
    Array.from({ length: size }, (_, j) => 2 * inverse(i + 1, [2, 3, 5, 7, 11, 13][j]) - 1),
  ).filter((turns) => Math.hypot(...turns) <= 1);
  return [...alone, ...spread].map((turns) => turns.map((t) => t * radius));
}

const corners = (of: string): DepthRule => ({ rule: "corners", of });
const ring = (
  id: string,
  count: number,
  armAngleDeg: number,
  depth: DepthRule,
  startDeg = 0,
  own: Partial<Tier> = {},
): Tier => tier({ id, name: id, count, armAngleDeg, depth, startDeg, ...own });
const table = (of: string): Tier => ring("table", 1, 90, corners(of));

const TOUCH: DepthRule = { rule: "touch" };
const edge = (mm: number): DepthRule => ({ rule: "edge", mm });
const BACK = { side: "back" } as const;

/** Sixteen, sixteen, eight, eight and a table on 34 mm, each to the corners of the one before. */
const marble = plan(
  [
    ring("t1", 16, 8, edge(3.5)),
    ring("t2", 16, 28, corners("t1"), 11.25),
    ring("t3", 8, 50, corners("t2"), 11.25),
    ring("t4", 8, 76, corners("t3"), 22.5),
    table("t4"),
  ],
  { wheelStops: 64 },
  34,
);

const SLIPS: readonly (readonly [string, Slip])[] = [
  ["the first of five, 1.3 degrees steeper and shallow", slip(marble, 0, 1.3, -0.05)],
  ["the first of five, a degree flatter", slip(marble, 0, -1)],
  ["the first of five, three degrees steeper and deep", slip(marble, 0, 3, 0.02)],
  ["the second of five, 0.7 degrees steeper", slip(marble, 1, 0.7)],
  ["the second of five, two degrees flatter", slip(marble, 1, -2)],
  ["the third of five, three degrees steeper", slip(marble, 2, 3)],
  ["the first of five, 0.3 degrees flatter", slip(marble, 0, -0.3)],
  [
    "touching rings on 80 stops",
    slip(
      plan(
        [ring("a", 20, 0, edge(2)), ring("b", 20, 12, TOUCH, 9), ring("c", 10, 37, edge(0.5), 9)],
        { wheelStops: 80 },
        40,
      ),
      0,
      3,
      0.05,
    ),
  ],
  [
    "rings of eight by edges",
    slip(
      plan([ring("a", 8, 15, TOUCH), ring("b", 8, 37, corners("a"), 22.5), ring("c", 8, 59, edge(2))]),
      0,
      2,
      0.1,
    ),
  ],
  [
    "a ring that closes to the one before",
    slip(
      plan([
        ring("a", 12, 10, TOUCH),
        ring("b", 12, 35, { rule: "close", to: "a" }, 15),
        ring("c", 12, 58, corners("b")),
      ]),
      0,
      -2,
    ),
  ],
  [
    "front and back of one girdle",
    slip(
      plan([
        ring("girdle", 12, 0, edge(4)),
        ring("front", 12, 30, corners("girdle")),
        ring("top", 6, 60, corners("front"), 15),
        ring("back", 12, 35, corners("girdle"), 0, BACK),
      ]),
      1,
      3,
      0.06,
    ),
  ],
  [
    "facets across skin from each other, with one between until they turn",
    slip(
      plan(
        [
          ring("a", 8, 0, TOUCH),
          ring("b", 8, 25, corners("a"), 22.5),
          ring("c", 8, 43, corners("b"), 22.5),
          ring("d", 8, 65, TOUCH, 45),
          ring("back", 8, 35, corners("a"), 0, BACK),
        ],
        { wheelStops: 96 },
        40,
      ),
      2,
      -2,
    ),
  ],
  [
    "five planes in one corner, so flat that they nearly meet while their edges are far from it",
    slip(
      plan(
        [
          ring("a", 16, 8, TOUCH),
          ring("b", 16, 33, corners("a"), 11.25),
          ring("c", 16, 51, corners("b"), 11.25),
          ring("d", 16, 66, { rule: "close", to: "c" }, 22.5),
        ],
        { wheelStops: 96 },
        40,
      ),
      1,
      3,
    ),
  ],
  [
    "facets that come apart by a hair: where their planes still meet, outside the ball, is no corner",
    slip(
      plan(
        [
          ring("a", 16, 0, edge(3.4)),
          ring("b", 16, 18, corners("a"), 11.25),
          ring("c", 16, 34, corners("b")),
          ring("d", 16, 50, corners("c"), 11.25),
        ],
        { wheelStops: 96 },
        34,
      ),
      1,
      0.5,
    ),
  ],
  [
    "six and three",
    slip(
      plan([ring("a", 6, 8, TOUCH), ring("b", 6, 33, corners("a"), 30), ring("c", 6, 51, edge(1))]),
      0,
      0.3,
      0.1,
    ),
  ],
];

describe("angles that follow a slip", () => {
  it.each(SLIPS)(
    "%s: all that met meets again, with no less a change that would do",
    (_, { planned, resolved, index }) => {
      const answer = adjusted(planned, resolved);
      const was = bruteMeets(planned);
      expect(answer.meets).toBe(true);
      expect(answer.lost).toEqual([]);
      expect(bruteLost(was, bruteMeets(answer.plan))).toBe(0);
      // Cut tiers as cut; the others keep all but their angle.
      answer.plan.tiers.forEach((now, i) => {
        const { armAngleDeg: _now, ...kept } = now;
        const { armAngleDeg: _before, ...before } = resolved.tiers[i];
        expect(kept).toEqual(before);
        if (i <= index) expect(now.armAngleDeg).toBe(resolved.tiers[i].armAngleDeg);
        expect(Math.abs(now.armAngleDeg - resolved.tiers[i].armAngleDeg)).toBeLessThanOrEqual(10);
      });
      // what reads as 0.00 mm is no cut, unless it was hardly more as planned, or nothing of it was left
      const leastMm = solvePlan(planned).tiers.map(({ depthMm, first, count }) => {
        const isThere = [...was.alive].some((k) => k >= first && k < first + count);
        return isThere ? Math.min(0.005, depthMm / 2) : 0;
      });
      solvePlan(answer.plan).tiers.forEach(({ depthMm }, i) => {
        if (i > index) expect(depthMm).toBeGreaterThanOrEqual(leastMm[i]);
      });
      const cost = squares(answer);
      expect(answer.changes.length > 0).toBe(bruteLost(was, bruteMeets(resolved)) > 0);
      const free = resolved.tiers.flatMap((one, i) => (i > index && one.armAngleDeg < 90 ? [i] : []));
      // A tenth more than the least is allowed, for longer edges; 0.01 degrees are its precision.
      const radius = Math.sqrt(cost / 1.1) - 0.01;
      for (const turns of cost > 0 && radius > 0 ? turnsWithin(free.length, radius, 40) : []) {
        const tiers = resolved.tiers.map((one, i) => {
          const j = free.indexOf(i);
          return j < 0 ? one : { ...one, armAngleDeg: one.armAngleDeg + turns[j] };
        });
        const tried = { ...resolved, tiers };
        const solved = solvePlan(tried);
        const there = solved.tiers;
        if (
          there.some(({ met }) => !met) ||
          there.some(({ depthMm }, i) => i > index && depthMm < leastMm[i])
        )
          continue;
        expect(bruteLost(was, bruteMeets(tried, solved)), `turned by ${turns.join(", ")}`).toBeGreaterThan(0);
      }
    },
  );

  it("finds it from what calipers read, and says old and new angle and depth", () => {
    const measured: Plan = {
      ...marble,
      tiers: marble.tiers.with(0, {
        ...marble.tiers[0],
        asCut: { readDeg: 9.3, readSdDeg: 0.05, edgeMm: 2.5 },
      }),
    };
    const fit = fitAsCut(measured);
    // Depth alone: the rest can't be reached.
    expect(fit.solved.tiers.map(({ met }) => met)).toEqual([true, true, true, false, false]);
    const answer = adjusted(measured, fit.resolved);
    expect(answer.meets).toBe(true);
    expect(bruteLost(bruteMeets(marble), bruteMeets(answer.plan))).toBe(0);
    const solved = solvePlan(answer.plan);
    const planned = solvePlan(marble);
    for (const { tier: id, armAngleDeg, depthMm } of answer.changes) {
      const i = marble.tiers.findIndex((one) => one.id === id);
      expect(armAngleDeg).toEqual([marble.tiers[i].armAngleDeg, answer.plan.tiers[i].armAngleDeg]);
      expect(depthMm).toEqual([planned.tiers[i].depthMm, solved.tiers[i].depthMm]);
    }
  });

  it("turns nothing for the sake of a tier of which nothing is left as planned", () => {
    // The third ring lies under the second all over: its rule can be met as planned, and not over what was cut.
    const rings = plan([
      ring("a", 12, 10, TOUCH),
      ring("b", 12, 40, { rule: "close", to: "a" }, 15),
      ring("c", 12, 65, corners("b")),
    ]);
    const { planned, resolved } = slip(rings, 0, -1.5, 0.05);
    const was = bruteMeets(planned);
    expect([...was.alive].some((k) => k >= 24)).toBe(false);
    expect(bruteLost(was, bruteMeets(resolved))).toBe(0);
    const { changes, meets } = adjusted(planned, resolved);
    expect(changes).toEqual([]);
    expect(meets).toBe(true);
  });

  it("turns nothing where depth alone does it", () => {
    const { planned, resolved } = slip(marble, 0, 1.3);
    expect(adjusted(planned, resolved)).toMatchObject({ changes: [], meets: true, lost: [], plan: resolved });
  });

  it("says what is lost where no angle keeps all, and keeps every angle and rule of what can't be reached", () => {
    // So shallow that the first ring's facets stand apart: its corners are gone for good.
    const { planned, resolved } = slip(marble, 0, 1, -0.2);
    const answer = adjusted(planned, resolved);
    expect(answer.meets).toBe(false);
    const was = bruteMeets(planned);
    const now = bruteMeets(answer.plan);
    const id = (k: number) => solvePlan(planned).facets[k].id;
    const lostPairs = [...was.pairs].filter((pair) => !now.pairs.has(pair));
    const told = answer.lost.map((ids) => ids.join(" "));
    for (const pair of lostPairs) expect(told).toContain(pair.split(" ").map(Number).map(id).join(" "));
    expect(answer.lost.filter((ids) => ids.length === 2)).toHaveLength(lostPairs.length);
    expect(answer.plan.tiers.map(({ depth }) => depth)).toEqual(resolved.tiers.map(({ depth }) => depth));
  });
});
