/** A mend as the one command that carries it out. */
import type { Mend, MendStep } from "../../../core/check/mends.ts";
import type { Command } from "../../../state/commands.ts";
import { deedInWords } from "../../../words/mends.ts";
import type { Say } from "../../../words/say.ts";

function commandOf(step: MendStep): Command {
  switch (step.kind) {
    case "tier":
      return { type: "change-tier", tierId: step.tierId, change: step.change };
    case "remove-tier":
      return { type: "remove-tier", tierId: step.tierId };
    case "rig":
      return { type: "set-rig", change: step.rig };
    case "dop":
      return { type: "set-piece", change: { dop: step.dop } };
  }
}

/** @param says how its plan is spoken of, in each language: undo calls the step what it was offered as */
export const mendCommand = (mend: Mend, says: readonly Say[] = []): Command => ({
  type: "apply-mend",
  code: mend.code,
  commands: mend.steps.map(commandOf),
  ...(says.length > 0
    ? { said: Object.fromEntries(says.map((say) => [say.language, deedInWords(mend, say)])) }
    : {}),
});
