/** Rays that a look doesn't follow, because those around them went the same way, against all rays followed one by one. */
import { describe, expect, it } from "vitest";
import { rayBodyOf } from "../../../src/core/measure/look-measures.ts";
import {
  BACK,
  emptyEnds,
  INSIDE,
  leaningViewer,
  StraightRays,
  THROUGH,
} from "../../../src/core/measure/straight-rays.ts";
import type { InsideDesign } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { planOf } from "../../plans/generator.ts";

const PLANS = 200;
/** A ball of a size and at a place of its own for two plans of three, none for the third. */
function insideOf(seed: number, radiusMm: number): readonly InsideDesign[] {
  if (seed % 3 === 0) return [];
  const at = (k: number) => 0.15 * radiusMm * Math.sin(k * seed);
  const diameterMm = radiusMm * (0.2 + 0.1 * (seed % 7));
  return [{ kind: "core", diameterMm, atMm: [at(1), at(2), at(3)], rgb: [1, 0, 0] }];
}

describe("rays that are not followed", () => {
  it("end as they would have, for 200 made plans", () => {
    const [together, singly] = [emptyEnds(), emptyEnds()];
    const told = { left: 0, inside: 0 };
    for (let seed = 700; seed < 700 + PLANS; seed++) {
      const plan = planOf(seed);
      const inside = insideOf(seed, plan.piece.diameterMm / 2);
      const rays = new StraightRays(rayBodyOf(solvePlan({ ...plan, piece: { ...plan.piece, inside } })));
      const viewer = leaningViewer(((seed * 7) % 41) - 20);
      rays.look(viewer, together);
      rays.look(viewer, singly, false, true);
      const away = singly.fates.findIndex(
        (fate, k) =>
          together.fates[k] !== fate ||
          ((fate === BACK || fate === THROUGH) &&
            [0, 1, 2].some((c) => together.ends[3 * k + c] !== singly.ends[3 * k + c])),
      );
      expect(`${seed}: ${away} ${together.counts}`).toBe(`${seed}: -1 ${singly.counts}`);
      told.left += singly.counts[BACK] + singly.counts[THROUGH];
      told.inside += singly.counts[INSIDE];
    }
    expect(told.left).toBeGreaterThan(500_000);
    expect(told.inside).toBeGreaterThan(50_000);
  });

  it("are two of three for a guess, and the third on diagonals end as they do among all, for 40 made plans", () => {
    const [few, all] = [emptyEnds(), emptyEnds()];
    for (let seed = 700; seed < 740; seed++) {
      const plan = planOf(seed);
      const inside = insideOf(seed, plan.piece.diameterMm / 2);
      const rays = new StraightRays(rayBodyOf(solvePlan({ ...plan, piece: { ...plan.piece, inside } })));
      const viewer = leaningViewer(((seed * 7) % 41) - 20);
      rays.look(viewer, few, false, false, 3);
      rays.look(viewer, all);
      const isAsked = (k: number) => ((k % few.grid) + Math.floor(k / few.grid)) % 3 === 2;
      const asked = Array.from(all.fates, (fate, k) => (isAsked(k) ? fate : 0));
      expect([...few.fates]).toEqual(asked);
      for (const fate of [BACK, THROUGH, INSIDE])
        expect(few.counts[fate]).toBe(asked.filter((own) => own === fate).length);
    }
  });
});
