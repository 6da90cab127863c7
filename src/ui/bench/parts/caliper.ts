/** What calipers read on a finished tier and what their far jaw rests on; where the dop is in the way, what to go by instead. */

import { caliperFigures, type Opposite } from "../../../core/bench/as-cut/caliper.ts";
import type { BenchTier } from "../../../core/bench/bench.ts";
import type { Plan } from "../../../core/plan/document.ts";
import type { Formats } from "../../../words/formats.ts";
import type { Language } from "../../../words/language.ts";
import type { benchWords } from "../../messages/bench.ts";
import { tierNameOf } from "./names.ts";

type Words = (typeof benchWords)[Language];

export function oppositeSaid(opposite: Opposite, plan: Plan, words: Words): string {
  if (opposite.kind === "skin") return words.caliper.skin;
  return words.caliper[opposite.kind](tierNameOf(plan, opposite.tier, words));
}

/** "Finished, calipers read 29.5 mm from the flat to the edge of Tier 3." */
export function finishedSaid(tier: BenchTier, plan: Plan, words: Words, { length }: Formats): string {
  const { caliper, stages, stageCount } = tier;
  const figures = caliperFigures(caliper);
  if (!caliper || figures === null) return words.caliper.nothing;
  if (caliper.isBlocked) return words.caliper.underDop(length(stages[stageCount - 1]?.widthMm ?? 0));
  const said =
    typeof figures === "number"
      ? length(figures)
      : words.caliper.fromTo(length(figures[0]), length(figures[1]));
  return words.caliper.reads(said, oppositeSaid(caliper.opposite, plan, words));
}
