/** `measure PLAN.json ...`: how each piece looks and what it takes, as numbers. */
import { measurePlan } from "../../core/measure/measures.ts";
import { rastersOf } from "../../core/optics/decode-picture.ts";
import type { Language } from "../../words/language.ts";
import { printEach } from "../each-plan.ts";
import type { Options } from "../options.ts";

export const run = (planPaths: readonly string[], _: Options, language: Language): Promise<void> =>
  printEach(planPaths, language, ({ plan }) => measurePlan(plan, rastersOf(plan)));
