/** Planted cuts, measured on the exact solid and rounded as calipers round, must be found again. */
import { describe, expect, it } from "vitest";
import { fitAsCut } from "../../../src/core/bench/as-cut/as-cut.ts";
import { seeded } from "../../../src/core/bench/chances/chance.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { distance } from "../../../src/core/geometry/vec.ts";
import type { AsCut, Plan, Tier } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";

const PLANS = 100;
const round01 = (mm: number) => Math.round(mm * 10) / 10;

interface Planted {
  readonly plan: Plan;
  readonly truth: Tier;
}

/** A one- or two-tier plan and the tier as it was really cut: up to 3 degrees and a quarter of the depth off. */
function plant(random: () => number): Planted {
  const between = (a: number, b: number) => a + (b - a) * random();
  const count = 2 * Math.round(between(3, 8));
  const diameterMm = between(16, 50);
  const depthMm = (diameterMm / 2) * between(0.02, 0.09);
  const side = random() < 0.5 ? "front" : "back";
  const own: Tier = {
    id: "own",
    name: "Own",
    side,
    armAngleDeg: between(8, 72),
    count,
    startDeg: between(0, 360),
    depth: { rule: "depth", mm: depthMm },
  };
  const flat: Tier = { ...own, id: "flat", name: "Flat", armAngleDeg: 90, count: 1 };
  const plan: Plan = {
    format: "glintwright-plan",
    version: 1,
    name: "planted",
    piece: { diameterMm, glass: "soda-lime" },
    rig: { wheelStops: null },
    tiers: random() < 0.3 ? [flat, own] : [own],
  };
  const truth: Tier = {
    ...own,
    armAngleDeg: own.armAngleDeg + between(-3, 3),
    depth: { rule: "depth", mm: depthMm * between(0.75, 1.25) },
  };
  return { plan, truth };
}

const withOwn = (plan: Plan, own: Tier): Plan => ({
  ...plan,
  tiers: plan.tiers.map((tier) => (tier.id === own.id ? own : tier)),
});

/** Reads the planted piece on the whole solid: width, height, edge, and calipers between the nearest points over the pole. */
function measure({ plan, truth }: Planted): AsCut {
  const solved = solvePlan(withOwn(plan, truth));
  const solid = cutBall(solved.planes);
  const { first, count } = solved.tiers[solved.tiers.length - 1];
  const R = solved.radiusMm;
  const facet = solid.facets[first];
  const edge = solid.edges.find((e) => e.a === first && e.b === first + 1);
  const poleEnd = (k: number): readonly [number, number, number] => {
    const points = solid.facets[k].outline.flatMap((piece) => [piece.from, piece.to]);
    const { n, h } = solved.planes[k];
    const rho = Math.acos(h);
    const up = truth.side === "front" ? 1 : -1;
    const tilt = Math.asin(up * n[2]) + rho;
    const t = Math.atan2(n[1], n[0]);
    // The pole-side end of the uncut circle, if the outline still has it, else its highest corner.
    const top = [Math.cos(tilt) * Math.cos(t), Math.cos(tilt) * Math.sin(t), up * Math.sin(tilt)] as const;
    const isThere = solved.planes.every(
      (p, j) => j === k || p.n[0] * top[0] + p.n[1] * top[1] + p.n[2] * top[2] <= p.h + 1e-12,
    );
    if (isThere) return top;
    const height = Math.max(...points.map((p) => up * p[2]));
    const ends = points.filter((p) => up * p[2] > height - 1e-9);
    const mean = (i: number) => ends.reduce((s, p) => s + p[i], 0) / ends.length;
    return [mean(0), mean(1), mean(2)];
  };
  return {
    widthMm: round01(facet.width * R),
    heightMm: round01(facet.height * R),
    ...(edge ? { edgeMm: round01(edge.length * R) } : {}),
    acrossMm: round01(distance(poleEnd(first), poleEnd(first + count / 2)) * R),
    flatToSkinMm: round01(R * (1 + solved.planes[first].h)),
  };
}

describe("as-cut inversion of planted cuts", () => {
  const random = seeded(20260101);
  const planted = Array.from({ length: PLANS }, () => plant(random));
  const trials = planted.map((p) => {
    const measured = measure(p);
    const answer = (asCut: AsCut) => fitAsCut(withOwn(p.plan, { ...p.plan.tiers.at(-1)!, asCut })).tiers[0];
    return { ...p, measured, answer, depthMm: p.truth.depth.rule === "depth" ? p.truth.depth.mm : 0 };
  });
  const within3 = (fit: ReturnType<(typeof trials)[0]["answer"]>, t: (typeof trials)[0]) =>
    Math.abs(fit.armAngleDeg - t.truth.armAngleDeg) <= 3 * fit.armAngleSdDeg &&
    Math.abs(fit.depthMm - t.depthMm) <= 3 * fit.depthSdMm;

  it.each([
    ["width and calipers over the pole", ["widthMm", "acrossMm"]],
    ["everything a caliper reaches", ["widthMm", "heightMm", "edgeMm", "acrossMm", "flatToSkinMm"]],
    ["the width alone, the plan filling in", ["widthMm"]],
    ["flat to skin and height", ["flatToSkinMm", "heightMm"]],
  ] as const)(
    "finds angle and depth within three stated deviations in at least 95 of 100 from %s",
    (_, names) => {
      const hits = trials.filter((t) => {
        const some = Object.fromEntries(
          names.flatMap((name) => (t.measured[name] === undefined ? [] : [[name, t.measured[name]]])),
        );
        return within3(t.answer(some), t);
      });
      expect(hits.length).toBeGreaterThanOrEqual(95);
    },
  );

  it("finds the angle within 1 degree where the pole is measured across, with the other lengths", () => {
    // Calipers find nothing over the pole where facets have met there.
    const open = trials.filter((t) => t.measured.acrossMm! > 0);
    expect(open.length).toBeGreaterThan(90);
    for (const t of open) {
      const fit = t.answer(t.measured);
      expect(Math.abs(fit.armAngleDeg - t.truth.armAngleDeg)).toBeLessThan(1);
    }
  });
});
