/** Undo names the deed that it takes back. */
import { describe, expect, it } from "vitest";
import type { Command } from "../../../src/state/commands.ts";
import { labelOf } from "../../../src/state/labels.ts";
import { labelInWords } from "../../../src/ui/messages/history.ts";
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
    expect(labelInWords(label, en)).toBe(inEnglish);
    expect(labelInWords(label, de)).toBe(inGerman);
  });
});
