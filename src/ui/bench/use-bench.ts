/** What the bench needs of the plan in hand, computed beside the screen. */
import type { AsCutAnswer } from "../../core/bench/as-cut/as-cut.ts";
import type { FoundAgain } from "../../core/bench/as-cut/found-again.ts";
import type { Bench } from "../../core/bench/bench.ts";
import type { Plan } from "../../core/plan/document.ts";
import { samePiece } from "../../state/derived.ts";
import { usePlan } from "../use-studio.ts";
import { benchPool } from "./bench-worker-client.ts";
import { type Asked, useAsked } from "./use-asked.ts";

const askBench = (plan: Plan): Promise<Bench> => benchPool.run("bench", plan);
const askFit = (plan: Plan): Promise<AsCutAnswer> => benchPool.run("fit", plan);
const askFoundAgain = (plan: Plan): Promise<readonly (FoundAgain | null)[]> =>
  benchPool.run("foundAgain", plan);

/** Asked about the plan as far as it can matter: the answer to a plan stays when only the work has moved on. */
function useAskedOfPlan<A>(ask: (plan: Plan) => Promise<A>, isWanted: boolean): Asked<Plan, A> {
  const plan = usePlan();
  const piece = samePiece(plan);
  const asked = useAsked(isWanted ? piece : null, ask);
  return asked.question === piece ? { ...asked, question: plan } : asked;
}

export const useBench = (): Asked<Plan, Bench> => useAskedOfPlan(askBench, true);

/** Nothing is computed while nothing was measured. */
export function useFit(): Asked<Plan, AsCutAnswer> {
  const plan = usePlan();
  return useAskedOfPlan(
    askFit,
    plan.tiers.some((tier) => tier.asCut),
  );
}

export const useFoundAgain = (isWanted: boolean): Asked<Plan, readonly (FoundAgain | null)[]> =>
  useAskedOfPlan(askFoundAgain, isWanted);
