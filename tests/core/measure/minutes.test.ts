import { describe, expect, it } from "vitest";
import { benchOf } from "../../../src/core/bench/bench.ts";
import { repeatsOf } from "../../../src/core/bench/stages/ring-volume.ts";
import { minutesOf } from "../../../src/core/measure/minutes.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { planOf } from "../../plans/generator.ts";

describe("the minutes of the work, from sums of passes", () => {
  it("are those of the bench's faster order, whatever the plan", () => {
    let even = 0;
    for (let seed = 1000; seed < 1060; seed++) {
      const plan = planOf(seed);
      const solved = solvePlan(plan);
      if (solved.facets.length > 60) continue;
      if (repeatsOf(solved) !== null) even++;
      const bench = Math.min(...benchOf(solved).order.map(({ minutes }) => minutes));
      const found = minutesOf(solved);
      expect(Math.abs((found ?? 0) - bench), `plan ${seed}: ${found} against ${bench}`).toBeLessThan(
        1e-6 * bench,
      );
    }
    expect(even).toBeGreaterThan(10);
  });
});
