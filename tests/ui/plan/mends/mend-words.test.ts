import { describe, expect, it } from "vitest";
import { type Mend, mendsOf } from "../../../../src/core/check/mends.ts";
import type { Plan } from "../../../../src/core/plan/document.ts";
import { depthOf, report } from "../../../../src/state/derived.ts";
import { createPlanStore } from "../../../../src/state/store.ts";
import { mendCommand } from "../../../../src/ui/plan/mends/mend-commands.ts";
import { plainSay } from "../../../../src/words/answers.ts";
import { mendInWords } from "../../../../src/words/mends.ts";

const PLAN: Plan = {
  format: "glintwright-plan",
  version: 1,
  name: "mend",
  piece: { diameterMm: 30, glass: "borosilicate", inside: [{ kind: "bubble", diameterMm: 20 }] },
  rig: { wheelStops: 96 },
  tiers: [
    {
      id: "a",
      name: "Waist",
      side: "front",
      armAngleDeg: 30,
      count: 6,
      startDeg: 0,
      depth: { rule: "depth", mm: 6 },
    },
  ],
};
const finding = report(PLAN).findings.find((f) => f.code === "inside-broken");
if (!finding) throw new Error("the facets break into the bubble");
const [mend] = [...mendsOf(PLAN, finding)].filter((m): m is Mend => m !== null);

describe("a mend", () => {
  it("says what it changes and what comes of it, in both languages", () => {
    expect(mendInWords(mend, PLAN, plainSay(PLAN, "en"))).toBe(
      "Cut Waist less deep, to 4.00\u00a0mm: the design inside stays whole",
    );
    expect(mendInWords(mend, PLAN, plainSay(PLAN, "de"))).toBe(
      "Waist weniger tief schleifen, auf 4,00\u00a0mm: das Motiv innen bleibt ganz",
    );
  });

  it("is done as one step, does what was verified, and is undone as one step", () => {
    const store = createPlanStore({ plan: PLAN, depthOf });
    store.getState().dispatch(mendCommand(mend));
    expect(report(store.getState().plan).findings.map((f) => f.code)).not.toContain("inside-broken");
    expect(store.getState().history.undo).toHaveLength(1);
    store.getState().undo();
    expect(store.getState().plan).toEqual(PLAN);
  });
});
