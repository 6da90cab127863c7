import { describe, expect, it } from "vitest";
import { findIdeas } from "../../../src/cli/ideas-threads.ts";
import { answerOf, leftToMeasure, measureAll } from "../../../src/core/ideas/answer.ts";
import { createJudge } from "../../../src/core/ideas/judge.ts";
import { type Batch, Search } from "../../../src/core/ideas/search.ts";
import type { IdeaWish } from "../../../src/core/ideas/wish.ts";
import { parseWish, wishFromData } from "../../../src/core/ideas/wish-file.ts";
import { measurePlan } from "../../../src/core/measure/measures.ts";
import type { Plan, Tier } from "../../../src/core/plan/document.ts";
import { parsePlan, serializePlan } from "../../../src/core/plan/file.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { bruteForce, type CutPlane, type Point } from "../../plans/brute-force.ts";
import { wishOf } from "./wishes.ts";

/** A whole search in this thread. @param order which of the waiting batches is judged next */
function searched(wish: IdeaWish, tries: number, order: (waiting: number) => number = () => 0) {
  const search = new Search(wish, { tries, seed: 7 });
  const judge = createJudge(wish);
  const waiting: Batch[] = [];
  while (!search.isDone) {
    waiting.push(...search.pending.splice(0));
    const [batch] = waiting.splice(order(waiting.length), 1);
    search.take(
      batch.index,
      batch.candidates.map(({ tiers }) => judge(tiers, batch.ask)),
    );
  }
  return answerOf(wish, search, measureAll(leftToMeasure(wish, search)), 0);
}

const toleranceOf = (plan: Plan): number => plan.toleranceMm ?? 0.05;

/** Planes by the textbook formula, from the plan's own numbers; only depths come from the engine. */
function planesOf(plan: Plan): { planes: CutPlane[]; tierOf: number[] } {
  const R = plan.piece.diameterMm / 2;
  const { tiers } = solvePlan(plan);
  const tierOf: number[] = [];
  const planes = plan.tiers.flatMap((tier, t) =>
    Array.from({ length: tier.count }, (_, k): CutPlane => {
      tierOf.push(t);
      const [a, z] = [tier.armAngleDeg, tier.startDeg + (360 * k) / tier.count].map(
        (deg) => (deg * Math.PI) / 180,
      );
      const level = tier.armAngleDeg === 90 ? 0 : Math.cos(a);
      const n: Point = [
        level * Math.cos(z),
        level * Math.sin(z),
        (tier.side === "front" ? 1 : -1) * Math.sin(a),
      ];
      return { n, h: 1 - tiers[t].depthMm / R };
    }),
  );
  return { planes, tierOf };
}

const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Everything in which a plan that should meet does not, found the slow way. */
function unmet(plan: Plan, meets: "all" | "rings"): string[] {
  const { planes, tierOf } = planesOf(plan);
  const tolerance = toleranceOf(plan) / (plan.piece.diameterMm / 2);
  const { edges, areas } = bruteForce(planes);
  const shares = new Set(edges.filter(({ length }) => length > tolerance).map(({ a, b }) => `${a} ${b}`));
  const rho = planes.map(({ h }) => Math.acos(h));
  const touches = (a: number, b: number): boolean => {
    const cosine = Math.min(1, dot(planes[a].n, planes[b].n));
    const delta = Math.acos(cosine);
    const gap = delta - rho[a] - rho[b];
    if (Math.abs(gap) > tolerance) return false;
    // on the great circle from a to b, half-way through the gap
    const s = rho[a] + gap / 2;
    const at = [0, 1, 2].map(
      (c) => (planes[a].n[c] * Math.sin(delta - s) + planes[b].n[c] * Math.sin(s)) / Math.sin(delta),
    ) as unknown as Point;
    return planes.every((p, c) => c === a || c === b || dot(p.n, at) <= p.h + 1e-9);
  };
  const meet = (a: number, b: number) => shares.has(`${Math.min(a, b)} ${Math.max(a, b)}`) || touches(a, b);
  const faults = areas.flatMap((area, i) => (area > 0 ? [] : [`facet ${i} is swallowed`]));
  let first = 0;
  for (const { count, id } of plan.tiers) {
    for (let k = 0; k < (count >= 3 ? count : count - 1); k++)
      if (!meet(first + k, first + ((k + 1) % count))) faults.push(`${id}: ${k} and the next stand apart`);
    first += count;
  }
  if (meets === "rings") return faults;
  plan.tiers.forEach(({ id, side }, t) => {
    const isOnly = plan.tiers.every((other, s) => s === t || other.side !== side);
    const isJoined = planes.some(
      (_, a) => tierOf[a] === t && planes.some((__, b) => tierOf[b] !== t && meet(a, b)),
    );
    if (!isOnly && !isJoined) faults.push(`${id} stands by itself`);
  });
  return faults;
}

const key = ({ side, count, armAngleDeg, startDeg, depth }: Tier): string =>
  JSON.stringify([side, count, armAngleDeg, startDeg, depth]);

describe("ideas", () => {
  const seeds = Array.from({ length: 8 }, (_, k) => k + 1);
  let ideasSeen = 0;
  it.each(seeds)("of wish %i meet by brute force, keep its limits and stand in their cells", (seed) => {
    const wish = wishOf(seed);
    const answer = searched(wish, 48);
    expect(answer.tried).toBe(48);
    expect(answer.meeting).toBeGreaterThanOrEqual(answer.measured);
    ideasSeen += answer.ideas.length;
    const { edges: across } = answer.across;
    const { edges: up } = answer.up;
    for (const edges of [across, up])
      for (const [k, edge] of edges.entries()) if (k > 0) expect(edge).toBeGreaterThan(edges[k - 1]);
    const cells = new Set(answer.ideas.map(({ cell }) => cell.join()));
    expect(cells.size).toBe(answer.ideas.length);
    const plans = new Set(answer.ideas.map(({ plan }) => plan.tiers.map(key).join()));
    expect(plans.size).toBe(answer.ideas.length);
    for (const { cell, measures, plan, score } of answer.ideas) {
      expect(parsePlan(serializePlan(plan)).plan).toEqual(plan);
      expect(unmet(plan, wish.meets ?? "all")).toEqual([]);
      expect(measures).toEqual(measurePlan(plan));
      for (const [name, limit] of Object.entries(wish.limits ?? {})) {
        const value = measures[name as "minutes"] ?? Number.NaN;
        expect(value).toBeGreaterThanOrEqual(limit[0]);
        expect(value).toBeLessThanOrEqual(limit[1]);
      }
      const kept = wish.keep ?? [];
      expect(plan.tiers.slice(0, kept.length)).toEqual(kept);
      const [least, most] = wish.tiers;
      expect(plan.tiers.length).toBeGreaterThanOrEqual(least);
      expect(plan.tiers.length).toBeLessThanOrEqual(most);
      expect(measures.facets).toBeGreaterThanOrEqual(wish.facets[0]);
      expect(measures.facets).toBeLessThanOrEqual(wish.facets[1]);
      for (const tier of plan.tiers.slice(kept.length)) {
        const stops = wish.rig.wheelStops;
        if (stops !== null) expect(stops % tier.count).toBe(0);
        expect(Number.isInteger(2 * tier.armAngleDeg)).toBe(true);
        if (wish.sides === "front") expect(tier.side).toBe("front");
        const zero = wish.rig.setUps?.[tier.side]?.zeroDeg ?? 0;
        const at = stops === null ? 0 : ((tier.startDeg - zero) * stops) / 360;
        if (tier.armAngleDeg < 90) expect(Math.abs(at - Math.round(at))).toBeLessThan(1e-9);
      }
      const values = [measures[wish.across], measures[wish.up]].map((value) => value ?? Number.NaN);
      [across, up].forEach((edges, axis) => {
        expect(values[axis]).toBeGreaterThanOrEqual(edges[cell[axis]]);
        if (cell[axis] < edges.length - 2) expect(values[axis]).toBeLessThan(edges[cell[axis] + 1]);
        else expect(values[axis]).toBeLessThanOrEqual(edges[cell[axis] + 1]);
      });
      const { back = 0, minutes = 0 } = wish.want;
      const byHand = back * measures.back + minutes * Math.min(1, (measures.minutes ?? 0) / 600);
      expect(score).toBeCloseTo(byHand, 12);
    }
  });

  it("are found for most wishes", () => {
    expect(ideasSeen).toBeGreaterThan(15);
  });

  it("are the same whichever batch is judged first", () => {
    const wish = wishOf(3);
    const inOrder = searched(wish, 150);
    expect(searched(wish, 150, (waiting) => waiting - 1)).toEqual(inOrder);
    expect(inOrder.ideas.length).toBeGreaterThan(2);
  });

  it("are the same for one thread and for two", async () => {
    const wish = wishOf(5);
    const [one, two] = [
      await findIdeas(wish, { tries: 40, seed: 2 }, 1),
      await findIdeas(wish, { tries: 40, seed: 2 }, 2),
    ];
    expect({ ...two, seconds: 0 }).toEqual({ ...one, seconds: 0 });
  });
});

describe("a wish that nothing meets", () => {
  const wish: IdeaWish = {
    ...wishOf(1),
    sides: "front",
    tiers: [1, 3],
    facets: [8, 40],
    rig: { wheelStops: 96 },
  };
  const bare: IdeaWish = { ...wish, keep: [], limits: {} };
  const first = (own: Partial<IdeaWish>) => {
    const { ideas, inTheWay } = searched({ ...bare, ...own }, 24);
    expect(ideas).toEqual([]);
    return inTheWay[0];
  };
  it("names the limit in the way", () => {
    expect(first({ limits: { minutes: [0, 20] } })).toEqual({ limit: "minutes", share: 1 });
    expect(first({ limits: { minutes: [0, 900], inside: [0.99, 1] } })).toEqual({
      limit: "inside",
      share: 1,
    });
    expect(first({ facets: [500, 600] })).toEqual({ limit: "facets", share: 1 });
    expect(first({ rig: { wheelStops: 97 } })).toEqual({ limit: "facets", share: 1 });
    expect(first({ limits: { facets: [50, 60] } })).toEqual({ limit: "facets", share: 1 });
    expect(first({ limits: { tiers: [4, 9] } })).toEqual({ limit: "tiers", share: 1 });
  });

  it("says that kept tiers can't be met where one of them can't be cut", () => {
    const depth = { rule: "edge", mm: 200 } as const;
    const keep: Tier[] = [
      { id: "k", name: "k", side: "front", armAngleDeg: 30, count: 8, startDeg: 0, depth },
    ];
    expect(first({ keep })).toEqual({ limit: "meets", share: 1 });
  });
});

describe("a wish as a file", () => {
  const data = (own: object) => JSON.parse(JSON.stringify({ ...wishOf(1), ...own }));
  it.each([
    [{ format: "glintwright-plan" }, "format"],
    [{ version: 2 }, "version"],
    [{ sides: "back" }, "sides"],
    [{ tiers: [0, 3] }, "tiers[0]"],
    [{ tiers: [4, 3] }, "tiers"],
    [{ facets: [1] }, "facets"],
    [{ limits: { minutes: [0, "x"] } }, "limits.minutes[1]"],
    [{ limits: { hours: [0, 1] } }, "limits.hours"],
    [{ want: { back: 2 } }, "want.back"],
    [{ want: { sparkel: 1 } }, "want.sparkel"],
    [{ across: "meets" }, "across"],
    [{ piece: { diameterMm: 1, glass: "borosilicate" } }, "piece.diameterMm"],
    [
      {
        keep: [
          {
            ...wishOf(1).keep?.[0],
            id: "a",
            name: "",
            side: "front",
            armAngleDeg: 9,
            count: 8,
            startDeg: 0,
            depth: { rule: "close", to: "z" },
          },
        ],
      },
      "keep[0].depth.to",
    ],
  ])("%j is refused with the path %s", (own, path) => {
    expect(() => wishFromData(data(own))).toThrow(`${path}: `);
  });

  it("is read, and what is not known is named", () => {
    const { wish, unknown } = parseWish(JSON.stringify(data({ mood: "calm" })));
    expect(unknown).toEqual(["mood"]);
    expect(wish.across).toBe(wishOf(1).across);
  });
});
