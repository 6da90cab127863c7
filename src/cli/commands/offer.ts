/** `offer PLAN.json`: what the piece costs, as a table to read or with `--json` as one JSON object. */
import { stagesOf } from "../../core/bench/bench.ts";
import { offerOf } from "../../core/offer/offer.ts";
import { guessInWords, offerText } from "../../core/offer/offer-words.ts";
import { offerWordsDe } from "../../core/offer/offer-words-de.ts";
import { offerWordsEn } from "../../core/offer/offer-words-en.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { print, printJson } from "../print.ts";
import { readPlan } from "../read-plan.ts";
import { UsageError } from "../usage-error.ts";

type Options = Readonly<Record<string, string | boolean | undefined>>;

const WORDS = { en: offerWordsEn, de: offerWordsDe } as const;

function wordsFor(lang: Options[string] = "en") {
  if (lang === "en" || lang === "de") return WORDS[lang];
  throw new UsageError(`--lang must be en or de, not "${String(lang)}"`);
}

/** @throws UsageError for a plan without an offer */
export async function run([planPath]: readonly string[], { json, lang }: Options): Promise<void> {
  const words = wordsFor(lang);
  const { plan } = await readPlan(planPath);
  const priced = offerOf(solvePlan(plan));
  if (!priced) throw new UsageError(`${planPath}: offer: missing, an object with currency and hourly needed`);
  const stages = stagesOf(plan.rig, words.locale);
  if (json === true)
    await printJson({ ...priced, guesses: priced.guesses.map((g) => guessInWords(g, stages, words)) });
  else await print(`${offerText(plan, priced, words)}\n`);
}
