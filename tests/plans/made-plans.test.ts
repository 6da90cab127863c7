import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { reportPlan } from "../../src/core/check/report.ts";
import { cutBall } from "../../src/core/geometry/solid.ts";
import { pieceMesh } from "../../src/core/models/piece-mesh.ts";
import type { Plan } from "../../src/core/plan/document.ts";
import { parsePlan } from "../../src/core/plan/file.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import { loadManifold } from "../core/geometry/mesh-support.ts";
import { bruteForce } from "./brute-force.ts";
import { planOf } from "./generator.ts";
import { judge } from "./judge.ts";

describe("plans as people make them", () => {
  it("gives models that manifold-3d takes for sound bodies of the piece's volume", async () => {
    const { Manifold, Mesh } = await loadManifold();
    for (let seed = 0; seed < 60; seed++) {
      const made = solvePlan(planOf(seed));
      // on a small piece the same corners and borders come with far fewer chords
      const solved = { ...made, radiusMm: Math.min(made.radiusMm, 10) };
      const exact = cutBall(solved.planes);
      if (exact.vanished) continue;
      const { positions, triangles } = pieceMesh(solved, 1);
      const body = new Manifold(new Mesh({ numProp: 3, vertProperties: positions, triVerts: triangles }));
      expect(`${seed} ${body.status()} ${body.genus()}`).toBe(`${seed} NoError 0`);
      const volumeMm3 = exact.volume * solved.radiusMm ** 3;
      // the mesh stands at most 0.008 mm off the skin
      const off = 0.008 * exact.skinArea * solved.radiusMm ** 2 + 1e-5 * volumeMm3;
      expect(Math.abs(body.volume() - volumeMm3)).toBeLessThan(off);
      body.delete();
    }
  });
});

const fixture = (name: string): Plan =>
  parsePlan(readFileSync(`tests/fixtures/plans/met/${name}.json`, "utf8")).plan;
const ballOf = (plan: Plan): number => (Math.PI * plan.piece.diameterMm ** 3) / 6;

describe("plans that were once reckoned wrong", () => {
  it.each(["touch-on-wide-belt", "pair-on-wide-belt"])("%s leaves less than the ball", (name) => {
    const plan = fixture(name);
    const { volumeMm3 } = reportPlan(plan).totals;
    expect(volumeMm3).toBeGreaterThan(0);
    expect(volumeMm3).toBeLessThan(ballOf(plan));
    expect(judge(plan, true)).toEqual({ refused: false, faults: [] });
  });

  it("tells the edges between front and back where the ring between them is ground away", () => {
    const plan = fixture("ring-ground-away");
    const report = reportPlan(plan);
    const across = report.pairs.filter((p) => p.a.startsWith("front/") && p.b.startsWith("back/"));
    const edges = across.filter((p) => p.state === "edge");
    expect(edges).toHaveLength(8);
    const R = plan.piece.diameterMm / 2;
    const solved = solvePlan(plan);
    const found = bruteForce(solved.planes).edges.filter(({ a, b }) => a >= 8 && b >= 16 && a < 16);
    expect(found).toHaveLength(8);
    for (const { length } of found) expect(edges[0].edgeMm).toBeCloseTo(length * R, 6);
    expect(
      report.facets.flatMap((f) => f.outline.map((o) => o.with)).some((id) => id?.startsWith("belt/")),
    ).toBe(false);
  });

  it("leaves nothing where a back flat is the far side of a front one", () => {
    // found by the generator: the slab between them has no thickness, and a cap was left instead
    const pole = (id: string, side: "front" | "back", mm: number): Plan["tiers"][number] => ({
      id,
      name: id,
      side,
      armAngleDeg: 90,
      count: 1,
      startDeg: 0,
      depth: { rule: "depth", mm },
    });
    const plan: Plan = {
      format: "glintwright-plan",
      version: 1,
      name: "slab",
      piece: { diameterMm: 15, glass: "soda-lime" },
      rig: { wheelStops: null },
      tiers: [pole("a", "front", 3), pole("b", "back", 12)],
    };
    expect(reportPlan(plan).totals.volumeMm3).toBe(0);
  });

  it("keeps to the first depth where the same ring closes to another twice", () => {
    const { tiers } = solvePlan(fixture("closed-twice"));
    expect(tiers[3].depthMm).toBeCloseTo(tiers[2].depthMm, 9);
  });

  it("gives facets that are mere slivers beside long arcs a sound model, of whatever size", () => {
    // chords of one size let the middle of a sliver's arc pass for a place on the long arc that begins beside it
    const solved = solvePlan(fixture("pair-on-wide-belt"));
    for (const radiusMm of [2, 10, 20, 40])
      expect(pieceMesh({ ...solved, radiusMm }, 1).triangles.length).toBeGreaterThan(0);
  });

  it("gives six facets that close to six a sound model", () => {
    expect(judge(fixture("six-to-six"), true)).toEqual({ refused: false, faults: [] });
  });
});
