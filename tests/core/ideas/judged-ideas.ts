/** What is wrong with the answer to a wish: whether its ideas meet is found the slow way, sharing only depths with the engine. */
import type { IdeasAnswer } from "../../../src/core/ideas/answer.ts";
import type { IdeaWish } from "../../../src/core/ideas/wish.ts";
import { type Measures, measurePlan } from "../../../src/core/measure/measures.ts";
import type { Plan, Tier } from "../../../src/core/plan/document.ts";
import { parsePlan, serializePlan } from "../../../src/core/plan/file.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { bruteForce, type CutPlane, type Point } from "../../plans/brute-force.ts";

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

/** The value at which a measure counts as 1, as the contract states it. */
const fullOf = (name: string, wish: IdeaWish): number =>
  ({ sparkle: 5, images: 12, minutes: 600, facets: 100, tiers: 10, leastFacetMm: wish.piece.diameterMm / 2 })[
    name
  ] ?? 1;

function scoreByHand(wish: IdeaWish, measures: Measures): number {
  let sum = 0;
  for (const [name, weight] of Object.entries(wish.want)) {
    const value = measures[name as "back"] / fullOf(name, wish);
    sum += weight * Math.min(1, Math.max(0, value));
  }
  return sum;
}

const isWithin = (value: number, [least, most]: readonly [number, number]): boolean =>
  value >= least && value <= most;

/** Bounds of the wish that a plan breaks, and steps of the bench that it is not on. */
function brokenBounds(wish: IdeaWish, plan: Plan, measures: Measures): string[] {
  const faults: string[] = [];
  for (const [name, limit] of Object.entries(wish.limits ?? {}))
    if (!isWithin(measures[name as "back"] ?? Number.NaN, limit)) faults.push(`breaks its limit of ${name}`);
  if (!isWithin(plan.tiers.length, wish.tiers)) faults.push("has too few or too many tiers");
  if (!isWithin(measures.facets, wish.facets)) faults.push("has too few or too many facets");
  const kept = wish.keep ?? [];
  if (JSON.stringify(plan.tiers.slice(0, kept.length)) !== JSON.stringify(kept))
    faults.push("does not keep what is to be kept");
  const stops = wish.rig.wheelStops;
  for (const { id, side, count, armAngleDeg, startDeg } of plan.tiers.slice(kept.length)) {
    if (stops !== null && stops % count !== 0) faults.push(`${id}: ${count} do not divide the wheel`);
    if (!Number.isInteger(2 * armAngleDeg)) faults.push(`${id}: ${armAngleDeg} is no half degree`);
    if (wish.sides === "front" && side !== "front") faults.push(`${id} is on the back`);
    const zero = wish.rig.setUps?.[side]?.zeroDeg ?? 0;
    const at = stops === null ? 0 : ((startDeg - zero) * stops) / 360;
    if (armAngleDeg < 90 && Math.abs(at - Math.round(at)) > 1e-9) faults.push(`${id} starts beside a stop`);
  }
  return faults;
}

/** Whether a value lies between two edges; on the upper one only of the last part. */
function isInPart(edges: readonly number[], part: number, value: number): boolean {
  const [from, to] = [edges[part], edges[part + 1]];
  return value >= from && (part < edges.length - 2 ? value < to : value <= to);
}

const key = ({ side, count, armAngleDeg, startDeg, depth }: Tier): string =>
  JSON.stringify([side, count, armAngleDeg, startDeg, depth]);
const areAlike = (all: readonly string[]): boolean => new Set(all).size < all.length;

/** Everything in which an answer differs from what a wish asks for. */
export function faultsOf(wish: IdeaWish, { ideas, across, up }: IdeasAnswer): string[] {
  const faults: string[] = [];
  for (const { measure, edges } of [across, up])
    if (edges.some((edge, k) => k > 0 && !(edge > edges[k - 1])))
      faults.push(`edges of ${measure}: ${edges}`);
  if (areAlike(ideas.map(({ cell }) => cell.join()))) faults.push("two ideas in one cell");
  if (areAlike(ideas.map(({ plan }) => plan.tiers.map(key).join()))) faults.push("two ideas are alike");
  for (const { cell, measures, plan, score } of ideas) {
    const own = [...unmet(plan, wish.meets ?? "all"), ...brokenBounds(wish, plan, measures)];
    if (JSON.stringify(parsePlan(serializePlan(plan)).plan) !== JSON.stringify(plan))
      own.push("is read otherwise");
    if (JSON.stringify(measures) !== JSON.stringify(measurePlan(plan))) own.push("is measured otherwise");
    if (Math.abs(score - scoreByHand(wish, measures)) > 1e-12) own.push(`score ${score}`);
    if (!isInPart(across.edges, cell[0], measures[wish.across] ?? Number.NaN))
      own.push("is in another column");
    if (!isInPart(up.edges, cell[1], measures[wish.up] ?? Number.NaN)) own.push("is in another row");
    faults.push(...own.map((fault) => `${plan.name}: ${fault}`));
  }
  return faults;
}
