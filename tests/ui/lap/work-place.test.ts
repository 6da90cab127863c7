import { describe, expect, it } from "vitest";
import { benchOf } from "../../../src/core/bench/bench.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { FIRST_EXAMPLE } from "../../../src/ui/examples.ts";
import { lapSteps, nextStep, passesIn, tierAt, timeInWords } from "../../../src/ui/lap/lap-steps.ts";
import { doneOf } from "../../../src/ui/lap/use-progress.ts";
import { stepOfWork, workAt } from "../../../src/ui/lap/work-place.ts";

const bench = benchOf(solvePlan(FIRST_EXAMPLE));
const ways = bench.order.map(({ steps }) => lapSteps(steps));

describe("where the work stands", () => {
  it("leads back to the very facet, and never past a step that may not have been done", () => {
    for (const steps of ways)
      for (let at = 0; at <= steps.length; at++) {
        const work = workAt(steps, at);
        const back = work ? stepOfWork(steps, work) : 0;
        expect(back).not.toBeNull();
        expect(back).toBeLessThanOrEqual(at);
        if (steps[at]?.step.kind === "grind") expect(back).toBe(at);
        // What is told once more is no facet.
        for (const { step } of steps.slice(back ?? 0, at)) expect(step.kind).not.toBe("grind");
      }
  });

  it("names tier, stage and facet as the plan does", () => {
    const [steps] = ways;
    const at = steps.findIndex(({ step }) => step.kind === "grind");
    const { id } = FIRST_EXAMPLE.tiers[0];
    expect(workAt(steps, at)).toMatchObject({ tier: id, facet: `${id}/1` });
    expect(workAt(steps, 0)).toBeUndefined();
    expect(workAt(steps, steps.length)?.done).toBe(true);
    expect(
      stepOfWork(steps, workAt(steps, steps.length) ?? { tier: "", stage: "", facet: "" }),
    ).toBeGreaterThan(steps.length - 3);
  });

  it("is this browser's own step where both agree, and the plan's where it came from elsewhere", () => {
    const [steps] = ways;
    const keys = (at: number) => steps.slice(0, at).map(({ key }) => key);
    for (const at of [1, 3, 20, steps.length - 1, steps.length])
      expect(doneOf(steps, keys(at), workAt(steps, at))).toEqual(keys(at));
    expect(nextStep(steps, doneOf(steps, [], workAt(steps, 20)))).toBe(
      stepOfWork(steps, workAt(steps, 20) as never),
    );
    expect(nextStep(steps, doneOf(steps, keys(40), workAt(steps, 10)))).toBe(10);
  });

  it("begins the tier anew where its stage is gone", () => {
    const [steps] = ways;
    const { id } = FIRST_EXAMPLE.tiers[1];
    const at = stepOfWork(steps, { tier: id, stage: "sold", facet: `${id}/5` });
    expect(steps[at ?? -1].step).toMatchObject({ kind: "grind", tier: id, facet: `${id}/1` });
    expect(stepOfWork(steps, { tier: "gone", stage: "sold", facet: "gone/1" })).toBeNull();
  });
});

describe("the work as passes", () => {
  it("holds every facet of every stage once, each with the setting before it", () => {
    for (const steps of ways) {
      const passes = passesIn(steps);
      const facets = passes.flatMap((pass) => pass.facets.map(({ at }) => at));
      expect(facets).toEqual(steps.flatMap(({ step }, i) => (step.kind === "grind" ? [i] : [])));
      for (const { from, facets: own, measureAt } of passes) {
        for (const { step } of steps.slice(from, own[0].at)) expect(step.kind).not.toBe("grind");
        if (measureAt !== null) expect(steps[measureAt].step.kind).toBe("measure-as-cut");
      }
      expect(passes.filter(({ measureAt }) => measureAt !== null)).toHaveLength(FIRST_EXAMPLE.tiers.length);
    }
  });

  it("is told by tier and hours", () => {
    const [steps] = ways;
    expect(tierAt(steps, 0)).toBe(FIRST_EXAMPLE.tiers[0].id);
    expect(tierAt(steps, steps.length)).toBeNull();
    const words = {
      hoursMinutes: (h: string, min: string) => (min ? `${h} h ${min} min` : `${h} h`),
      minutes: (min: string) => `${min} min`,
    };
    const say = (minutes: number) => timeInWords(minutes, "en", words);
    expect([1, 48, 118, 200, 1033].map(say)).toEqual(["5 min", "50 min", "2 h", "3 h 15 min", "17 h"]);
  });
});
