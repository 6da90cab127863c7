/** The plan that the traced picture is of: on the left, where two are compared. */
import type { Plan } from "../../core/plan/document.ts";
import { useSettledPlan } from "../settled.ts";
import { lookedAt, useLook } from "./look-settings.ts";

export function useLookedAt(): Plan {
  const plan = useSettledPlan();
  const against = useLook((settings) => settings.against);
  const own = useLook((settings) => settings.own);
  return lookedAt(plan, { against, own });
}
