/** The order of work, what it costs to find an angle again, and what is said on the way. */
import { describe, expect, it } from "vitest";
import { extraDepth, foundAgain } from "../../../src/core/bench/as-cut/found-again.ts";
import { benchData, benchOf, isGround, isWorked } from "../../../src/core/bench/bench.ts";
import { cautionsAt } from "../../../src/core/bench/order/cautions.ts";
import { DEFAULT_HABITS, type Step } from "../../../src/core/bench/order/order.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { plan, RIG, tier } from "./plans.ts";

const STAGES = [
  { id: "s1", name: "Coarse", grainUm: 75, calibration: [{ strokes: 20, widthMm: 6 }] },
  { id: "s2", name: "Fine", grainUm: 15, calibration: [{ strokes: 40, widthMm: 6 }] },
];
const three = solvePlan(
  plan(
    [
      tier({ depth: { rule: "edge", mm: 3 } }),
      tier({
        id: "upper",
        name: "Upper",
        armAngleDeg: 45,
        startDeg: 15,
        depth: { rule: "close", to: "belt" },
      }),
      tier({ id: "under", name: "Under", side: "back", armAngleDeg: 30, count: 8 }),
    ],
    { ...RIG, stages: STAGES },
  ),
);
const bench = benchOf(three);
const [each, rough] = bench.order;
const kinds = (steps: readonly Step[]) => steps.map((s) => s.kind);
const count = (steps: readonly Step[], kind: Step["kind"]) => kinds(steps).filter((k) => k === kind).length;

describe("order of work", () => {
  it("sets each angle once when each tier is finished before the next", () => {
    expect(each.way).toBe("finish-each");
    expect(count(each.steps, "set-arm")).toBe(3);
    expect(count(each.steps, "find-angle-again")).toBe(0);
    // Two discs for each of three tiers.
    expect(each.discChanges).toBe(6);
  });

  it("changes discs less and finds angles again when all is roughed first", () => {
    expect(rough.way).toBe("rough-all");
    // Front: coarse, fine; back: coarse, fine.
    expect(rough.discChanges).toBe(4);
    // The arm moves on to the upper tier, then back to both on the fine disc; behind there is one tier only.
    expect(count(rough.steps, "find-angle-again")).toBe(2);
  });

  it("counts the usual minutes for setting an angle and for finding one again", () => {
    // common practice, no source
    const USUAL_MIN = { "set-arm": 5, "find-angle-again": 10 };
    for (const [kind, minutes] of Object.entries(USUAL_MIN))
      expect(new Set(rough.steps.filter((s) => s.kind === kind).map((s) => s.minutes))).toEqual(
        new Set([minutes]),
      );
  });

  it("grinds every facet at every stage once, in both ways", () => {
    for (const way of bench.order) {
      const ground = way.steps.flatMap((s) => (s.kind === "grind" ? [`${s.facet} ${s.stage}`] : []));
      expect(new Set(ground).size).toBe(32 * 2);
      expect(ground).toHaveLength(32 * 2);
    }
  });

  it("turns the piece over once, after the front, with a trial facet of the first back tier", () => {
    const at = each.steps.findIndex((s) => s.kind === "turn-over");
    expect(each.steps[at]).toMatchObject({ to: "back", trialTier: "under" });
    expect(each.steps.slice(at).some((s) => s.kind === "grind" && s.tier !== "under")).toBe(false);
    expect(each.turnOvers).toBe(1);
  });

  it("cleans between two grits and inspects before the arm moves", () => {
    const at = each.steps.findIndex((s) => s.kind === "clean");
    expect(each.steps[at]).toMatchObject({ from: "s1", to: "s2" });
    expect(each.steps[at + 1].kind).toBe("fit-disc");
    const firstArmMove = each.steps.findIndex((s, i) => s.kind === "set-arm" && i > 5);
    expect(kinds(each.steps.slice(0, firstArmMove))).toContain("inspect-polish");
  });

  it("adds up its minutes from the habits and the strokes", () => {
    const strokes = each.steps.reduce((sum, s) => sum + (s.kind === "grind" ? s.strokes! : 0), 0);
    const fixed =
      DEFAULT_HABITS.prepareMin +
      3 * DEFAULT_HABITS.setArmMin +
      6 * DEFAULT_HABITS.discMin +
      5 * DEFAULT_HABITS.cleanMin +
      64 * DEFAULT_HABITS.indexMin +
      32 * DEFAULT_HABITS.inspectMin +
      3 * DEFAULT_HABITS.measureMin +
      DEFAULT_HABITS.turnOverMin;
    expect(each.minutes).toBeCloseTo(fixed + strokes / 60, 6);
    expect(each.minutesAreGuess).toBe(false);
  });

  it("takes the plan's own minutes, and the usual ones where it says nothing", () => {
    const own = { ...three.plan, rig: { ...three.plan.rig, habits: { discMin: 10, setArmMin: 0 } } };
    const [work] = benchOf(solvePlan(own)).order;
    // Six discs at 10 instead of 3 minutes, three arm settings at 0 instead of 5.
    expect(work.minutes - each.minutes).toBeCloseTo(6 * 7 - 3 * 5, 9);
  });

  it("stops a tier that is to stay ground after its grinding stage", () => {
    const tiers = three.plan.tiers.map((t, i) => (i === 1 ? ({ ...t, finish: "ground" } as const) : t));
    const [work] = benchOf(solvePlan({ ...three.plan, tiers })).order;
    const upper = work.steps.filter((s) => "tier" in s && s.tier === "upper");
    expect(new Set(upper.flatMap((s) => (s.kind === "grind" ? [s.stage] : [])))).toEqual(new Set(["s1"]));
    expect(kinds(upper)).toContain("measure-as-cut");
    expect(kinds(upper)).not.toContain("inspect-polish");
    const last = upper.findLast((s) => s.kind === "grind");
    const finished = cutBall(three.planes.slice(0, 24));
    expect(last).toMatchObject({ facet: "upper/12" });
    expect(last?.kind === "grind" ? last.widthMm : 0).toBeCloseTo(finished.facets[23].width * 15, 9);
    // Its fine disc is not fitted, and the coarse one stays on for the tier after it.
    expect(work.discChanges).toBe(each.discChanges - 2);
  });

  it("leaves out facets and tiers whose glass earlier ones have taken already", () => {
    // Four flats 2 mm deep round the waist; then eight 0.5 mm deep, four of which lie above those; then four that all do.
    const waist = (id: string, count: number, mm: number) =>
      tier({ id, count, armAngleDeg: 0, depth: { rule: "depth", mm } });
    const covered = benchOf(
      solvePlan(plan([waist("deep", 4, 2), waist("both", 8, 0.5), waist("above", 4, 1)], { stages: STAGES })),
    );
    const steps = covered.order[0].steps;
    const ground = steps.flatMap((s) => (s.kind === "grind" && s.stage === "s2" ? [s.facet] : []));
    expect(ground).toEqual([..."1234"].map((k) => `deep/${k}`).concat([..."2468"].map((k) => `both/${k}`)));
    expect(steps.filter((s) => "tier" in s && s.tier === "above")).toEqual([]);
    expect(covered.tiers.map((own) => [isWorked(own, 0), isGround(own.facets[0], 0)])).toEqual([
      [true, true],
      [true, false],
      [false, false],
    ]);
  });

  it("warns of coarse work beside a polished tier, and of turning over again and again", () => {
    const finding = bench.findings.find((f) => f.code === "coarse-beside-polished");
    expect(finding).toMatchObject({ tier: "upper", data: { stage: "s1", polishedTier: "belt" } });
    const often = solvePlan(
      plan(
        ["front", "back", "front", "back"].map((side, i) =>
          tier({ id: `t${i}`, side: side as "front", armAngleDeg: 20 + 10 * i }),
        ),
      ),
    );
    expect(benchOf(often).findings.map((f) => f.code)).toContain("turned-over-often");
  });

  it("shows cautions where something can hurt", () => {
    expect(cautionsAt("grind")).toContain("wet-only");
    expect(cautionsAt("turn-over")).toContain("solvent-fire");
    expect(cautionsAt("measure-as-cut")).toEqual([]);
  });

  it("is an answer for the uncut marble too", () => {
    const none = benchOf(solvePlan(plan([])));
    expect(none.tiers).toEqual([]);
    expect(none.order.map((w) => kinds(w.steps))).toEqual([["prepare"], ["prepare"]]);
  });
});

describe("bench data", () => {
  it("has null rig numbers without arm or lap", () => {
    const data = benchData(benchOf(solvePlan(plan([tier()], { stages: STAGES }))), [null]);
    expect(data.tiers[0]).toMatchObject({
      pivotHeightMm: null,
      armLengthMm: null,
      contactRadiusMm: null,
      dipAtTouchDeg: null,
      speedMs: null,
    });
  });

  it("says when the plan names no abrasives", () => {
    expect(benchOf(solvePlan(plan([tier()]))).findings.map((f) => f.code)).toContain("default-stages");
  });
});

describe("an angle found again", () => {
  it("costs the depth worked by hand on a free circle", () => {
    // Circle 6 mm wide on R = 15: h = sqrt(225 - 9) = 14.6969. One degree off:
    // h (1 - cos 1) + 3 sin 1 = 0.00224 + 0.05236 = 0.0546 mm.
    expect(extraDepth(14.6969, -3, 3, 1)).toBeCloseTo(0.0546, 4);
    expect(extraDepth(14.6969, -3, 3, -1)).toBeCloseTo(0.0546, 4);
    expect(extraDepth(14.6969, -3, 3, 0)).toBe(0);
  });

  it("takes the worse side of a face that lies off its foot", () => {
    // 4 mm up, 1 mm down: 4 sin 1 decides whichever way it is off.
    expect(extraDepth(14, -1, 4, 1)).toBeCloseTo(
      14 * (1 - Math.cos(Math.PI / 180)) + 4 * Math.sin(Math.PI / 180),
      9,
    );
  });

  it("clears the old face wholly, and closes gaps between neighbours", () => {
    const cost = foundAgain(three, 0.5)[0]!;
    // The belt closes to its own neighbours and to the tier above it: nothing that met opens when it goes deeper.
    expect(cost.meetsLost).toBe(0);
    expect(cost.cornerMissMm!).toBeGreaterThan(cost.extraDepthMm * 0.5);
    expect(cost.extraDepthMm).toBeGreaterThan(0);
    expect(cost.gapChangeMm!).toBeLessThan(0);
    expect(cost.edgeChangeMm!).toBeGreaterThan(0);
    // Every point of the old outline is at or beyond the new plane.
    const facet = cutBall(three.planes.slice(0, 12)).facets[0];
    const angle = (20.5 * Math.PI) / 180;
    const n = [Math.cos(angle), 0, Math.sin(angle)];
    const h = facet.plane.h - cost.extraDepthMm / 15;
    for (const { from } of facet.outline)
      expect(from[0] * n[0] + from[2] * n[2]).toBeGreaterThanOrEqual(h - 1e-9);
  });

  it("costs what the plan's own spread says, half a degree where it says nothing", () => {
    expect(foundAgain(three)[0]!.offDeg).toBe(0.5);
    const own = { ...three.plan, rig: { ...three.plan.rig, spread: { againDeg: 1.5 } } };
    const [wide] = foundAgain(solvePlan(own));
    expect(wide!.offDeg).toBe(1.5);
    expect(wide!.extraDepthMm).toBeGreaterThan(2.9 * foundAgain(three)[0]!.extraDepthMm);
  });

  it("costs nothing when the angle is found exactly", () => {
    for (const cost of foundAgain(three, 0)) {
      expect(cost).toMatchObject({ extraDepthMm: 0, meetsLost: 0 });
      expect(cost!.gapChangeMm).toBeCloseTo(0, 12);
      expect(cost!.cornerMissMm ?? 0).toBeCloseTo(0, 9);
    }
  });

  it("counts the meets that a deeper tier grinds away", () => {
    // The upper tier runs exactly through the points where the belt's twelve pairs touch: any deeper, and they are gone.
    const pinched = solvePlan(
      plan([
        tier({ depth: { rule: "touch" } }),
        tier({ id: "upper", armAngleDeg: 45, startDeg: 15, depth: { rule: "corners", of: "belt" } }),
      ]),
    );
    const [, upper] = foundAgain(pinched, 1);
    expect(upper!.meetsLost).toBe(12);
  });
});
