import { describe, expect, it } from "vitest";
import type { Step } from "../../../src/core/bench/order/order.ts";
import { lapSteps, nextStep } from "../../../src/ui/lap/lap-steps.ts";

const grind = (tier: string, k: number, stage: string, widthMm = 5): Step => ({
  kind: "grind",
  tier,
  stage,
  facet: `${tier}/${k}`,
  wheelStop: k,
  widthMm,
  removeMm3: 1,
  strokes: null,
  minutes: 1,
});
const disc = (stage: string): Step => ({ kind: "fit-disc", stage, minutes: 3 });

const WORK: readonly Step[] = [
  { kind: "prepare", what: [], minutes: 30 },
  disc("rough"),
  grind("a", 1, "rough"),
  grind("a", 2, "rough"),
  disc("fine"),
  grind("a", 1, "fine"),
  disc("rough"),
  grind("b", 1, "rough"),
];

describe("the steps at the lap", () => {
  it("have a key each, also when the same disc comes back", () => {
    const keys = lapSteps(WORK).map((step) => step.key);
    expect(new Set(keys).size).toBe(WORK.length);
  });

  it("keep their keys when widths and strokes are solved again", () => {
    const again = WORK.map((step) => (step.kind === "grind" ? { ...step, widthMm: 7, strokes: 12 } : step));
    expect(lapSteps(again).map((step) => step.key)).toEqual(lapSteps(WORK).map((step) => step.key));
  });

  it("count facets within their own tier and stage", () => {
    const passes = lapSteps(WORK).flatMap((step) => (step.pass ? [step.pass] : []));
    expect(passes).toEqual([
      { place: 1, count: 2 },
      { place: 2, count: 2 },
      { place: 1, count: 1 },
      { place: 1, count: 1 },
    ]);
  });

  it("go on at the first one that isn't done, whatever was done after it", () => {
    const steps = lapSteps(WORK);
    expect(nextStep(steps, [])).toBe(0);
    expect(nextStep(steps, [steps[0].key, steps[1].key, steps[4].key])).toBe(2);
    expect(
      nextStep(
        steps,
        steps.map((step) => step.key),
      ),
    ).toBe(steps.length);
  });
});
