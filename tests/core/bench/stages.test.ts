/** Stage depths, widths and volumes: worked by hand for free circles, and against whole solids where neighbours matter. */
import { describe, expect, it } from "vitest";
import { seeded } from "../../../src/core/bench/chances/chance.ts";
import { depthsAfter, finalMoves, passesOf, walk } from "../../../src/core/bench/order/diary.ts";
import { DEFAULT_STAGES, stagesOf } from "../../../src/core/bench/stages/default-stages.ts";
import { planesAt } from "../../../src/core/bench/stages/half-cut.ts";
import { removedVolume } from "../../../src/core/bench/stages/removed-volume.ts";
import {
  facetStages,
  stageCount,
  stageDepths,
  startFindings,
  tierStages,
} from "../../../src/core/bench/stages/stages.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { stagesIn } from "../../../src/words/stages.ts";
import { foundIn } from "../../fixtures/found.ts";
import { plan, tier } from "./plans.ts";

const STAGES = [
  { id: "s1", name: "75", grainUm: 75 },
  { id: "s2", name: "30", grainUm: 30 },
  { id: "s3", name: "10", grainUm: 10 },
];
const circleWidth = (depth: number) => 2 * Math.sqrt(2 * 15 * depth - depth * depth);

/** A belt whose facets overlap, and an upper tier over it. */
const solved = solvePlan(
  plan([
    tier({ depth: { rule: "edge", mm: 3 } }),
    tier({ id: "upper", armAngleDeg: 45, startDeg: 15, depth: { rule: "close", to: "belt" } }),
  ]),
);

describe("stages", () => {
  it("leaves each stage the damage still to come, 2.5 grains a stage", () => {
    // 0.6 - 2.5 (0.075 + 0.030) = 0.3375; 0.6 - 2.5 x 0.030 = 0.525; 0.6.
    const depths = stageDepths(0.6, STAGES);
    for (const [i, mm] of [0.3375, 0.525, 0.6].entries()) expect(depths[i]).toBeCloseTo(mm, 12);
  });

  it("takes a stated damage depth instead of the rule of thumb", () => {
    expect(stageDepths(0.6, [{ ...STAGES[0], damageUm: 100 }, STAGES[2]])[0]).toBeCloseTo(0.5, 12);
  });

  it("gives widths of free circles as worked by hand", () => {
    const alone = solvePlan(plan([tier({ count: 4, depth: { rule: "depth", mm: 0.6 } })]));
    const [s1, s2, s3] = tierStages(alone, 0, STAGES);
    // 2 sqrt(2 x 15 x 0.3375 - 0.3375^2) = 2 sqrt(10.0111) = 6.3281 mm.
    expect(s1.widthMm).toBeCloseTo(6.3281, 4);
    expect(s2.widthMm).toBeCloseTo(circleWidth(0.525), 9);
    expect(s3.widthMm).toBeCloseTo(circleWidth(0.6), 9);
    // Neighbours at 20 degrees, 90 apart: delta = acos(sin^2 20) = 83.284 deg; rho = acos(14.4 / 15) = 16.260 deg.
    // Gap 15 mm x (83.284 - 2 x 16.260) deg = 13.29 mm.
    expect(s3.gapMm).toBeCloseTo(13.29, 2);
  });

  it("reports a stage that would leave nothing as 0 and names the stage to start with", () => {
    const shallow = solvePlan(plan([tier({ depth: { rule: "depth", mm: 0.2 } })]));
    const [s1] = tierStages(shallow, 0, STAGES);
    expect([s1.depthMm, s1.widthMm]).toEqual([0, 0]);
    const [finding] = foundIn(startFindings("belt", 0.2, STAGES), "start-at-stage");
    expect(finding.data.stage).toBe("s2");
    expect(finding.data.stageName).toBe("30");
    expect(startFindings("belt", 0.6, STAGES)).toEqual([]);
    expect(startFindings("belt", 0, STAGES)[0].code).toBe("nothing-to-grind");
  });

  it("agrees with the whole solid cut as the stage leaves it", () => {
    tierStages(solved, 1, STAGES).forEach((stage) => {
      const depths = solved.facets.map((f) => (f.tierIndex === 0 ? solved.tiers[0].depthMm : stage.depthMm));
      const solid = cutBall(planesAt(solved, depths));
      expect(stage.widthMm).toBeCloseTo(solid.facets[12].width * 15, 9);
      expect(stage.heightMm).toBeCloseTo(solid.facets[12].height * 15, 9);
    });
  });

  it("makes a facet no narrower while it is ground than when its tier is done", () => {
    for (const tierIndex of [0, 1]) {
      const after = tierStages(solved, tierIndex, STAGES);
      for (const facet of facetStages(solved, tierIndex, STAGES))
        facet.forEach((s, i) => {
          expect(s.widthWhileGroundMm).toBeGreaterThanOrEqual(after[i].widthMm - 1e-9);
        });
    }
  });

  it("grinds the first facet without neighbours and the last with two", () => {
    const work = facetStages(solved, 0, STAGES);
    const depths = stageDepths(solved.tiers[0].depthMm, STAGES);
    const after = tierStages(solved, 0, STAGES);
    expect(work[0][0].widthWhileGroundMm).toBeCloseTo(circleWidth(depths[0]), 9);
    expect(work[11][2].widthWhileGroundMm).toBeCloseTo(after[2].widthMm, 9);
    // The second facet has one neighbour at its side, the others still stand at the stage before.
    const state = solved.facets.map((_, k) => (k < 2 ? depths[2] : k < 12 ? depths[1] : 0));
    const cut = cutBall(planesAt(solved, state).slice(0, 12));
    expect(work[1][2].widthWhileGroundMm).toBeCloseTo(cut.facets[1].width * 15, 9);
  });

  it("takes in all passes together what the finished piece lacks", () => {
    const total = [0, 1].reduce(
      (sum, t) =>
        sum +
        facetStages(solved, t, STAGES)
          .flat()
          .reduce((s, stage) => s + stage.removeMm3, 0),
      0,
    );
    const removed = ((4 * Math.PI) / 3 - cutBall(solved.planes).volume) * 15 ** 3;
    expect(total).toBeCloseTo(removed, 6);
  });
});

describe("finish", () => {
  const FIVE = [90, 45, 15, 6, 1.5].map((grainUm, i) => ({ id: `f${i}`, name: `${grainUm}`, grainUm }));

  it("goes through all stages to a polish, and ends earlier for a face that stays ground", () => {
    expect(stageCount({}, FIVE)).toBe(5);
    expect(stageCount({ finish: "polished" }, FIVE)).toBe(5);
    expect(stageCount({ finish: "prepolished" }, FIVE)).toBe(4);
    expect(stageCount({ finish: "ground" }, FIVE)).toBe(3);
  });

  it("takes a stage's own word for the face that it leaves", () => {
    const own = FIVE.map((stage, i) => (i === 1 ? { ...stage, leaves: "prepolished" as const } : stage));
    expect(stageCount({ finish: "prepolished" }, own)).toBe(4);
    expect(stageCount({ finish: "ground" }, own)).toBe(3);
    const noGround = [{ ...FIVE[0], leaves: "polished" as const }];
    expect(stageCount({ finish: "ground" }, noGround)).toBe(1);
    expect(stageCount({ finish: "ground" }, [])).toBe(0);
  });

  it("comes to its final depth with its own last stage, and later stages take nothing", () => {
    // 1 - 2.5 (0.090 + 0.045) = 0.6625; 1 - 2.5 x 0.045 = 0.8875; then 1.
    const depths = stageDepths(1, FIVE, 3);
    for (const [i, mm] of [0.6625, 0.8875, 1, 1, 1].entries()) expect(depths[i]).toBeCloseTo(mm, 12);
    const ground = solvePlan(plan([tier({ depth: { rule: "depth", mm: 1 }, finish: "ground" })]));
    for (const facet of facetStages(ground, 0, FIVE)) {
      expect(facet[2].removeMm3).toBeGreaterThan(0);
      expect(facet.slice(3).map((s) => s.removeMm3)).toEqual([0, 0]);
    }
    expect(tierStages(ground, 0, FIVE)[2].widthMm).toBeCloseTo(tierStages(ground, 0, FIVE)[4].widthMm, 12);
  });
});

describe("removed volume", () => {
  it("is the difference of two whole solids, for any planes and any depth", () => {
    const random = seeded(11);
    for (let trial = 0; trial < 400; trial++) {
      const planes = Array.from({ length: 1 + Math.floor(random() * 12) }, () => {
        const [z, t] = [2 * random() - 1, 2 * Math.PI * random()];
        const r = Math.sqrt(1 - z * z);
        const h = random() < 0.2 ? 1.6 * random() - 0.6 : 0.7 + 0.3 * random();
        return { n: [r * Math.cos(t), r * Math.sin(t), z] as const, h };
      });
      const own = Math.floor(random() * planes.length);
      const { n, h } = planes[own];
      const before = random() < 0.4 ? null : { n, h: h + random() * (1 - h) };
      const earlier = before ? planes.with(own, before) : planes.filter((_, j) => j !== own);
      const asSolids = cutBall(earlier).volume - cutBall(planes).volume;
      expect(removedVolume(planes, own, before)).toBeCloseTo(asSolids, 11);
    }
  });

  it("is the cap worked by hand when nothing else is cut, and all that is left when the plane passes the ball", () => {
    // pi d^2 (3 - d) / 3 with d = 0.4: 0.43563.
    const cap = { n: [0, 0, 1], h: 0.6 } as const;
    expect(removedVolume([cap], 0, null)).toBeCloseTo((Math.PI * 0.16 * 2.6) / 3, 12);
    const all = { n: [0, 0, 1], h: -1 } as const;
    expect(removedVolume([all], 0, null)).toBeCloseTo((4 * Math.PI) / 3, 12);
  });
});

describe("diary", () => {
  it("tells the width at every moment, wider before neighbours come", () => {
    const moments = walk(solved, finalMoves(solved));
    expect(moments).toHaveLength(24);
    expect(moments[0].widthMm).toBeCloseTo(circleWidth(solved.tiers[0].depthMm), 9);
    const end = cutBall(planesAt(solved, depthsAfter(solved, finalMoves(solved), 24)));
    expect(moments[23].widthMm).toBeCloseTo(end.facets[23].width * 15, 9);
    expect(moments[0].facet).toBe("belt/1");
  });

  it("orders passes by tier or by stage", () => {
    const label = (way: "finish-each" | "rough-all") =>
      passesOf(solved, STAGES, way).map((p) => `${p.tierIndex}${STAGES[p.stage].id}`);
    expect(label("finish-each")).toEqual(["0s1", "0s2", "0s3", "1s1", "1s2", "1s3"]);
    expect(label("rough-all")).toEqual(["0s1", "1s1", "0s2", "1s2", "0s3", "1s3"]);
  });

  it("takes the same glass in both orders", () => {
    const sum = (way: "finish-each" | "rough-all") =>
      walk(
        solved,
        passesOf(solved, STAGES, way).flatMap((p) => p.moves),
      ).reduce((s, m) => s + m.removeMm3, 0);
    expect(sum("rough-all")).toBeCloseTo(sum("finish-each"), 6);
  });
});

describe("usual stages", () => {
  it("are called in German what a German calls them, and stay the same stages", () => {
    const german = stagesIn({ wheelStops: 96 }, "de");
    expect(german.map(({ name: _, ...rest }) => rest)).toEqual(
      DEFAULT_STAGES.map(({ name: _, ...rest }) => rest),
    );
    const english = stagesIn({ wheelStops: 96 }, "en");
    german.forEach((stage, i) => {
      expect(stage.name).not.toBe(english[i].name);
      expect(stage.name).not.toBe(stage.id);
    });
    expect(stagesOf({ wheelStops: 96 })).toBe(DEFAULT_STAGES);
  });
});
