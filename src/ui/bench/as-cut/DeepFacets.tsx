/** A facet cut too deep: how much, and what bringing its whole tier to that depth would cost. */
import type { FittedTier } from "../../../core/bench/as-cut.ts";
import { depthsBefore, sizeAt, tierFacets, widestGap } from "../../../core/bench/half-cut.ts";
import type { Tier } from "../../../core/plan/document.ts";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { useSolved, useStudio } from "../../use-studio.ts";
import { deepenTo } from "./as-cut-plan.ts";

/** Differences below this many deviations are the calipers', not the glass's. */
const CLEAR_SDS = 3;

export function DeepFacets({ tier, index, fit }: { tier: Tier; index: number; fit: FittedTier }) {
  const { asCut: words } = useWords(benchWords);
  const { length } = useFormat();
  const solved = useSolved();
  const dispatch = useStudio((state) => state.dispatch);
  const deepest = [...fit.facets].sort((a, b) => b.depthMm - a.depthMm)[0];
  if (!deepest || deepest.depthMm - fit.depthMm < CLEAR_SDS * Math.hypot(deepest.depthSdMm, fit.depthSdMm))
    return null;
  const sizeWith = (depthMm: number) => {
    const depths = depthsBefore(solved, index);
    for (const k of tierFacets(solved.tiers[index])) depths[k] = depthMm;
    return sizeAt(solved, depths, solved.tiers[index].first).widthMm;
  };
  const wider = sizeWith(deepest.depthMm) - sizeWith(fit.depthMm);
  const gap = widestGap(solved, solved.tiers[index], deepest.depthMm);
  const extra = deepest.depthMm - fit.depthMm;
  return (
    <div className="finding" data-severity="warn">
      <p>{words.tooDeep(String(deepest.k + 1), length(extra, 2))}</p>
      <p>
        {words.tooDeepCost(length(extra, 2), length(Math.abs(wider), 2), wider >= 0)}{" "}
        {gap !== null && gap < 0 ? words.tooDeepShares : null}
      </p>
      {tier.count > 1 ? (
        <Button look="outlined" onPress={() => dispatch(deepenTo(fit, deepest.depthMm))}>
          {words.deepenAll(length(deepest.depthMm, 2))}
        </Button>
      ) : null}
    </div>
  );
}
