/** One tier at the bench: what to set, where to stop at each stage, stop by stop, and what to watch for. */

import { useState } from "react";
import type { FoundAgain } from "../../../core/bench/as-cut/found-again.ts";
import type { BenchTier } from "../../../core/bench/bench.ts";
import { isWorked } from "../../../core/bench/bench.ts";
import type { Finding, FindingCode } from "../../../core/bench/bench-finding.ts";
import { cautionsAt } from "../../../core/bench/order/cautions.ts";
import { heightPerDegree } from "../../../core/bench/rig/rig.ts";
import type { Finish } from "../../../core/plan/document.ts";
import { stageName } from "../../../words/names.ts";
import { Choice } from "../../controls/Choice.tsx";
import { benchWords } from "../../messages/bench.ts";
import { planWords } from "../../messages/plan.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useSolved, useStudio } from "../../use-studio.ts";
import { useBenchScreen } from "../bench-screen.ts";
import { Cautions } from "../parts/Cautions.tsx";
import { finishedSaid } from "../parts/caliper.ts";
import { FindingList } from "../parts/FindingList.tsx";
import { tierName } from "../parts/names.ts";
import { useStages } from "../use-stages.ts";
import { Calibrate } from "./Calibrate.tsx";
import { PieceAfter } from "./PieceAfter.tsx";
import { StageLines } from "./StageLines.tsx";
import { Stops } from "./Stops.tsx";
import { StrokePlot } from "./StrokePlot.tsx";

/** Codes that belong to the plan itself and are told there. */
const TOLD_IN_PLAN: ReadonlySet<FindingCode> = new Set<FindingCode>([
  "rule-unmet",
  "overshoot",
  "start-moved",
]);

function Setting({ tier }: { tier: BenchTier }) {
  const all = useWords(benchWords);
  const words = all.work;
  const format = useFormat();
  const { length, armAngle, degrees, number } = format;
  const { setting, pose } = tier;
  const finished = finishedSaid(tier, usePlan(), all, format);
  if (!setting) return <p className="soft">{words.noRig(finished)}</p>;
  // Out of reach these numbers can't be set; what is said above the words is another way.
  if (!setting.reachable) return <p>{finished}</p>;
  const dip = setting.dipAtTouchDeg;
  return (
    <>
      <p className="bench-sentence">
        {words.pivot(
          length(setting.pivotHeightMm),
          length(setting.armLengthMm),
          length(setting.contactRadiusMm),
        )}
      </p>
      <p>
        {dip === null
          ? words.noTouch
          : dip < 0
            ? words.tipsUp(degrees(-dip), armAngle(pose.armAngleDeg))
            : words.dips(degrees(dip), armAngle(pose.armAngleDeg))}{" "}
        {words.speed(number(setting.speedMs, 1))} {finished}
      </p>
    </>
  );
}

const FINISHES: readonly Finish[] = ["polished", "prepolished", "ground"];

/** How fine a face the tier is left with: the work stops at that stage. */
function FinishChoice({ index }: { index: number }) {
  const words = useWords(benchWords);
  const tier = usePlan().tiers[index];
  const dispatch = useStudio((state) => state.dispatch);
  return (
    <div className="bench-finish">
      {words.work.finish}{" "}
      <Choice<Finish>
        inline
        label={words.work.finish}
        value={tier.finish ?? "polished"}
        options={FINISHES.map((id) => ({ id, words: words.finishes[id] }))}
        onChange={(finish) => dispatch({ type: "change-tier", tierId: tier.id, change: { finish } })}
      />
    </div>
  );
}

/** What it takes to find this tier's angle again after the arm has moved. */
function AgainCost({ tier, found }: { tier: BenchTier; found: FoundAgain | null }) {
  const { work: words } = useWords(benchWords);
  const { length, degrees } = useFormat();
  const { arm } = usePlan().rig;
  const perDegree =
    tier.setting?.reachable && arm
      ? heightPerDegree(tier.setting.armLengthMm, tier.armAngleDeg, arm.hingeOffsetMm)
      : null;
  return (
    <>
      {perDegree === null ? null : <p>{words.perDegree(length(perDegree, 1))}</p>}
      {found ? (
        <p>
          {words.againCosts(degrees(found.offDeg, 1), length(found.extraDepthMm, 2))}{" "}
          {found.edgeChangeMm !== null
            ? words.againEdge(length(Math.abs(found.edgeChangeMm), 2), found.edgeChangeMm > 0)
            : found.gapChangeMm !== null
              ? words.againGap(length(Math.abs(found.gapChangeMm), 2), found.gapChangeMm > 0)
              : null}{" "}
          {found.cornerMissMm === null ? null : words.againMiss(length(found.cornerMissMm, 2))}{" "}
          {words.againLost(found.meetsLost)}
        </p>
      ) : null}
    </>
  );
}

export function TierWork({
  tier,
  index,
  findings,
  found,
}: {
  tier: BenchTier;
  index: number;
  findings: readonly Finding[];
  found: FoundAgain | null;
}) {
  const words = useWords(benchWords);
  const { sides } = useWords(planWords);
  const { armAngle } = useFormat();
  const plan = usePlan();
  const way = useBenchScreen((state) => state.way);
  const select = useStudio((state) => state.select);
  const stages = useStages(plan.rig);
  const worked = tier.stages.flatMap((_, i) => (isWorked(tier, i) ? [i] : []));
  const [chosen, setChosen] = useState<string | null>(null);
  const stage = worked.find((i) => stages[i].id === chosen) ?? worked[0];
  const solved = useSolved().tiers[index];
  // It says why, and there is nothing to set: a depth of 0 is no answer.
  const isOutOfReach = solved !== undefined && !solved.met && solved.depthMm === 0;
  const own = findings.filter(
    ({ tier: of, code }) =>
      of === tier.tier && (isOutOfReach ? code === "rule-unmet" : !TOLD_IN_PLAN.has(code)),
  );
  const name = tierName(plan, index, words);
  return (
    <li className="bench-tier" onFocus={() => select({ tierId: tier.tier })}>
      <h2>
        <span className="bench-place">{index + 1}</span> {name}
      </h2>
      <p className="soft">
        {words.work.tierLine(plan.tiers[index].count, armAngle(tier.armAngleDeg), sides[tier.side])}
      </p>
      <FindingList findings={own} />
      {isOutOfReach ? null : (
        <div className="bench-two">
          <div className="bench-tier-words">
            <Setting tier={tier} />
            {way === "rough-all" ? <AgainCost tier={tier} found={found} /> : null}
            <FinishChoice index={index} />
            <StageLines tier={tier} index={index} />
            <Cautions list={[...cautionsAt("grind"), ...cautionsAt("clean")]} />
          </div>
          {stage === undefined || !solved ? null : (
            <div className="bench-beside">
              <Choice
                label={words.work.atStage}
                value={stages[stage].id}
                options={worked.map((i) => ({ id: stages[i].id, words: stageName(stages, stages[i].id) }))}
                onChange={setChosen}
              />
              <PieceAfter index={index} stage={stage} />
              <StrokePlot tier={tier} index={index} stage={stage} />
            </div>
          )}
        </div>
      )}
      {isOutOfReach || stage === undefined ? null : (
        <>
          <Stops tier={tier} stage={stage} />
          <Calibrate stage={stage} tier={tier} />
        </>
      )}
    </li>
  );
}
