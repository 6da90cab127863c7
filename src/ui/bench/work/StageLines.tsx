/** Stage by stage: the width to stop at, what it is while neighbours are still uncut, strokes, what the disc asks of the hinge. */
import type { BenchTier } from "../../../core/bench/bench.ts";
import { stagesOf } from "../../../core/bench/bench.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { type Formats, useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";
import { useBenchView } from "../bench-view.ts";
import { type StrokeCount, strokeCount } from "../parts/strokes.ts";

/** Widths of the tier's facets while each is ground, those that read alike said once. */
const groundWidths = (tier: BenchTier, stage: number, { length }: Formats): readonly string[] => [
  ...new Set(tier.facets.map((facet) => length(facet.stages[stage].widthWhileGroundMm))),
];

function useStrokes(tier: BenchTier, stage: number): readonly StrokeCount[] {
  const { rig } = usePlan();
  const withGuesses = useBenchView((state) => state.showGuesses);
  const radius = tier.setting?.contactRadiusMm ?? null;
  const own = stagesOf(rig)[stage];
  return tier.facets.flatMap((facet) => {
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

function StageLine({ tier, stage }: { tier: BenchTier; stage: number }) {
  const { work: words, rig } = useWords(benchWords);
  const format = useFormat();
  const stages = stagesOf(usePlan().rig);
  const { widthMm, depthMm } = tier.stages[stage];
  const isLast = stage === stages.length - 1;
  if (depthMm <= 0) return <>{words.skip}</>;
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
      {isLast ? words.polishEnds : <Strokes tier={tier} stage={stage} />}{" "}
      {disc && disc.moveHingeMm !== 0
        ? rig.discMoves(
            format.length(disc.hingeAbovePlateMm),
            disc.moveHingeMm > 0,
            format.length(Math.abs(disc.moveHingeMm)),
          )
        : null}
    </>
  );
}

export function StageLines({ tier }: { tier: BenchTier }) {
  const stages = stagesOf(usePlan().rig);
  return (
    <ol className="bench-lines">
      {stages.map((stage, i) => (
        <li key={stage.id} data-skipped={tier.stages[i].depthMm <= 0 || undefined}>
          <b>{stage.name}.</b> <StageLine tier={tier} stage={i} />
        </li>
      ))}
    </ol>
  );
}
