/**
 * Exact report and mesh (cutting the exact solid included) at 25, 60 and 120 facets, and the same planes cut by manifold-3d
 * one after another (trimByPlane) from our mesh of the ball. The starting ball is built outside every timer; manifold-3d works
 * lazily, so its result is forced by reading its mesh.
 */
import { cpus, loadavg } from "node:os";
import ManifoldModule from "manifold-3d";
import { reportPlan } from "../../src/core/check/report.ts";
import { meshVolume } from "../../src/core/geometry/mesh.ts";
import { meshOf } from "../../src/core/geometry/mesh-cut.ts";
import type { Plane } from "../../src/core/geometry/plane.ts";
import { cutBall } from "../../src/core/geometry/solid.ts";
import type { DepthRule, Plan, Tier } from "../../src/core/plan/document.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import { planOf } from "../plans/generator.ts";

const SEGMENTS = 128;
const RUNS = 61;
const SLOW_RUNS = 5;
/** Plans as people make them, of which the slowest are named. */
const MADE_PLANS = 500;
const RULES: readonly DepthRule[] = [
  { rule: "depth", mm: 1 },
  { rule: "width", mm: 3 },
  { rule: "gap", mm: 0.1 },
  { rule: "touch" },
  { rule: "edge", mm: 0.2 },
  { rule: "close", to: "a" },
  { rule: "corners", of: "a" },
];
/** Share of the runs that go before the timed ones, so that the code is compiled as it is after a minute of work. */
const WARM_UP = 0.5;

const tier = (id: string, count: number, armAngleDeg: number, mm: number, side: Tier["side"]): Tier => ({
  id,
  name: id,
  side,
  armAngleDeg,
  count,
  startDeg: 0,
  depth: { rule: "depth", mm },
});

/** A table and three rings a side of it, `total` facets in all; every facet meets its neighbours or comes near. */
function planWith(total: number): Plan {
  const per = (total - 1) / 4;
  // depth at which next neighbours on one ring touch, a little over, on a ball of 15 mm radius
  const touch = (armAngleDeg: number): number => {
    const half = Math.asin(Math.sin(Math.PI / per) * Math.cos((armAngleDeg * Math.PI) / 180));
    return 15 * (1 - Math.cos(half)) * 1.1;
  };
  return {
    format: "glintwright-plan",
    version: 1,
    name: `${total} facets`,
    piece: { diameterMm: 30, glass: "borosilicate" },
    rig: { wheelStops: null },
    tiers: [
      tier("waist", Math.floor(per), 5, touch(5), "front"),
      tier("upper", Math.floor(per), 32, touch(32), "front"),
      tier("crown", Math.floor(per), 55, touch(55), "front"),
      tier("lower", total - 1 - 3 * Math.floor(per), 35, touch(35), "back"),
      tier("table", 1, 90, 2, "front"),
    ],
  };
}

/** Median of so many runs after warming up, and the least: on a busy machine the two tell apart what waited. */
function timed(runs: number, work: () => void): { median: number; least: number } {
  for (let i = 0; i < runs * WARM_UP; i++) work();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return { median: times[Math.floor(runs / 2)], least: times[0] };
}
const rounded = (x: number): number => Number(x.toPrecision(3));

export async function bench(): Promise<object> {
  const api = await ManifoldModule();
  api.setup();
  const cutMesh = (planes: readonly Plane[]) => meshOf(cutBall(planes), SEGMENTS);
  const whole = cutMesh([]);
  const theirBall = new api.Manifold(
    new api.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(whole.positions),
      triVerts: whole.triangles.slice(),
    }),
  );
  const cases = [25, 60, 120].map((facets) => {
    const plan = planWith(facets);
    const solved = solvePlan(plan);
    const { planes } = solved;
    const trim = () => {
      let body = theirBall;
      for (const { n, h } of planes) body = body.trimByPlane([-n[0], -n[1], -n[2]], -h);
      return { body, mesh: body.getMesh() };
    };
    const exact = timed(RUNS, () => reportPlan(plan, solved, cutBall(planes)));
    const clip = timed(RUNS, () => cutMesh(planes));
    const solveAndClip = timed(RUNS, () => cutMesh(solvePlan(plan).planes));
    const manifold = timed(SLOW_RUNS, trim);
    return {
      facets: planes.length,
      exactReportMs: rounded(exact.median),
      meshClipMs: rounded(clip.median),
      solveAndClipMs: rounded(solveAndClip.median),
      manifoldTrimMs: rounded(manifold.median),
      ratio: rounded(manifold.median / clip.median),
      leastMs: {
        exactReport: rounded(exact.least),
        meshClip: rounded(clip.least),
        solveAndClip: rounded(solveAndClip.least),
        manifoldTrim: rounded(manifold.least),
      },
      // that both did the same work
      volumeDifference: rounded(Math.abs(meshVolume(cutMesh(planes)) - trim().body.volume())),
    };
  });
  // what stays in the report is near to linear in the number of facets
  const growth = [60, 120, 250, 500, 1000].map((facets) => {
    const plan = planWith(facets);
    const { median } = timed(SLOW_RUNS, () => reportPlan(plan));
    return { facets, solveAndReportMs: rounded(median), msPerFacet: rounded(median / facets) };
  });
  const made = Array.from({ length: MADE_PLANS }, (_, seed) => {
    const plan = planOf(seed);
    const start = performance.now();
    reportPlan(plan);
    return {
      seed,
      facets: plan.tiers.reduce((sum, t) => sum + t.count, 0),
      ms: rounded(performance.now() - start),
    };
  }).sort((a, b) => b.ms - a.ms);
  const rules = RULES.map((depth) => {
    const ring = { ...tier("a", 120, 10, 0, "front"), depth: { rule: "touch" } as const };
    const plan: Plan = {
      ...planWith(25),
      tiers: [ring, { ...tier("b", 120, 25, 0, "front"), startDeg: 1.5, depth }],
    };
    return { rule: depth.rule, facets: 120, ms: rounded(timed(SLOW_RUNS, () => solvePlan(plan)).median) };
  });
  return {
    bench: "geometry",
    growth,
    slowestMade: made.slice(0, 5),
    medianMadeMs: made[MADE_PLANS / 2].ms,
    rules,
    node: process.version,
    cpu: cpus()[0]?.model ?? "unknown",
    // other work on the machine while this ran: above its number of cores, medians are too long
    cores: cpus().length,
    loadAverage: rounded(loadavg()[0]),
    segments: SEGMENTS,
    triangles: whole.triangles.length / 3,
    cases,
  };
}
