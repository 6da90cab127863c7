/** One tier: its measurements, and the angle and depth that explain them best. */
import type { FittedTier } from "../../../core/bench/as-cut/as-cut.ts";
import type { Finding } from "../../../core/bench/bench-finding.ts";
import type { AsCut, Plan, Tier } from "../../../core/plan/document.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useSolved, useStudio } from "../../use-studio.ts";
import { FindingList } from "../parts/FindingList.tsx";
import { tierName } from "../parts/names.ts";
import { isLocked, withMeasured } from "./as-cut-plan.ts";
import { DeepFacets } from "./DeepFacets.tsx";
import { Measures } from "./Measures.tsx";
import { SingleFacets } from "./SingleFacets.tsx";

function Fitted({ tier, index, fit }: { tier: Tier; index: number; fit: FittedTier }) {
  const { asCut: words } = useWords(benchWords);
  const { length, degrees, armAngle } = useFormat();
  // A deviation of less than a tenth is not none.
  const fine = (deg: number) => degrees(deg, deg < 0.1 ? 2 : 1);
  const planned = useSolved().tiers[index]?.depthMm ?? 0;
  const angle = armAngle(fit.armAngleDeg, 1);
  return (
    <>
      <p className="bench-sentence" aria-live="polite">
        {words.fits(angle, fine(fit.armAngleSdDeg), length(fit.depthMm, 2), length(fit.depthSdMm, 2))}
      </p>
      <p className="soft">
        {isLocked(tier, fit)
          ? words.locked
          : words.planned(armAngle(tier.armAngleDeg, 1), length(planned, 2))}
      </p>
      {fit.wouldHelp && !fit.angleFromPlan && !fit.depthFromPlan ? (
        <p>
          {words.wouldHelp(
            words.measures[fit.wouldHelp.measure],
            fine(fit.wouldHelp.armAngleSdDeg),
            length(fit.wouldHelp.depthSdMm, 2),
          )}
        </p>
      ) : null}
    </>
  );
}

export function TierAsCut({
  tier,
  index,
  fit,
  resolved,
  findings,
}: {
  tier: Tier;
  index: number;
  fit: FittedTier | null;
  /** The plan with what was cut in place; null while nothing is known of it. */
  resolved: Plan | null;
  findings: readonly Finding[];
}) {
  const words = useWords(benchWords);
  const { armAngle } = useFormat();
  const plan = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const set = (asCut: AsCut | undefined) =>
    dispatch({ type: "change-tier", tierId: tier.id, change: { asCut } });
  // Too deep is told below, with what it would take.
  const told = findings.filter((finding) => finding.code !== "facet-too-deep");
  return (
    <li className="bench-tier">
      <h2>
        <span className="bench-place">{index + 1}</span> {tierName(plan, index, words)}
      </h2>
      <p className="soft">{words.asCut.tierLine(tier.count, armAngle(tier.armAngleDeg))}</p>
      {fit ? <Fitted tier={tier} index={index} fit={fit} /> : null}
      <FindingList findings={told} />
      <details className="bench-fold" open={tier.asCut !== undefined || undefined}>
        <summary>{tier.asCut ? words.asCut.measured : words.asCut.measure}</summary>
        <Measures tier={tier} onChange={(change) => set(withMeasured(tier.asCut, change))} />
        <SingleFacets tier={tier} onChange={set} />
      </details>
      {fit && resolved ? <DeepFacets tier={tier} index={index} fit={fit} resolved={resolved} /> : null}
    </li>
  );
}
