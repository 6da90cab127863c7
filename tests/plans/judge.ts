/** One plan against brute force: everything in which the engine and the slow way differ, in words for whoever mends it. */
import { benchOf } from "../../src/core/bench/bench.ts";
import { type Report, reportAtOnce, reportPlan } from "../../src/core/check/report.ts";
import { InexactCut } from "../../src/core/geometry/inexact-cut.ts";
import { pieceMesh } from "../../src/core/models/piece-mesh.ts";
import type { Plan } from "../../src/core/plan/document.ts";
import { parsePlan, serializePlan } from "../../src/core/plan/file.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import type { SolvedPlan } from "../../src/core/plan/solved.ts";
import { bruteForce, type CutPlane, type Point, sampled } from "./brute-force.ts";

export interface Judged {
  /** The engine said that it can't reckon this plan. */
  readonly refused: boolean;
  readonly faults: readonly string[];
}

/** Beyond this many facets the slow way is too slow, and so is what the wheel costs, a solution and cut for each start tried. */
const MOST_COMPARED = 80;
const SAMPLES = 2000;
/** A model is made of no larger a piece. */
const MESHED_RADIUS_MM = 10;
/** Square radii. */
const LEAST_AREA = 1e-6;
/** What so many directions are off by, at most, for edges as sharp as facets have them; shares of the ball. */
const VOLUME_OFF = 0.005;
const SKIN_OFF = 0.02;

/** The planes of a report by its own angles, by the textbook formula: no engine in between. */
function planesOf(plan: Plan, report: Report): CutPlane[] {
  const R = plan.piece.diameterMm / 2;
  const sides = new Map(plan.tiers.map((tier) => [tier.id, tier.side]));
  return report.facets.map((f): CutPlane => {
    const [a, t] = [(f.armAngleDeg * Math.PI) / 180, (f.azimuthDeg * Math.PI) / 180];
    const [level, up] = f.armAngleDeg === 90 ? [0, 1] : [Math.cos(a), Math.sin(a)];
    const n: Point = [level * Math.cos(t), level * Math.sin(t), sides.get(f.tier) === "front" ? up : -up];
    return { n, h: f.planeMm / R };
  });
}

/** Edges and areas of the report against every line of two planes clipped by all others. */
function againstBruteForce(plan: Plan, report: Report, planes: readonly CutPlane[]): string[] {
  const faults: string[] = [];
  // a body without thickness still has edges for the slow way
  if (report.totals.volumeMm3 === 0) return faults;
  const R = plan.piece.diameterMm / 2;
  const tolerance = plan.toleranceMm ?? 0.05;
  const found = bruteForce(planes);
  const ids = report.facets.map((f) => f.id);
  report.facets.forEach((f, i) => {
    if (Math.abs(f.areaMm2 / (R * R) - found.areas[i]) > 1e-6)
      faults.push(`area of ${f.id}: ${f.areaMm2 / (R * R)} against ${found.areas[i]}`);
  });
  const told = new Map(report.pairs.map((p) => [`${p.a} ${p.b}`, p]));
  for (const { a, b, length } of found.edges) {
    const pair = told.get(`${ids[a]} ${ids[b]}`);
    // as near to the tolerance as rounding, either answer is right
    if (length * R < tolerance + 1e-6) continue;
    if (pair?.state !== "edge" || Math.abs(pair.edgeMm / R - length) > 2e-6)
      faults.push(`edge ${ids[a]} ${ids[b]}: ${pair?.state} ${pair?.edgeMm} against ${length * R} mm`);
  }
  const real = new Map(found.edges.map((e) => [`${ids[e.a]} ${ids[e.b]}`, e.length * R]));
  const area = new Map(ids.map((id, i) => [id, found.areas[i]]));
  for (const pair of report.pairs) {
    // of facets hardly there the slow way can't tell an edge
    if (pair.state !== "edge" || Math.min(area.get(pair.a) ?? 0, area.get(pair.b) ?? 0) < LEAST_AREA)
      continue;
    if (Math.abs((real.get(`${pair.a} ${pair.b}`) ?? 0) - pair.edgeMm) > 2e-6 * R)
      faults.push(`edge ${pair.a} ${pair.b} of ${pair.edgeMm} mm is not there`);
  }
  return faults;
}

function againstSamples(plan: Plan, report: Report, planes: readonly CutPlane[]): string[] {
  const R = plan.piece.diameterMm / 2;
  const seen = sampled(planes, SAMPLES);
  if (!seen) return [];
  const ball = (4 * Math.PI) / 3;
  const { volumeMm3, roundSkinMm2 } = report.totals;
  const faults: string[] = [];
  if (Math.abs(volumeMm3 / R ** 3 - seen.volume) > VOLUME_OFF * ball)
    faults.push(`volume ${volumeMm3 / R ** 3} against ${seen.volume}`);
  if (Math.abs(roundSkinMm2 / R ** 2 - seen.skin) > SKIN_OFF * 4 * Math.PI)
    faults.push(`skin ${roundSkinMm2 / R ** 2} against ${seen.skin}`);
  return faults;
}

/** What must be so whatever is cut: lengths of pieces shared, rings closed, sizes of the ball. */
function againstLaws(plan: Plan, report: Report): string[] {
  const faults: string[] = [];
  const R = plan.piece.diameterMm / 2;
  const { volumeMm3, roundSkinMm2 } = report.totals;
  if (!(volumeMm3 >= 0 && volumeMm3 <= ((4 * Math.PI) / 3) * R ** 3 * (1 + 1e-12)))
    faults.push(`volume ${volumeMm3}`);
  if (!(roundSkinMm2 >= 0 && roundSkinMm2 <= 4 * Math.PI * R ** 2 * (1 + 1e-12)))
    faults.push(`skin ${roundSkinMm2}`);
  const halves = new Map<string, number>();
  for (const { id, outline, swallowed, areaMm2 } of report.facets) {
    if (swallowed !== (outline.length === 0) || (swallowed && areaMm2 !== 0))
      faults.push(`${id} is neither there nor gone`);
    outline.forEach((piece, k) => {
      const next = outline[(k + 1) % outline.length];
      if (String(piece.to) !== String(next.from)) faults.push(`the outline of ${id} is open`);
      if (piece.kind === "arc") return;
      const back = `${piece.with} ${id} ${piece.to} ${piece.from}`;
      const own = `${id} ${piece.with} ${piece.from} ${piece.to}`;
      if (halves.has(back)) halves.delete(back);
      else halves.set(own, piece.lengthMm);
    });
  }
  for (const half of halves.keys()) faults.push(`an edge in one outline only: ${half}`);
  return faults;
}

const isFiniteDeep = (value: unknown): boolean => {
  if (typeof value === "number") return Number.isFinite(value);
  return typeof value !== "object" || value === null || Object.values(value).every(isFiniteDeep);
};

function againstItself(plan: Plan, solved: SolvedPlan, report: Report): string[] {
  const faults: string[] = [];
  if (!isFiniteDeep(report)) faults.push("the report holds a number that is none");
  const read = parsePlan(serializePlan(plan));
  if (JSON.stringify(read.plan) !== JSON.stringify(plan)) faults.push("the file reads back another plan");
  if (!isFiniteDeep(benchOf(solved))) faults.push("the bench holds a number that is none");
  // chords stand off by so many millimetres: on a small piece the same corners and borders come with far fewer of them
  const small = { ...solved, radiusMm: Math.min(solved.radiusMm, MESHED_RADIUS_MM) };
  const isThere = report.totals.roundSkinMm2 > 0 || report.facets.some((f) => f.areaMm2 > 0);
  if (isThere) pieceMesh(small, 1);
  return faults;
}

/**
 * @param slow also what takes long: the bench, the mesh of a model, and of a plan of many facets what the wheel costs
 * @param wheel also of other plans what the wheel costs: a second solution and cut, which nothing here compares
 */
export function judge(plan: Plan, slow: boolean, wheel = true): Judged {
  try {
    const solved = solvePlan(plan);
    const isWhole = slow || (wheel && solved.planes.length <= MOST_COMPARED);
    const report = isWhole ? reportPlan(plan, solved) : reportAtOnce(plan, solved);
    const planes = planesOf(plan, report);
    const faults = [...againstLaws(plan, report), ...againstSamples(plan, report, planes)];
    if (planes.length <= MOST_COMPARED) faults.push(...againstBruteForce(plan, report, planes));
    if (slow) faults.push(...againstItself(plan, solved, report));
    return { refused: false, faults };
  } catch (error) {
    if (error instanceof InexactCut) return { refused: true, faults: [] };
    return {
      refused: false,
      faults: [error instanceof Error ? (error.stack ?? error.message) : String(error)],
    };
  }
}
