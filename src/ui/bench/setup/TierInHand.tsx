/** The rig in the tier that is in hand: picture, what a ruler measures, what each disc changes. */
import type { Bench, BenchTier } from "../../../core/bench/bench.ts";
import { isAboutRig } from "../../../core/bench/rig/rig-findings.ts";
import { rulerPoints } from "../../../core/bench/rig/rig-pose.ts";
import { stageName } from "../../../words/names.ts";
import { Choice } from "../../controls/Choice.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { finishedSaid } from "../parts/caliper.ts";
import { FindingList } from "../parts/FindingList.tsx";
import { tierName } from "../parts/names.ts";
import { useStages } from "../use-stages.ts";
import { GuidePicture } from "./GuidePicture.tsx";
import { RigPicture } from "./RigPicture.tsx";

/** The tier picked anywhere in the app, the first one when none is. */
function usePickedTier(bench: Bench | null): BenchTier | null {
  const picked = useStudio((state) => state.selection.tierId);
  return bench?.tiers.find((one) => one.tier === picked) ?? bench?.tiers[0] ?? null;
}

function Discs({ tier }: { tier: BenchTier }) {
  const words = useWords(benchWords);
  const { length, degrees } = useFormat();
  const stages = useStages(usePlan().rig);
  if (tier.discs.every((disc) => disc.moveHingeMm === 0))
    return <p className="soft">{words.rig.discsAlike}</p>;
  return (
    <ul className="bench-lines">
      {tier.discs.map((disc) => (
        <li key={disc.stage}>
          <b>{stageName(stages, disc.stage)}</b>{" "}
          {disc.moveHingeMm === 0
            ? words.rig.discStays(length(disc.hingeAbovePlateMm))
            : words.rig.discMoves(
                length(disc.hingeAbovePlateMm),
                disc.moveHingeMm > 0,
                length(Math.abs(disc.moveHingeMm)),
              )}{" "}
          {disc.moveHingeMm === 0
            ? null
            : disc.uncorrectedDeg === null || disc.wedgeMm === null
              ? words.rig.discStuck
              : words.rig.discForgotten(degrees(Math.abs(disc.uncorrectedDeg), 2), length(disc.wedgeMm, 2))}
        </li>
      ))}
    </ul>
  );
}

export function TierInHand({ bench }: { bench: Bench | null }) {
  const words = useWords(benchWords);
  const format = useFormat();
  const { length } = format;
  const plan = usePlan();
  const select = useStudio((state) => state.select);
  const tier = usePickedTier(bench);
  if (plan.tiers.length === 0) return <p className="bench-empty">{words.noTiers}</p>;
  if (!plan.rig.arm || !plan.rig.lap) return <p className="bench-empty">{words.rig.missing}</p>;
  if (!tier?.setting || !tier.drawing) return <p className="waiting">{words.counting}</p>;
  const index = plan.tiers.findIndex((one) => one.id === tier.tier);
  const ruler = rulerPoints(tier.pose, tier.setting);
  return (
    <>
      <Choice
        label={words.rig.tierInHand}
        value={tier.tier}
        options={plan.tiers.map((one, i) => ({ id: one.id, words: tierName(plan, i, words) }))}
        onChange={(tierId) => select({ tierId })}
      />
      <FindingList
        findings={bench?.findings.filter((one) => one.tier === tier.tier && isAboutRig(one)) ?? []}
      />
      {tier.guide ? (
        <GuidePicture drawing={tier.guide} name={tierName(plan, index, words)} />
      ) : (
        <RigPicture drawing={tier.drawing} setting={tier.setting} name={tierName(plan, index, words)} />
      )}
      {tier.setting.reachable ? (
        <>
          <ul className="bench-lines">
            <li>{words.rig.rulerFarSide(length(ruler.hingeToFarSkinMm))}</li>
            <li>{words.rig.rulerHeight(length(ruler.surfaceToHingeMm))}</li>
            <li>{finishedSaid(tier, plan, words, format)}</li>
          </ul>
          <h3>{words.rig.discs}</h3>
          <Discs tier={tier} />
        </>
      ) : (
        <p>{finishedSaid(tier, plan, words, format)}</p>
      )}
    </>
  );
}
