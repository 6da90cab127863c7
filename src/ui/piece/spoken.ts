/** The piece in words, for someone who doesn't see it: the pattern tier by tier, then what stands against it. */
import type { Report } from "../../core/check/report.ts";
import type { Plan } from "../../core/plan/document.ts";
import type { plan as en } from "../../words/en/plan.ts";
import type { Formats } from "../../words/formats.ts";
import type { Translated } from "../../words/language.ts";
import { tierTruth } from "../plan/recipe/tier-truth.ts";
import { truthInWords } from "../plan/recipe/truth-words.ts";

type PlanWords = Translated<typeof en>;

export function spokenSummary(
  plan: Plan,
  report: Report,
  glass: string,
  words: PlanWords,
  format: Formats,
  findingLine: (finding: Report["findings"][number]) => string,
): string {
  const { spoken } = words;
  const tiers = plan.tiers.map((tier, i) =>
    spoken.tier(
      i + 1,
      words.facetCount(tier.count),
      words.sides[tier.side],
      format.armAngle(tier.armAngleDeg),
      truthInWords(
        tierTruth(report, tier.id),
        words.truth,
        format,
        report.findings.some((f) => f.code === "lost" && f.tier === tier.id),
      ),
    ),
  );
  const against = report.findings.filter((finding) => finding.severity !== "info");
  return [
    spoken.piece(format.length(plan.piece.diameterMm), glass),
    ...(tiers.length === 0 ? [spoken.uncut] : tiers),
    ...(against.length === 0
      ? [spoken.good]
      : [spoken.findings(against.length), ...against.map(findingLine)]),
  ].join(" ");
}
