import { describe, expect, it } from "vitest";
import { type Mend, mendsOf, planWith } from "../../../src/core/check/mends.ts";
import { reportPlan } from "../../../src/core/check/report.ts";
import type { DepthRule, Piece, Plan, Tier } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";

const tier = (
  id: string,
  armAngleDeg: number,
  startDeg: number,
  depth: DepthRule,
  count = 12,
  side: Tier["side"] = "front",
): Tier => ({ id, name: id, side, armAngleDeg, count, startDeg, depth });
const planOf = (
  tiers: readonly Tier[],
  piece: Partial<Piece> = {},
  wheelStops: number | null = 96,
): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name: "mends",
  piece: { diameterMm: 30, glass: "borosilicate", ...piece },
  rig: { wheelStops },
  tiers,
});
const girdle = tier("a", 0, 0, { rule: "touch" });

/** Twelve at 25 degrees that pass the corners of the ring before by so much. */
function pastCorners(mm: number): Plan {
  const low = tier("a", 0, 0, { rule: "edge", mm: 5 });
  const exact = planOf([low, tier("b", 25, 15, { rule: "corners", of: "a" })]);
  const depthMm = solvePlan(exact).tiers[1].depthMm;
  return planOf([low, tier("b", 25, 15, { rule: "depth", mm: depthMm + mm })]);
}

/** Plans that have one finding of a code each. */
const CASES: Readonly<Record<string, Plan>> = {
  uneven: planOf([tier("a", 30, 0, { rule: "depth", mm: 0.5 }, 14)]),
  "start-moved": planOf([tier("a", 30, 1, { rule: "touch" })]),
  duplicate: planOf([girdle, tier("b", 0, 0, { rule: "touch" })]),
  "near-duplicate": planOf([girdle, tier("b", 0.6, 0, { rule: "touch" })]),
  "rule-unmet": planOf([
    tier("a", 0, 0, { rule: "edge", mm: 3 }),
    tier("b", 80, 15, { rule: "edge", mm: 25 }),
  ]),
  overshoot: planOf([
    tier("a", 0, 0, { rule: "edge", mm: 3 }),
    tier("b", 35, 15, { rule: "corners", of: "a" }, 8),
  ]),
  swallowed: planOf([
    tier("t", 90, 0, { rule: "depth", mm: 3 }, 1),
    tier("b", 85, 0, { rule: "depth", mm: 0.5 }, 6),
  ]),
  sliver: planOf([tier("a", 30, 0, { rule: "depth", mm: 0.00002 }, 6)]),
  "near-miss": pastCorners(0.003),
  "short-edge": pastCorners(0.02),
  lost: planOf([tier("a", 40, 0, { rule: "depth", mm: 0.1 }), tier("b", 40, 0, { rule: "depth", mm: 0.3 })]),
  vanished: planOf([tier("a", 0, 0, { rule: "depth", mm: 16 }, 8)]),
  "skin-between": planOf([girdle, tier("b", 36, 15, { rule: "depth", mm: 0.3 })]),
  "under-dop": planOf([tier("b", 55, 0, { rule: "depth", mm: 1.2 }, 6, "back")], {
    dop: { side: "back", diameterMm: 12 },
  }),
  "inside-broken": planOf([tier("a", 30, 0, { rule: "depth", mm: 6 }, 6)], {
    inside: [{ kind: "bubble", diameterMm: 20 }],
  }),
  "inside-thin": planOf([tier("a", 30, 0, { rule: "depth", mm: 4.5 }, 6)], {
    inside: [{ kind: "bubble", diameterMm: 20 }],
  }),
};

const firstFinding = (plan: Plan, code: string) => reportPlan(plan).findings.find((f) => f.code === code);
const mendsFor = (plan: Plan, code: string): Mend[] => {
  const finding = firstFinding(plan, code);
  if (!finding) throw new Error(`the case has no finding ${code}`);
  return [...mendsOf(plan, finding)].filter((m) => m !== null);
};

describe("mends", () => {
  it.each(Object.keys(CASES))(
    "offers for %s at least one change, and each makes the finding go away",
    (code) => {
      const plan = CASES[code];
      const finding = firstFinding(plan, code);
      const mends = mendsFor(plan, code);
      expect(mends.length).toBeGreaterThan(0);
      for (const mend of mends) {
        const after = reportPlan(planWith(plan, mend.steps)).findings;
        expect(after.filter((f) => f.code === code && f.tier === finding?.tier)).toEqual([]);
        expect(after.filter((f) => f.severity === "stop" && f.code !== code)).toEqual([]);
      }
    },
  );

  it("closes the gap between two tiers by the rule that keeps it closed", () => {
    const [mend] = mendsFor(CASES["skin-between"], "skin-between");
    expect(mend.change).toMatchObject({ to: "rule", tierId: "b", depth: { rule: "close", to: "a" } });
  });

  it("uses the counts that this wheel can do, the nearest first", () => {
    const counts = mendsFor(CASES.uneven, "uneven").map((m) =>
      m.change.to === "count" ? m.change.count : null,
    );
    expect(counts).toEqual([12, 16, 8]);
  });

  it("backs off from the inside design just as far as leaves the glass that is wanted", () => {
    const [mend] = mendsFor(CASES["inside-broken"], "inside-broken");
    expect(mend.change).toMatchObject({ to: "depth", mm: 4 });
  });

  it("moves clear of the dop by the least depth, and offers the widest dop that fits", () => {
    const mends = mendsFor(CASES["under-dop"], "under-dop");
    const depth = mends.find((m) => m.change.to === "depth");
    expect(depth).toBeDefined();
    if (depth?.change.to !== "depth") return;
    const deeper = planOf(
      [{ ...CASES["under-dop"].tiers[0], depth: { rule: "depth", mm: depth.change.mm + 0.02 } }],
      {
        dop: { side: "back", diameterMm: 12 },
      },
    );
    expect(firstFinding(deeper, "under-dop")).toBeDefined();
    expect(mends.map((m) => m.change.to)).toContain("dop");
  });

  it("leaves the plan it was asked about alone", () => {
    const plan = CASES["skin-between"];
    const before = JSON.stringify(plan);
    mendsFor(plan, "skin-between");
    expect(JSON.stringify(plan)).toBe(before);
  });

  it("offers nothing for a finding it does not know", () => {
    const strange = { code: "reach", severity: "warn", tier: "a", data: {}, text: "" } as const;
    expect([...mendsOf(planOf([girdle]), strange)]).toEqual([]);
  });
});
