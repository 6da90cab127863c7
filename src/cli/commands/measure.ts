/** `measure PLAN.json ...`: how each piece looks and what it takes, as numbers. */
import { measurePlan } from "../../core/measure/measures.ts";
import { rastersOf } from "../../core/optics/decode-picture.ts";
import { printEach } from "../each-plan.ts";

export const run = (planPaths: readonly string[]): Promise<void> =>
  printEach(planPaths, ({ plan }) => measurePlan(plan, rastersOf(plan)));
