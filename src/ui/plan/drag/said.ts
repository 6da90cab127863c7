/** A pattern said in a few sentences, for those who hear it instead of seeing it. */
import type { Solid } from "../../../core/geometry/solid-types.ts";
import { toleranceOf } from "../../../core/plan/solve.ts";
import type { SolvedPlan } from "../../../core/plan/solved.ts";
import type { drawings } from "../../../words/en/drawings.ts";
import type { Formats } from "../../../words/formats.ts";
import type { Translated } from "../../../words/language.ts";
import { nameOrPlace } from "../../../words/names.ts";
import { type TierNumbers, tierNumbers } from "./tier-numbers.ts";

type Words = Translated<typeof drawings>;

function meetingSaid(n: TierNumbers, toleranceMm: number, words: Words, format: Formats): string {
  if (n.widthMm === 0) return words.meeting.gone;
  if (n.gapMm === null) return words.meeting.alone;
  if (n.edgeMm > toleranceMm) return words.meeting.edge(format.length(n.edgeMm));
  return n.gapMm <= toleranceMm ? words.meeting.touch : words.meeting.gap(format.length(n.gapMm));
}

/** One sentence a tier, in cutting order. */
export function patternSaid(solved: SolvedPlan, solid: Solid, words: Words, format: Formats): string {
  const { tiers } = solved.plan;
  if (tiers.length === 0) return words.empty;
  return tiers
    .map((tier, i) => {
      const n = tierNumbers(solved, solid, i);
      const meeting = meetingSaid(n, toleranceOf(solved.plan), words, format);
      return words.tierSaid(
        nameOrPlace(tier.name, i, words.tierNumber),
        String(tier.count),
        format.armAngle(tier.armAngleDeg),
        meeting,
      );
    })
    .join(" ");
}
