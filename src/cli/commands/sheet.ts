/** `sheet PLAN.json --out sheet.html`: the bench sheet as one HTML file to print. */

import { solvePlan } from "../../core/plan/solve.ts";
import { sheetHtml } from "../../sheet/sheet.ts";
import { sheetWordsDe } from "../../words/de/sheet.ts";
import { sheetWordsEn } from "../../words/en/sheet.ts";
import type { Language } from "../../words/language.ts";
import { writeOut } from "../files.ts";
import { choice, type Options } from "../options.ts";
import { readPlan } from "../read-plan.ts";
import { sheetFace } from "../sheet-face.ts";

const WORDS = { en: sheetWordsEn, de: sheetWordsDe } as const;

export async function run(
  [planPath]: readonly string[],
  options: Options,
  language: Language,
): Promise<void> {
  const out = String(options.out);
  const words = WORDS[language];
  const unit = choice(options, "unit", ["mm", "inch"]);
  const paper = choice(options, "paper", ["a4", "letter"]);
  const { plan } = await readPlan(planPath);
  const sheet = sheetHtml(solvePlan(plan), { words, unit, paper, face: await sheetFace() });
  await writeOut(out, sheet);
}
