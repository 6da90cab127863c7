import { expect, it } from "vitest";
import { finishedOf, reportPlan } from "../../../src/core/check/report.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import type { PlanFindingCode } from "../../../src/core/plan/finding.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { foundIn } from "../../fixtures/found.ts";
import { plan, tier } from "../plan/sample.ts";

const find = <C extends PlanFindingCode>(p: Plan, code: C) => foundIn(reportPlan(p).findings, code);

it("has nothing to say of a plan that meets", () => {
  const p = plan([
    tier("a", 0, 12, { rule: "edge", mm: 3 }),
    tier("b", 40, 12, { rule: "corners", of: "a" }, 15),
  ]);
  expect(reportPlan(p).findings).toEqual([]);
});

it("reports uneven if and only if the count does not divide the wheel, with the counts it can do", () => {
  for (const count of [1, 2, 3, 5, 7, 8, 9, 12, 16, 50, 96]) {
    const found = find(plan([tier("a", 20, count, { rule: "depth", mm: 0.05 })]), "uneven");
    expect(found.length).toBe(96 % count === 0 ? 0 : 1);
  }
  const [seven] = find(plan([tier("a", 0, 7, { rule: "touch" })]), "uneven");
  // Asked 13.714 stops apart; the fourth facet stands at 41, not 41.143 and so on: worst is 0.4286 stops = 1.607 deg.
  expect(seven.data.errorDeg).toBeCloseTo((3 / 7) * 3.75, 9);
  expect(seven.data.nearestCount).toBe(6);
});

it("reports a start between stops with how far the wheel moves it", () => {
  const [moved] = find(plan([tier("a", 20, 8, { rule: "touch" }, 1)]), "start-moved");
  expect(moved.severity).toBe("info");
  expect(moved.data.movedDeg).toBeCloseTo(-1, 9);
});

it("reports the very same flat cut twice and keeps the earlier", () => {
  const p = plan([tier("a", 30, 4, { rule: "depth", mm: 1 }), tier("b", 30, 2, { rule: "depth", mm: 1 })]);
  const found = find(p, "duplicate");
  expect(found.map((f) => f.facets)).toEqual([["a/1", "b/1", "a/3", "b/2"]]);
  expect(found[0].data).toMatchObject({ keeps: "a/1", swallowed: "b/1", count: 2, other: "a" });
  const facets = reportPlan(p).facets;
  expect(facets.find((f) => f.id === "b/1")).toMatchObject({
    swallowed: true,
    areaMm2: 0,
    widthMm: 0,
    heightMm: 0,
    outline: [],
    depthMm: 1,
  });
  expect(facets.find((f) => f.id === "a/1")?.swallowed).toBe(false);
});

it("reports nearly the same flat cut twice", () => {
  const p = plan([tier("a", 30, 4, { rule: "depth", mm: 1 }), tier("b", 30.5, 4, { rule: "depth", mm: 1 })]);
  const [twice, ...others] = find(p, "near-duplicate");
  expect(others).toEqual([]);
  expect(twice.data.count).toBe(4);
  expect(twice.facets).toHaveLength(8);
});

it("tells facets that never touch glass from facets that are ground away again", () => {
  const never = plan([
    tier("flat", 90, 1, { rule: "depth", mm: 4 }),
    tier("a", 80, 6, { rule: "depth", mm: 0.2 }),
  ]);
  const [swallowed] = find(never, "swallowed");
  expect(swallowed.facets).toHaveLength(6);
  // Just deeper than it says, the facets are there.
  const needed = swallowed.data.neededMm as number;
  const deeper = {
    ...never,
    tiers: [never.tiers[0], tier("a", 80, 6, { rule: "depth", mm: needed + 0.01 })],
  };
  expect(find(deeper, "swallowed")).toHaveLength(0);
  const less = { ...never, tiers: [never.tiers[0], tier("a", 80, 6, { rule: "depth", mm: needed - 0.01 })] };
  expect(find(less, "swallowed")).toHaveLength(1);

  const [lost] = find(
    plan([tier("a", 80, 6, { rule: "depth", mm: 0.2 }), tier("flat", 90, 1, { rule: "depth", mm: 4 })]),
    "lost",
  );
  expect(lost.facets).toHaveLength(6);
  expect(lost.data.by).toEqual(["flat"]);
});

it("reports a facet thinner than the tolerance", () => {
  const just = 15 - Math.sqrt(15 ** 2 - 0.02 ** 2);
  expect(find(plan([tier("a", 30, 3, { rule: "depth", mm: just })]), "sliver")[0].data.leastMm).toBeCloseTo(
    0.04,
    9,
  );
  expect(find(plan([tier("a", 30, 3, { rule: "depth", mm: 0.1 })]), "sliver")).toHaveLength(0);
});

it("reports corners that nearly come to a point, and how wide the skin between tiers is", () => {
  const a = tier("a", 0, 12, { rule: "edge", mm: 3 });
  const met = plan([a, tier("b", 40, 12, { rule: "corners", of: "a" }, 15)]);
  const depth = solvePlan(met).tiers[1].depthMm;
  const [near] = find(plan([a, tier("b", 40, 12, { rule: "depth", mm: depth - 0.05 }, 15)]), "near-miss");
  expect(near.data.missMm as number).toBeGreaterThan(0.05);
  const [skin] = find(plan([a, tier("b", 60, 12, { rule: "depth", mm: 0.3 }, 15)]), "skin-between");
  expect(skin.data.tiers).toEqual(["a", "b"]);
  expect(skin.data.leastMm as number).toBeGreaterThan(0);
});

it("reports facets under the dop, and by how much, worked by hand for whole circles", () => {
  // Arm angle 70 on the back: the circle's upper rim stands (90 - 70) - rho from the pole, R sin of that from the axis.
  const depth = 0.3;
  const rho = Math.acos(1 - depth / 15);
  const fromAxis = 15 * Math.sin((20 * Math.PI) / 180 - rho);
  const p = plan([tier("a", 70, 3, { rule: "depth", mm: depth }, 0, "back")], {
    dop: { side: "back", diameterMm: 10 },
  });
  const [under] = find(p, "under-dop");
  expect(under.severity).toBe("stop");
  expect(under.data.byMm).toBeCloseTo(5 - fromAxis, 9);
  expect(
    find(
      plan([tier("a", 70, 3, { rule: "depth", mm: depth })], { dop: { side: "back", diameterMm: 10 } }),
      "under-dop",
    ),
  ).toHaveLength(0);
});

it("reports how much glass is left over a core, exactly", () => {
  const core = { kind: "core" as const, diameterMm: 24, rgb: [0.2, 0.3, 0.8] as const };
  const at = (mm: number) => plan([tier("a", 30, 3, { rule: "depth", mm })], { inside: [core] });
  expect(find(at(1.9), "inside-thin")).toHaveLength(0);
  expect(find(at(2.4), "inside-thin")[0].data.leastMm).toBeCloseTo(0.6, 9);
  const [broken] = find(at(3.5), "inside-broken");
  expect(broken.severity).toBe("stop");
  expect(broken.data.leastMm).toBeCloseTo(-0.5, 9);
  expect(find(at(broken.data.depthThatClearsMm), "inside-thin")).toHaveLength(0);
});

it("answers a piece that vanishes", () => {
  const p = plan([
    tier("top", 90, 1, { rule: "depth", mm: 16 }),
    tier("bottom", 90, 1, { rule: "depth", mm: 16 }, 0, "back"),
  ]);
  const report = reportPlan(p);
  expect(find(p, "vanished")).toHaveLength(1);
  expect(report.totals.volumeMm3).toBe(0);
  expect(report.facets.every((f) => f.swallowed)).toBe(true);
});

it("says how long and wide the finished piece is and on which facets it stands", () => {
  const p = plan([
    tier("sides", 0, 4, { rule: "depth", mm: 3 }),
    tier("foot", 90, 1, { rule: "depth", mm: 2 }, 0, "back"),
  ]);
  const solved = solvePlan(p);
  const finished = finishedOf(solved, cutBall(solved.planes));
  expect(finished.alongMm).toBeCloseTo(28, 9);
  expect(finished.narrowestMm).toBeCloseTo(24, 9);
  // Circles of radius 9 on the four sides: the round corner between them still reaches the full sphere.
  expect(finished.widestMm).toBeCloseTo(30, 9);
  expect(finished.restsOn).toEqual(["sides/1", "sides/2", "sides/3", "sides/4", "foot/1"]);
  expect(finished.centreOfMassMm[2]).toBeGreaterThan(0);
});

it("tells a tier cut twice over once, however many facets it has", () => {
  const twice = plan([tier("a", 20, 16, { rule: "touch" }), tier("b", 20, 16, { rule: "touch" })]);
  const found = find(twice, "duplicate");
  expect(found).toHaveLength(1);
  expect(found[0].data.count).toBe(16);
});

it("names the tier that grinds facets away, not all that come later", () => {
  const p = plan([
    tier("first", 80, 6, { rule: "depth", mm: 0.2 }),
    tier("waist", 0, 12, { rule: "touch" }),
    tier("flat", 90, 1, { rule: "depth", mm: 4 }),
    tier("low", 0, 12, { rule: "depth", mm: 0.1 }, 0, "back"),
    tier("foot", 90, 1, { rule: "depth", mm: 2 }, 0, "back"),
  ]);
  expect(find(p, "lost").filter((f) => f.tier === "first")[0].data.by).toEqual(["flat"]);
});

it("takes no cap at the pole for a band between two tiers", () => {
  // two facets high on a ring of twelve: facets that face each other across the pole border the same cap of skin
  const p = plan([
    tier("b", 35, 12, { rule: "edge", mm: 2 }, 15),
    tier("c", 60, 2, { rule: "depth", mm: 0.4 }),
  ]);
  const { facets, pairs } = reportPlan(p);
  const azimuth = (id: string) => facets.find((f) => f.id === id)!.azimuthDeg;
  const turn = (a: string, b: string) => Math.abs(((azimuth(a) - azimuth(b) + 540) % 360) - 180);
  const gaps = pairs.filter((q) => q.state === "gap" && q.a.startsWith("b/") && q.b.startsWith("c/"));
  const across = gaps.filter((q) => turn(q.a, q.b) > 106);
  expect(Math.max(...across.map((q) => q.gapMm))).toBeGreaterThan(13);
  const [band] = find(p, "skin-between").filter((f) => f.tier === "c");
  expect(band.data.mostMm).toBe(Math.max(...gaps.filter((q) => !across.includes(q)).map((q) => q.gapMm)));
});
