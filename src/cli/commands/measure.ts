/** `measure PLAN.json ...`: how each piece looks and what it takes, as numbers. */
import { measurePlan } from "../../core/measure/measures.ts";
import { rastersOf } from "../../core/optics/decode-picture.ts";
import { printEach } from "../each-plan.ts";
import { languageIn, type Options } from "../options.ts";

export const run = (planPaths: readonly string[], options: Options): Promise<void> =>
  printEach(planPaths, languageIn(options), ({ plan }) => measurePlan(plan, rastersOf(plan)));
