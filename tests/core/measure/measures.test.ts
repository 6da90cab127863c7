import { describe, expect, it } from "vitest";
import { benchOf } from "../../../src/core/bench/bench.ts";
import { reportAtOnce } from "../../../src/core/check/report.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { measureLook, rayBodyOf } from "../../../src/core/measure/look-measures.ts";
import { measurePlan } from "../../../src/core/measure/measures.ts";
import { ringsMeet, tiersMeet } from "../../../src/core/measure/meeting.ts";
import { GRID } from "../../../src/core/measure/places.ts";
import {
  BACK,
  emptyEnds,
  INSIDE,
  type RayEnds,
  StraightRays,
  THROUGH,
} from "../../../src/core/measure/straight-rays.ts";
import { leaningViewer } from "../../../src/core/measure/viewer.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import type { DepthRule, InsideDesign, Plan, Tier } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { planOf } from "../../plans/generator.ts";
import { measuredByHand } from "./by-hand.ts";

const ND = 1.5;
const tier = (
  id: string,
  side: Tier["side"],
  armAngleDeg: number,
  count: number,
  depth: DepthRule,
  startDeg = 0,
) => ({
  id,
  name: id,
  side,
  armAngleDeg,
  count,
  startDeg,
  depth,
});
const planWith = (tiers: readonly Tier[], inside?: readonly InsideDesign[]): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name: "measured",
  // a radius of 10, so that depths read as tenths
  piece: {
    diameterMm: 20,
    glass: { name: "clear", nd: ND, vd: 60, densityGcm3: 2.5 },
    ...(inside ? { inside } : {}),
  },
  rig: { wheelStops: 96 },
  tiers,
});
const core = (diameterMm: number, atMm: readonly [number, number, number] = [0, 0, 0]): InsideDesign => ({
  kind: "core",
  diameterMm,
  atMm,
  rgb: [1, 0, 0],
});

/** How far each of the grid's rays passes from the axis. */
const distances = Array.from({ length: GRID * GRID }, (_, k) =>
  Math.hypot((2 * (k % GRID) + 1) / GRID - 1, (2 * Math.floor(k / GRID) + 1) / GRID - 1),
);
const inBall = distances.filter((rho) => rho < 1);

function looked(plan: Plan, leanDeg: number): RayEnds {
  const ends = emptyEnds();
  new StraightRays(rayBodyOf(solvePlan(plan))).look(leaningViewer(leanDeg), ends);
  return ends;
}

describe("the measures of a ball, in closed form", () => {
  it("sends back what the rim bends by more than a right angle, and lets one see through the rest", () => {
    // a ray is bent by i - r on its way in and once more on its way out
    const turn = (rho: number) => 2 * (Math.asin(rho) - Math.asin(rho / ND));
    const back = inBall.filter((rho) => turn(rho) > Math.PI / 2).length / inBall.length;
    const found = measurePlan(planWith([]));
    expect(found.back).toBeCloseTo(back, 12);
    expect(found.through).toBeCloseTo(1 - back, 12);
    expect(found).toMatchObject({ inside: 0, images: 0, sparkle: 0, skinShare: 1, facets: 0, tiers: 0 });
    expect(found).toMatchObject({ leastFacetMm: null, ringsMeet: true, meets: true });
  });

  it("shows a core in the middle as far out as the glass enlarges it: to n times its radius", () => {
    const radius = 0.3;
    const inside = inBall.filter((rho) => rho / ND < radius).length / inBall.length;
    const found = measurePlan(planWith([], [core(2 * 10 * radius)]));
    expect(found.inside).toBeCloseTo(inside, 12);
    expect(found.images).toBe(1);
  });

  it("takes a tinted core for an opaque one, and does not see a backing", () => {
    const opaque = measurePlan(planWith([], [core(6)]));
    const tinted = measurePlan(planWith([], [{ ...core(6), opaque: false } as InsideDesign]));
    expect(tinted).toEqual(opaque);
    const backing: InsideDesign = { kind: "backing", heightMm: 2, rgb: [0, 0, 1] };
    expect(measurePlan(planWith([], [backing]))).toEqual(measurePlan(planWith([])));
  });
});

describe("a slab", () => {
  const slab = planWith([
    tier("top", "front", 90, 1, { rule: "depth", mm: 8 }),
    tier("bottom", "back", 90, 1, { rule: "depth", mm: 8 }),
  ]);
  it("lets every ray through its two faces go on as it came, straight and leaning", () => {
    const flat = Math.sqrt(1 - 0.2 ** 2);
    for (const lean of [0, 10]) {
      const { fates, ends } = looked(slab, lean);
      const { view } = leaningViewer(lean);
      distances.forEach((rho, k) => {
        if (rho > flat - 0.25) return;
        expect(fates[k]).toBe(THROUGH);
        for (const c of [0, 1, 2]) expect(ends[3 * k + c]).toBeCloseTo(-view[c], 12);
      });
    }
    expect(measurePlan(slab).through).toBeGreaterThan(0.9);
  });
});

describe("a corner of three square faces behind a window", () => {
  // the faces' normals stand asin(1 / sqrt 3) above the equator, 90 degrees from each other
  const angle = (Math.asin(Math.sqrt(1 / 3)) * 180) / Math.PI;
  const cube = planWith([
    tier("window", "front", 90, 1, { rule: "depth", mm: 7 }),
    tier("corner", "back", angle, 3, { rule: "depth", mm: 5 }),
  ]);
  it.each([0, 7, -12])(
    "sends all rays near its middle back where they came from, leaning by %i degrees",
    (lean) => {
      const { fates, ends } = looked(cube, lean);
      const { view } = leaningViewer(lean);
      let asked = 0;
      distances.forEach((rho, k) => {
        if (rho > 0.3) return;
        asked++;
        expect(fates[k]).toBe(BACK);
        for (const c of [0, 1, 2]) expect(ends[3 * k + c]).toBeCloseTo(view[c], 12);
      });
      expect(asked).toBeGreaterThan(500);
    },
  );
});

describe("the measures against a second reckoning", () => {
  const seeds = [3, 11, 14, 20, 27];
  it.each(seeds)("of plan %i", (seed) => {
    const plan = {
      ...planOf(seed),
      piece: { ...planWith([]).piece, inside: [core(5, [1, 2, -1]), core(2, [-3, 0, 2])] },
    };
    const solved = solvePlan(plan);
    const toUnit = 1 / solved.radiusMm;
    const found = measureLook(rayBodyOf(solved));
    const byHand = measuredByHand({
      planes: solved.planes,
      nd: ND,
      balls: [
        { at: [toUnit, 2 * toUnit, -toUnit], r: 2.5 * toUnit },
        { at: [-3 * toUnit, 0, 2 * toUnit], r: toUnit },
      ],
    });
    // a ray in a thousand may lie on an edge, where rounding sends it either way
    for (const share of ["back", "through", "inside"] as const)
      expect(Math.abs(found[share] - byHand[share])).toBeLessThan(1e-3);
    expect(Math.abs(found.sparkle - byHand.sparkle)).toBeLessThan(0.02);
    expect(Math.abs(found.images - byHand.images)).toBeLessThanOrEqual(1);
  });

  it.each([
    ["its own mirror image, where half of the rays are not traced", 22.5, 6],
    ["itself turned half round, where half of the leans are not traced", 11.25, 6],
    ["no image of itself", 11.25, 5],
  ])("of a plan that is %s", (_, startDeg, count) => {
    const plan = planWith(
      [
        tier("a", "front", 33, 8, { rule: "touch" }),
        tier("b", "front", 58, 8, { rule: "close", to: "a" }, startDeg),
        tier("c", "back", 40, count, { rule: "touch" }),
      ],
      [core(5)],
    );
    const solved = solvePlan(plan);
    const found = measureLook(rayBodyOf(solved));
    const byHand = measuredByHand({ planes: solved.planes, nd: ND, balls: [{ at: [0, 0, 0], r: 0.25 }] });
    for (const share of ["back", "through", "inside"] as const)
      expect(Math.abs(found[share] - byHand[share])).toBeLessThan(1e-3);
    expect(Math.abs(found.sparkle - byHand.sparkle)).toBeLessThan(0.02);
    expect(found.images).toBe(byHand.images);
  });
});

describe("rays that end inside", () => {
  it("meet the same place of a ribbon as the tracer's own designs say", () => {
    const ribbon: InsideDesign = {
      kind: "ribbon",
      widthMm: 6,
      lengthMm: 8,
      thicknessMm: 2,
      turns: 0.5,
      rgb: [1, 1, 1],
    };
    const plan = planWith([], [ribbon]);
    const { fates, ends } = looked(plan, 0);
    const met = [...fates.keys()].filter((k) => fates[k] === INSIDE);
    expect(met.length).toBeGreaterThan(300);
    const [design] = makeScene({ piece: plan.piece, planes: [], light: { kind: "uniform" } }).designs;
    for (const k of met) {
      const [x, y, z] = [ends[3 * k], ends[3 * k + 1], ends[3 * k + 2]];
      expect(Math.abs(z)).toBeLessThan(design.size[2] + 1e-3);
      expect(Math.hypot(x, y)).toBeLessThan(Math.hypot(design.size[0], design.size[1]) + 1e-3);
    }
  });
});

describe("what it takes and whether it meets", () => {
  it("tells nothing seen and nothing left where the glass is gone", () => {
    const gone = planWith([
      tier("a", "front", 90, 1, { rule: "depth", mm: 12 }),
      tier("b", "back", 90, 1, { rule: "depth", mm: 12 }),
    ]);
    const found = measurePlan(gone);
    expect(found).toMatchObject({
      back: 0,
      through: 0,
      inside: 0,
      sparkle: 0,
      images: 0,
      skinShare: 0,
      facets: 2,
    });
    expect(found).toMatchObject({ leastFacetMm: null, ringsMeet: false, meets: false });
  });

  it("counts swallowed facets as planned, and says that such rings don't meet", () => {
    const found = measurePlan(planWith([tier("a", "front", 30, 8, { rule: "depth", mm: 0 })]));
    expect(found).toMatchObject({ facets: 8, tiers: 1, leastFacetMm: null, skinShare: 1, meets: false });
  });

  it("takes the bench's minutes, the faster order, and none where there is nothing to cut with", () => {
    const plan = planWith([
      tier("a", "front", 30, 8, { rule: "touch" }),
      tier("b", "back", 40, 6, { rule: "width", mm: 4 }),
    ]);
    const { order } = benchOf(solvePlan(plan));
    expect(measurePlan(plan).minutes).toBeCloseTo(Math.min(...order.map(({ minutes }) => minutes)), 6);
    expect(measurePlan({ ...plan, rig: { ...plan.rig, stages: [] } }).minutes).toBeNull();
  });

  it.each([0, 1, 2])(
    "says that rings meet but tiers don't where one stands by itself, cut as number %i",
    (at) => {
      const joined = [
        tier("a", "front", 20, 12, { rule: "touch" }),
        tier("b", "front", 45, 12, { rule: "close", to: "a" }, 15),
      ];
      const alone = tier("c", "front", 90, 1, { rule: "depth", mm: 0.1 });
      const tiers = [...joined.slice(0, at), alone, ...joined.slice(at)];
      expect(measurePlan(planWith(tiers))).toMatchObject({ ringsMeet: true, meets: false });
      expect(measurePlan(planWith(joined)).meets).toBe(true);
    },
  );

  it("says what the whole report says of meeting, whatever the plan", () => {
    const told = { rings: 0, all: 0 };
    for (let seed = 500; seed < 650; seed++) {
      const plan = planOf(seed);
      const solved = solvePlan(plan);
      const solid = cutBall(solved.planes);
      const { pairs, facets, findings } = reportAtOnce(plan, solved, solid);
      const isMet = new Set(pairs.filter(({ state }) => state !== "gap").map(({ a, b }) => `${a} ${b}`));
      const met = (a: string, b: string) => isMet.has(`${a} ${b}`) || isMet.has(`${b} ${a}`);
      const rings =
        !findings.some(({ severity }) => severity === "stop") &&
        !facets.some(({ swallowed }) => swallowed) &&
        plan.tiers.every(({ id, count }) =>
          Array.from({ length: count < 2 ? 0 : count === 2 ? 1 : count }, (_, k) => k).every((k) =>
            met(`${id}/${k + 1}`, `${id}/${((k + 1) % count) + 1}`),
          ),
        );
      const tierOf = (id: string) => id.slice(0, id.lastIndexOf("/"));
      const all =
        rings &&
        plan.tiers.every(
          ({ id, side }) =>
            plan.tiers.every((other) => other.id === id || other.side !== side) ||
            pairs.some(
              ({ a, b, state }) =>
                state !== "gap" && tierOf(a) !== tierOf(b) && (tierOf(a) === id || tierOf(b) === id),
            ),
        );
      const found = ringsMeet(solved, solid);
      expect(`${seed} ${found} ${found && tiersMeet(solved, solid)}`).toBe(`${seed} ${rings} ${all}`);
      told.rings += rings ? 1 : 0;
      told.all += all ? 1 : 0;
    }
    expect(told.all).toBeGreaterThan(10);
    expect(told.rings).toBeGreaterThan(told.all);
  });
});
