/** Undo names the deed that it takes back. */
import { describe, expect, it } from "vitest";
import type { Mend } from "../../../src/core/check/mends.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import type { Command } from "../../../src/state/commands.ts";
import { isLabel, labelOf } from "../../../src/state/labels.ts";
import { labelInWords } from "../../../src/ui/messages/history.ts";
import { mendCommand } from "../../../src/ui/plan/mends/mend-commands.ts";
import { plainSay } from "../../../src/words/answers.ts";
import { history as de } from "../../../src/words/de/history.ts";
import { history as en } from "../../../src/words/en/history.ts";
import { MEND_CASES } from "../../fixtures/mend-cases.ts";

const plan = MEND_CASES["rule-unmet"];
const turn = { type: "change-tier", tierId: "b", change: { armAngleDeg: 28 } } as const;
const mend = (code: string, ...commands: readonly Command[]): Command => ({
  type: "apply-mend",
  code,
  commands,
});

describe("undo", () => {
  it.each([
    ["locking one tier", mend("as-cut", turn), "Lock as cut", "Wie geschliffen festhalten"],
    [
      "following what was cut",
      mend("follow-cut", turn),
      "Follow what was cut",
      "Dem folgen, was geschliffen ist",
    ],
    ["a mend of one angle", mend("rule-unmet", turn), "angle of tier 2", "Winkel von Reihe 2"],
    [
      "a mend of two tiers",
      mend("overshoot", turn, { ...turn, tierId: "a" }),
      "changes of several tiers",
      "Änderungen an mehreren Reihen",
    ],
  ] as const)("names %s", (_, command, inEnglish, inGerman) => {
    const label = labelOf(command, plan);
    expect(labelInWords(label, en, "en")).toBe(inEnglish);
    expect(labelInWords(label, de, "de")).toBe(inGerman);
  });

  it("names a mend by what it changed, with the new value and the tier's name of then, in both languages", () => {
    const named: Plan = {
      ...plan,
      tiers: plan.tiers.map((t) => (t.id === "b" ? { ...t, name: "Crown" } : t)),
    };
    const offered: Mend = {
      code: "rule-unmet",
      change: { to: "angle", tierId: "b", fromDeg: 80, deg: 28.5 },
      steps: [{ kind: "tier", tierId: "b", change: { armAngleDeg: 28.5 } }],
      cost: { depth: null, massShare: 0, leastFacetMm: { from: 1, to: 1 }, tiers: ["b"] },
      brings: [],
      doubts: [],
    };
    const label = labelOf(mendCommand(offered, [plainSay(named, "en"), plainSay(named, "de")]), named);
    expect(labelInWords(label, en, "en")).toBe("Lower Crown to 28.5°");
    expect(labelInWords(label, de, "de")).toBe("Crown auf 28,5° flacher stellen");
    // and so it comes back from the shelf, but for words that are none
    expect(isLabel(structuredClone(label))).toBe(true);
    expect(isLabel({ ...label, said: { en: 3 } })).toBe(false);
    expect(isLabel({ ...label, said: "Lower" })).toBe(false);
  });
});
