/** A mend as the one command that carries it out. */
import type { Mend, MendStep } from "../../../core/check/mends.ts";
import type { Command } from "../../../state/commands.ts";

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

export const mendCommand = ({ code, steps }: Mend): Command => ({
  type: "apply-mend",
  code,
  commands: steps.map(commandOf),
});
