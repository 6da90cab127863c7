/** `offer PLAN.json`: what the piece costs, as a table to read or with `--json` as one JSON object. */
import { offerOf } from "../../core/offer/offer.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { offerWordsDe } from "../../words/de/offer.ts";
import { offerWordsEn } from "../../words/en/offer.ts";
import type { Language } from "../../words/language.ts";
import { guessInWords, offerText } from "../../words/offer.ts";
import { stagesIn } from "../../words/stages.ts";
import type { Options } from "../options.ts";
import { print, printJson } from "../print.ts";
import { readPlan } from "../read-plan.ts";
import { UsageError } from "../usage-error.ts";

const WORDS = { en: offerWordsEn, de: offerWordsDe } as const;

/** @throws UsageError for a plan without an offer */
export async function run(
  [planPath]: readonly string[],
  options: Options,
  language: Language,
): Promise<void> {
  const words = WORDS[language];
  const { plan } = await readPlan(planPath);
  const priced = offerOf(solvePlan(plan));
  if (!priced) throw new UsageError(({ files }) => `${planPath}: ${files.noOffer}`);
  const stages = stagesIn(plan.rig, language);
  if (options.json === true)
    await printJson({ ...priced, guesses: priced.guesses.map((g) => guessInWords(g, stages, words)) });
  else await print(`${offerText(plan, priced, words)}\n`);
}
