/** What the bench needs of the plan in hand, computed beside the screen. */
import type { AsCutAnswer } from "../../core/bench/as-cut.ts";
import type { Bench } from "../../core/bench/bench.ts";
import type { FoundAgain } from "../../core/bench/found-again.ts";
import type { Plan } from "../../core/plan/document.ts";
import { usePlan } from "../use-studio.ts";
import { benchPool } from "./bench-worker-client.ts";
import { type Asked, useAsked } from "./use-asked.ts";

const askBench = (plan: Plan): Promise<Bench> => benchPool.run("bench", plan);
const askFit = (plan: Plan): Promise<AsCutAnswer> => benchPool.run("fit", plan);
const askFoundAgain = (plan: Plan): Promise<readonly (FoundAgain | null)[]> =>
  benchPool.run("foundAgain", plan);

export const useBench = (): Asked<Plan, Bench> => useAsked(usePlan(), askBench);

/** Nothing is computed while nothing was measured. */
export function useFit(): Asked<Plan, AsCutAnswer> {
  const plan = usePlan();
  return useAsked(plan.tiers.some((tier) => tier.asCut) ? plan : null, askFit);
}

export function useFoundAgain(isWanted: boolean): Asked<Plan, readonly (FoundAgain | null)[]> {
  const plan = usePlan();
  return useAsked(isWanted ? plan : null, askFoundAgain);
}
