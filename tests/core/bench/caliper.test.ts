/** What calipers read, against brute force: the body as thousands of points, and the greatest of them along the jaw. */
import { describe, expect, it } from "vitest";
import { fitAsCut } from "../../../src/core/bench/as-cut/as-cut.ts";
import { farthest } from "../../../src/core/bench/as-cut/caliper.ts";
import { benchData, benchOf } from "../../../src/core/bench/bench.ts";
import type { Plane } from "../../../src/core/geometry/plane.ts";
import { dot, type Vec3 } from "../../../src/core/geometry/vec.ts";
import type { Tier } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { plan, RIG, tier } from "./plans.ts";

/** The same bits every time. */
function seeded(seed: number): () => number {
  let a = seed;
  return () => {
    a = (Math.imul(a, 1664525) + 1013904223) >>> 0;
    return a / 2 ** 32;
  };
}

/**
 * Greatest d.p over the ball cut by planes, by projection onto the convex sets in turn (Dykstra 1983) of a point far out along d:
 * shares nothing with outlines. The farther out, the nearer the projection is to the farthest point.
 */
function bruteReach(planes: readonly Plane[], d: Vec3): number {
  // Every point where up to three surfaces of (planes, sphere) meet, kept when it lies in the body.
  const isIn = (p: Vec3) => Math.hypot(...p) <= 1 + 1e-9 && planes.every(({ n, h }) => dot(n, p) <= h + 1e-9);
  let best = isIn(d) ? 1 : -2;
  const take = (p: Vec3) => {
    if (isIn(p)) best = Math.max(best, dot(p, d));
  };
  const at = (n: Vec3, s: number, m: Vec3, t: number, q: Vec3, u: number): Vec3 =>
    [0, 1, 2].map((i) => n[i] * s + m[i] * t + q[i] * u) as unknown as Vec3;
  const x = (a: Vec3, b: Vec3): Vec3 => [
    a[1] * b[2] - a[2] * b[1],
    a[2] * b[0] - a[0] * b[2],
    a[0] * b[1] - a[1] * b[0],
  ];
  planes.forEach((a, i) => {
    // On one circle: its own farthest point.
    const up = dot(a.n, d);
    const level = at(d, 1, a.n, -up, a.n, 0);
    const size = Math.hypot(...level);
    const r = Math.sqrt(Math.max(0, 1 - a.h * a.h));
    if (size > 1e-12) take(at(a.n, a.h, level, r / size, d, 0));
    else take(at(a.n, a.h, d, 0, d, 0));
    planes.slice(i + 1).forEach((b, j) => {
      const c = dot(a.n, b.n);
      if (Math.abs(c) > 1 - 1e-12) return;
      const along = x(a.n, b.n);
      const s = (a.h - b.h * c) / (1 - c * c);
      const t = (b.h - a.h * c) / (1 - c * c);
      const foot = at(a.n, s, b.n, t, d, 0);
      const rest = 1 - dot(foot, foot);
      if (rest < 0) return;
      const u = Math.sqrt(rest / dot(along, along));
      take(at(foot, 1, along, u, d, 0));
      take(at(foot, 1, along, -u, d, 0));
      for (const e of planes.slice(i + j + 2)) {
        const slope = dot(e.n, along);
        if (Math.abs(slope) > 1e-12) take(at(foot, 1, along, (e.h - dot(e.n, foot)) / slope, d, 0));
      }
    });
  });
  return best;
}

const back = (own: Partial<Tier>): Tier => tier({ side: "back", ...own });
const reading = (tiers: readonly Tier[], diameterMm = 34) => {
  const solved = solvePlan(plan(tiers, {}, diameterMm));
  const bench = benchOf(solved);
  return {
    solved,
    bench,
    data: benchData(
      bench,
      tiers.map(() => null),
    ).tiers,
  };
};

/** h + brute reach of every facet of a tier, tiers up to it cut, mm. */
function brute(solved: ReturnType<typeof solvePlan>, tierIndex: number): readonly number[] {
  const { first, count } = solved.tiers[tierIndex];
  const planes = solved.planes.slice(0, first + count);
  return planes.slice(first).map(({ n, h }) => {
    const d = n.map((x) => -x) as unknown as Vec3;
    return (h + bruteReach(planes, d)) * solved.radiusMm;
  });
}

describe("the farthest point", () => {
  it("is the brute force's on 300 neat and random bodies", () => {
    const random = seeded(7);
    for (let run = 0; run < 300; run++) {
      const neat = run % 2 === 0;
      const planes: Plane[] = Array.from({ length: 3 + (run % 9) }, (_, k) => {
        const t = neat ? (2 * Math.PI * k) / (3 + (run % 9)) : 2 * Math.PI * random();
        const a = neat ? ((run % 6) * Math.PI) / 12 : Math.asin(2 * random() - 1);
        return {
          n: [Math.cos(a) * Math.cos(t), Math.cos(a) * Math.sin(t), Math.sin(a)],
          h: neat ? 0.8 : 0.3 + 0.65 * random(),
        };
      });
      for (const { n } of planes) {
        const d = n.map((x) => -x) as unknown as Vec3;
        expect(farthest(planes, d)?.reach).toBeCloseTo(bruteReach(planes, d), 7);
      }
    }
  });
});

describe("caliperMm", () => {
  it("is flat to skin while only skin stands opposite", () => {
    const { data, solved } = reading([tier({ armAngleDeg: 30, depth: { rule: "depth", mm: 1.2 } })]);
    expect(data[0].caliperMm).toBeCloseTo(34 - 1.2, 9);
    expect(data[0].caliperTo).toEqual({ kind: "skin", underDop: false });
    expect(brute(solved, 0)[0]).toBeCloseTo(32.8, 9);
  });

  it("reads to the flat of the facet opposite in an even ring on the equator, and across an odd one to an edge", () => {
    const even = reading([tier({ armAngleDeg: 0, count: 8, depth: { rule: "depth", mm: 1 } })]);
    expect(even.data[0].caliperMm).toBeCloseTo(32, 9);
    expect(even.data[0].caliperTo).toEqual({ kind: "face", tier: "belt", underDop: false });
    const odd = reading([tier({ armAngleDeg: 0, count: 3, depth: { rule: "depth", mm: 7 } })]);
    expect(odd.data[0].caliperMm).toBeCloseTo(brute(odd.solved, 0)[0], 9);
  });

  it.each([
    ["both sides meet", [8, 12, 16], [25, 45, 70]],
    ["steep rings", [6, 9, 12], [15, 40, 60]],
  ])("is the brute force's with the other side cut: %s", (_, counts, angles) => {
    const fronts = angles.map((armAngleDeg, i) =>
      tier({ id: `f${i}`, armAngleDeg, count: counts[i], depth: { rule: "depth", mm: 1 + i / 3 } }),
    );
    const backs = angles.map((armAngleDeg, i) =>
      back({
        id: `b${i}`,
        armAngleDeg: armAngleDeg + 3,
        count: counts[i],
        startDeg: 7.5,
        depth: { rule: "depth", mm: 1.4 },
      }),
    );
    const { data, solved, bench } = reading([...fronts, ...backs]);
    let shorter = 0;
    data.forEach(({ caliperMm, caliperTo }, i) => {
      const all = brute(solved, i);
      const [least, most] = [Math.min(...all), Math.max(...all)];
      const told = [caliperMm].flat() as number[];
      expect(told[0]).toBeCloseTo(told.length === 2 ? least : (least + most) / 2, 7);
      if (told.length === 2) expect(told[1]).toBeCloseTo(most, 7);
      expect(told.length === 2).toBe(most - least > 0.01);
      const toSkin = bench.tiers[i].pose.planeMm + 17;
      if (toSkin - least > 0.01) shorter++;
      if (caliperTo?.kind === "skin") expect(most).toBeCloseTo(toSkin, 6);
    });
    expect(shorter).toBeGreaterThan(0);
  });

  it("is null where nothing of a tier is left, and blocked where the dop stands opposite", () => {
    const gone = reading([tier({ depth: { rule: "depth", mm: 0 } })]);
    expect(gone.data[0].caliperMm).toBeNull();
    const table = tier({ armAngleDeg: 90, count: 1, depth: { rule: "depth", mm: 1 } });
    const held = plan([table, tier({ id: "low", armAngleDeg: 10 })]);
    const dopped = { ...held, piece: { ...held.piece, dop: { side: "back", diameterMm: 12 } } } as const;
    const blocked = benchOf(solvePlan(dopped)).tiers.map((one) => one.caliper?.isBlocked);
    expect(blocked).toEqual([true, false]);
    expect(benchOf(solvePlan(held)).tiers.map((one) => one.caliper?.isBlocked)).toEqual([false, false]);
  });

  it("is what the way by hand stops at, where no arm reaches; the facet's width where the dop is in the way", () => {
    const tables = [
      back({ id: "foot", armAngleDeg: 90, count: 1, depth: { rule: "depth", mm: 2 } }),
      tier({ id: "table", armAngleDeg: 90, count: 1, depth: { rule: "depth", mm: 1 } }),
    ];
    const free = plan(tables, RIG, 34);
    const byHand = (own: typeof free) =>
      benchOf(solvePlan(own)).findings.find(
        ({ code, tier: id }) => code === "guide-by-hand" && id === "table",
      )?.data;
    // A flat of depth d on a ball of radius 17 is 2 sqrt(17^2 - (17 - d)^2) wide; from flat to flat it is 34 - 2 - 1, to the skin it was 33.
    const widthMm = expect.closeTo(2 * Math.sqrt(17 ** 2 - 16 ** 2), 9);
    expect(byHand(free)).toEqual({ leanDeg: 0, caliperMm: expect.closeTo(31, 9), widthMm });
    const held = { ...free, piece: { ...free.piece, dop: { side: "back", diameterMm: 12 } } } as const;
    expect(byHand(held)).toEqual({ leanDeg: 0, caliperMm: null, widthMm });
  });

  it("measured as cut, finds the depth, also where an edge stands opposite", () => {
    const front = tier({ id: "f", armAngleDeg: 30, count: 8, depth: { rule: "depth", mm: 1.5 } });
    const behind = back({
      id: "b",
      armAngleDeg: 33,
      count: 8,
      startDeg: 22.5,
      depth: { rule: "depth", mm: 1.4 },
    });
    const truth = reading([front, { ...behind, depth: { rule: "depth", mm: 1.7 } }]).data[1];
    const caliperMm = [truth.caliperMm].flat()[0] as number;
    const cut = { ...behind, asCut: { caliperMm, sdMm: 0.001, readDeg: 33, readSdDeg: 0.001 } };
    const [fit] = fitAsCut(plan([front, cut], {}, 34)).tiers;
    expect(fit.depthMm).toBeCloseTo(1.7, 3);
  });
});
