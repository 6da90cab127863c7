/** Opens the page for the lap. The plan is kept first, also one nobody has changed; until it is, the address carries it. */
import { addressOf, pushAddress } from "../address.ts";
import { carriedPlan } from "../carried-plan.ts";
import type { Studio } from "../studio.ts";
import { agreeToBench, LAP_ENTRY } from "./lap-open.ts";

export function openLap(studio: Studio): void {
  agreeToBench(studio);
  const { plan } = addressOf(location.hash);
  const { planId } = studio.getState();
  pushAddress(
    { lap: { planId: planId ?? "" }, plan: plan ?? (planId === null ? carriedPlan(studio) : null) },
    { ...history.state, ...LAP_ENTRY },
  );
}
