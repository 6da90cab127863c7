/** The bench's own fields in a plan file: taken, kept, and refused with their path where they make no sense. */
import { describe, expect, it } from "vitest";
import type { Plan } from "../../../src/core/plan/document.ts";
import { PlanFileError, parsePlan } from "../../../src/core/plan/file.ts";
import { fileFaultInWords } from "../../../src/words/file-faults.ts";
import { plan, tier } from "./plans.ts";

const TABLE = {
  id: "s1",
  name: "Coarse",
  grainUm: 75,
  leaves: "ground",
  bond: "bonded",
  discStrokes: 900,
  calibration: [{ strokes: 30, widthMm: 5, discStrokes: 800 }],
} as const;
const own: Plan = plan([tier({ finish: "ground", asCut: { caliperMm: 29.2 } })], {
  indexTrimDeg: 0.8,
  stages: [TABLE],
  habits: { discMin: 2.5, strokeSeconds: 0.8 },
  spread: { againDeg: 0.3 },
});

/** The plan with one value put elsewhere in its rig. */
const withRig = (change: object): string => JSON.stringify({ ...own, rig: { ...own.rig, ...change } });

/** What a person is told of a text that is refused. */
function refusalOf(text: string): string {
  try {
    parsePlan(text);
  } catch (error) {
    if (error instanceof PlanFileError) return fileFaultInWords(error.fault, "en");
    throw error;
  }
  return "taken";
}

describe("plan fields of the bench", () => {
  it("are read as they were written, none of them unknown", () => {
    const { plan: read, unknown } = parsePlan(JSON.stringify(own));
    expect(read).toEqual(own);
    expect(unknown).toEqual([]);
  });

  it("are refused with their path where they make no sense", () => {
    const refused: readonly (readonly [object, RegExp])[] = [
      [
        { stages: [{ ...TABLE, leaves: "shiny" }] },
        /rig\.stages\[0\]\.leaves.*ground, prepolished, polished/,
      ],
      [{ stages: [{ ...TABLE, bond: "glued" }] }, /rig\.stages\[0\]\.bond.*loose, bonded, pad/],
      [{ indexTrimDeg: -0.1 }, /rig\.indexTrimDeg.*0 to 180/],
      [{ stages: [{ ...TABLE, discStrokes: -1 }] }, /rig\.stages\[0\]\.discStrokes/],
      [{ habits: { discMin: -3 } }, /rig\.habits\.discMin.*0 to 600/],
      [{ habits: { strokeSeconds: 0 } }, /rig\.habits\.strokeSeconds.*more than 0/],
      [{ spread: { againDeg: "little" } }, /rig\.spread\.againDeg/],
    ];
    for (const [change, message] of refused) expect(refusalOf(withRig(change))).toMatch(message);
  });
});
