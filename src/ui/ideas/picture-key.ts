/** Which ideas are the same piece, whatever they are called. */
import type { Plan } from "../../core/plan/document.ts";

const keys = new WeakMap<Plan, string>();

export function pictureKey(plan: Plan): string {
  const known = keys.get(plan);
  if (known !== undefined) return known;
  const key = JSON.stringify([plan.piece, plan.tiers.map(({ name: _, ...tier }) => tier)]);
  keys.set(plan, key);
  return key;
}
