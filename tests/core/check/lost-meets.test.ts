import { describe, expect, it } from "vitest";
import { onWheel } from "../../../src/core/check/findings-wheel-cost.ts";
import { mendsOf, planWith } from "../../../src/core/check/mends.ts";
import { reportPlan } from "../../../src/core/check/report.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { plan, tier } from "../plan/sample.ts";

const costs = (p: Plan) => reportPlan(p).findings.filter((f) => f.code === "wheel-splits");

/**
 * Eight over sixteen, whose edges run on into theirs: four planes in each such corner. The lower ring starts at 11.25
 * degrees, which are 2.5 stops of a wheel of 80: it stands 2.25 degrees beside.
 */
const chain = (wheelStops: number | null) =>
  plan(
    [
      tier("a", 8, 16, { rule: "edge", mm: 3.5 }, 11.25),
      tier("b", 40, 8, { rule: "close", to: "a" }),
      tier("c", 60, 8, { rule: "close", to: "b" }),
    ],
    { diameterMm: 34 },
    { wheelStops },
  );

describe("what the wheel costs", () => {
  it("says nothing where every facet stands on its stop, or without a wheel", () => {
    expect(costs(chain(64))).toEqual([]);
    expect(costs(chain(null))).toEqual([]);
    expect(costs(plan([tier("a", 20, 8, { rule: "touch" }, 1)]))).toEqual([]);
  });

  it("warns of the tier moved, with the worst miss at any size, the facets, and wheels that keep all", () => {
    const p = chain(80);
    const [cost, ...others] = costs(p);
    expect(others).toEqual([]);
    expect(cost).toMatchObject({ severity: "warn", tier: "a" });
    expect(cost.data.movedDeg).toBeCloseTo(2.25, 9);
    expect(cost.data.missMm as number).toBeGreaterThan(0.15);
    expect(cost.facets?.length).toBeGreaterThan(2);
    expect(reportPlan(p).findings.map((f) => f.code)).not.toContain("start-moved");
    const wheels = cost.data.wheels as number[];
    expect(wheels).toContain(64);
    for (const stops of wheels) {
      expect(stops % 32).toBe(0);
      expect(costs(onWheel(p, stops))).toEqual([]);
    }
  });

  it("mends it by a wheel that keeps all, as one change", () => {
    const p = chain(80);
    const [cost] = costs(p);
    const mends = [...mendsOf(p, cost)].filter((m) => m !== null);
    expect(mends.map((m) => m.change.to)).toContain("wheel");
    for (const mend of mends) expect(costs(planWith(p, mend.steps))).toEqual([]);
  });

  it("names the nearest start on the wheel with which all meet, where there is one", () => {
    // asked between two stops, where its facets pass those of the ring below on the other side
    for (const start of [0.5, 1.7, 1.9, 5.6, 9.4, 13]) {
      const asked = (startDeg: number) =>
        plan([tier("a", 0, 12, { rule: "touch" }), tier("b", 35, 12, { rule: "close", to: "a" }, startDeg)]);
      for (const cost of costs(asked(start)))
        if (typeof cost.data.startDeg === "number") expect(costs(asked(cost.data.startDeg))).toEqual([]);
    }
  });

  it("measures a split corner as its planes stand off the middle of what is left of it", () => {
    const cost = costs(chain(80))[0];
    const open = reportPlan(chain(80));
    // the same corner, from the report's own list of vertices
    const four = new Set(cost.facets?.slice(0, 4));
    const left = open.corners.filter((c) => c.facets.every((id) => four.has(id)));
    const at = [0, 1, 2].map((k) => left.reduce((sum, c) => sum + c.at[k], 0) / left.length);
    const planes = open.facets.filter((f) => four.has(f.id));
    const normal = (f: (typeof planes)[number]) => {
      const [a, t] = [f.armAngleDeg, f.azimuthDeg].map((deg) => (deg * Math.PI) / 180);
      return [Math.cos(a) * Math.cos(t), Math.cos(a) * Math.sin(t), Math.sin(a)];
    };
    const miss = Math.max(
      ...planes.map((f) => Math.abs(normal(f).reduce((sum, n, k) => sum + n * at[k], 0) - f.planeMm)),
    );
    expect(left.length).toBeGreaterThan(1);
    expect(cost.data.missMm).toBeCloseTo(miss, 6);
  });
});
