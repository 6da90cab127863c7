/** Stage by stage: the width to stop at, what it is while neighbours are still uncut, strokes, what the disc asks of the hinge. */
import type { BenchTier } from "../../../core/bench/bench.ts";
import { isGround, isWorked } from "../../../core/bench/bench.ts";
import { endsByLooking } from "../../../core/bench/stages/stages.ts";
import type { Formats } from "../../../words/formats.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";
import { useBenchScreen } from "../bench-screen.ts";
import { type StrokeCount, strokeCount } from "../parts/strokes.ts";
import { useStages } from "../use-stages.ts";

/** Widths of the tier's facets while each is ground, those that read alike said once. */
const groundWidths = (tier: BenchTier, stage: number, { length }: Formats): readonly string[] => [
  ...new Set(
    tier.facets
      .filter((facet) => isGround(facet, stage))
      .map((facet) => length(facet.stages[stage].widthWhileGroundMm)),
  ),
];

function useStrokes(tier: BenchTier, stage: number): readonly StrokeCount[] {
  const { rig } = usePlan();
  const withGuesses = useBenchScreen((state) => state.showGuesses);
  const radius = tier.setting?.contactRadiusMm ?? null;
  const own = useStages(rig)[stage];
  return tier.facets.flatMap((facet) => {
    if (!isGround(facet, stage)) return [];
    const { strokes, removeMm3 } = facet.stages[stage];
    return strokeCount(strokes, removeMm3, own, rig.lap, radius, withGuesses) ?? [];
  });
}

function Strokes({ tier, stage }: { tier: BenchTier; stage: number }) {
  const { work: words } = useWords(benchWords);
  const counts = useStrokes(tier, stage);
  if (counts.length === 0) return <>{words.notCalibrated}</>;
  const all = counts.map((count) => count.strokes);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const said = least === most ? words.strokes(most) : words.strokesRange(least, most);
  return <>{counts[0].isGuess ? words.guess(said) : said}</>;
}

interface LineProps {
  readonly tier: BenchTier;
  /** Place of the tier in the plan. */
  readonly index: number;
}

function StageLine({ tier, index, stage }: LineProps & { stage: number }) {
  const { work: words, rig, finishes } = useWords(benchWords);
  const format = useFormat();
  const plan = usePlan();
  const stages = useStages(plan.rig);
  const { widthMm, depthMm } = tier.stages[stage];
  const finish = finishes[plan.tiers[index].finish ?? "polished"];
  if (stage >= tier.stageCount) return <>{words.notHere(finish)}</>;
  if (depthMm <= 0) return <>{words.skip}</>;
  if (!isWorked(tier, stage)) return <>{words.takenAlready}</>;
  const looks = endsByLooking(stages, stage);
  const endsHere = stage === tier.stageCount - 1 && !looks;
  const final = format.length(widthMm);
  const ground = groundWidths(tier, stage, format);
  const disc = tier.discs[stage];
  return (
    <>
      {words.stopAt(final)}{" "}
      {ground.length === 1 && ground[0] === final
        ? null
        : ground.length <= 3
          ? words.whileGround(ground.join(", "))
          : words.whileGroundMany(ground[0], ground.at(-1)!)}{" "}
      {looks ? words.polishEnds : <Strokes tier={tier} stage={stage} />}{" "}
      {endsHere ? words.endsHere(finish) : null}{" "}
      {disc && disc.moveHingeMm !== 0 && tier.setting?.reachable
        ? rig.discMoves(
            format.length(disc.hingeAbovePlateMm),
            disc.moveHingeMm > 0,
            format.length(Math.abs(disc.moveHingeMm)),
          )
        : null}
    </>
  );
}

export function StageLines({ tier, index }: LineProps) {
  const stages = useStages(usePlan().rig);
  return (
    <ol className="bench-lines">
      {stages.map((stage, i) => (
        <li key={stage.id} data-skipped={!isWorked(tier, i) || undefined}>
          <b>{stage.name}.</b> <StageLine tier={tier} index={index} stage={i} />
        </li>
      ))}
    </ol>
  );
}
