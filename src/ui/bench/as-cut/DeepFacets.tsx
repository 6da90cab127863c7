/** A facet cut too deep: how much, what bringing the rest to match costs, and what then no longer meets. */
import { useMemo } from "react";
import type { FittedTier } from "../../../core/bench/as-cut/as-cut.ts";
import type { Mended } from "../../../core/bench/as-cut/mend-cut.ts";
import type { Plan, Tier } from "../../../core/plan/document.ts";
import type { DeepQuestion } from "../../../worker/bench-worker.ts";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { useStudio } from "../../use-studio.ts";
import { benchPool } from "../bench-worker-client.ts";
import { useAsked } from "../use-asked.ts";
import { deepenTo } from "./as-cut-plan.ts";
import { Changes } from "./Changes.tsx";

/** Differences below this many deviations are the calipers', not the glass's. */
const CLEAR_SDS = 3;

const askTooDeep = (question: DeepQuestion): Promise<Mended> => benchPool.run("tooDeep", question);

/** The deepest facet that is clearly deeper than its tier; null when none is. */
function tooDeepOf(fit: FittedTier): FittedTier["facets"][number] | null {
  const deepest = [...fit.facets].sort((a, b) => b.depthMm - a.depthMm)[0];
  if (!deepest) return null;
  const clear = CLEAR_SDS * Math.hypot(deepest.depthSdMm, fit.depthSdMm);
  return deepest.depthMm - fit.depthMm > clear ? deepest : null;
}

export function DeepFacets({
  tier,
  index,
  fit,
  resolved,
}: {
  tier: Tier;
  index: number;
  fit: FittedTier;
  resolved: Plan;
}) {
  const { asCut: words } = useWords(benchWords);
  const { length } = useFormat();
  const dispatch = useStudio((state) => state.dispatch);
  const deepest = tooDeepOf(fit);
  const depthMm = deepest?.depthMm ?? null;
  const question = useMemo(
    (): DeepQuestion | null => (depthMm === null ? null : { plan: resolved, tierIndex: index, depthMm }),
    [resolved, index, depthMm],
  );
  const { answer } = useAsked(question, askTooDeep);
  if (!deepest) return null;
  return (
    <div className="finding" data-severity="warn">
      <p>{words.tooDeep(String(deepest.k + 1), length(deepest.depthMm - fit.depthMm, 2))}</p>
      {answer && tier.count > 1 ? (
        <>
          <p>{words.toMatch}</p>
          <Changes mended={answer} />
          <Button look="outlined" onPress={() => dispatch(deepenTo(fit, deepest.depthMm))}>
            {words.deepenAll(length(deepest.depthMm, 2))}
          </Button>
        </>
      ) : null}
    </div>
  );
}
