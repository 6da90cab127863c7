/** Meets that a plan lost: on the wheel's stops, and by its last edit. Each takes another plan to be solved and cut. */
import type { Plan } from "../plan/document.ts";
import type { PlanFinding } from "../plan/finding.ts";
import { editCostFindings, isAnyTierEdited } from "./findings-edit-cost.ts";
import { wheelCostFindings } from "./findings-wheel-cost.ts";
import { checkedOf } from "./report.ts";

/**
 * One answer, after nulls at which a caller may stop.
 * @param before the plan before its last edit; null where none is known
 */
export function* lossesIn(plan: Plan, before: Plan | null): Generator<readonly PlanFinding[] | null> {
  const checked = checkedOf(plan);
  yield null;
  const byEdit = before ? editCostFindings(before, checked) : [];
  yield null;
  const byWheel = wheelCostFindings(checked);
  // Where no tier was edited the wheel was: what it costs is told once.
  const told = new Set(before && !isAnyTierEdited(before, plan) ? byWheel.map(({ tier }) => tier) : []);
  yield [...byEdit.filter(({ tier }) => !told.has(tier)), ...byWheel];
}
