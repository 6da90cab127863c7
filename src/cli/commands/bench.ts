/** `bench PLAN.json`: what the lap needs, as one JSON object. */

import { foundAgain } from "../../core/bench/as-cut/found-again.ts";
import { benchData, benchOf } from "../../core/bench/bench.ts";
import type { Finding } from "../../core/bench/bench-finding.ts";
import { habitsOf } from "../../core/bench/order/order.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { plainSay, reachText, withTexts } from "../../words/answers.ts";
import type { Language } from "../../words/language.ts";
import type { Say } from "../../words/say.ts";
import type { Options } from "../options.ts";
import { printJson } from "../print.ts";
import { readPlan } from "../read-plan.ts";

/** The usual abrasives have their names from the room of words. */
const withStageName = (finding: Finding, say: Say): Finding =>
  finding.code === "start-at-stage"
    ? { ...finding, data: { ...finding.data, stageName: say.stage(finding.data.stage) } }
    : finding;

export async function run([planPath]: readonly string[], _: Options, language: Language): Promise<void> {
  const { plan } = await readPlan(planPath);
  const solved = solvePlan(plan);
  // As files number them: whoever reads the answer by a program counts facets as the plan does.
  const bench = benchOf(solved, habitsOf(plan.rig), "plan");
  const { tiers, order, findings } = benchData(bench, foundAgain(solved));
  const say = plainSay(plan, language);
  await printJson({
    tiers: tiers.map((tier) => ({ ...tier, reasons: tier.reasons.map((reason) => reachText(reason, say)) })),
    order,
    findings: withTexts(
      findings.map((finding) => withStageName(finding, say)),
      say,
    ),
  });
}
