/** The tier's stops in order, large, each with the width at which to stop there and its strokes. */
import type { BenchTier } from "../../../core/bench/bench.ts";
import { isGround } from "../../../core/bench/bench.ts";
import { stagesOf } from "../../../core/bench/stages/default-stages.ts";
import { endsByLooking } from "../../../core/bench/stages/stages.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";
import { useBenchScreen } from "../bench-screen.ts";
import { facetNumber } from "../parts/names.ts";
import { strokeCount } from "../parts/strokes.ts";
import { useStages } from "../use-stages.ts";

export function Stops({ tier, stage }: { tier: BenchTier; stage: number }) {
  const { work: words } = useWords(benchWords);
  const { figure } = useFormat();
  const { rig } = usePlan();
  const withGuesses = useBenchScreen((state) => state.showGuesses);
  const own = useStages(rig)[stage];
  const radius = tier.setting?.contactRadiusMm ?? null;
  const looks = endsByLooking(stagesOf(rig), stage);
  const isWheel = tier.facets.some((facet) => facet.wheelStop !== null);
  return (
    <div className="bench-stops-part">
      <h3>{isWheel ? words.stops(own.name) : words.readings(own.name)}</h3>
      <ol className="bench-stops">
        {tier.facets.map((facet) => {
          const { widthWhileGroundMm, strokes, removeMm3 } = facet.stages[stage];
          const isThere = isGround(facet, stage);
          const width = figure(widthWhileGroundMm);
          const count =
            looks || !isThere ? null : strokeCount(strokes, removeMm3, own, rig.lap, radius, withGuesses);
          return (
            <li key={facet.facet} className="bench-stop" data-skipped={!isThere || undefined}>
              <span className="unseen">{words.facetAt(String(facetNumber(facet.facet)))}</span>
              <b>{isWheel ? facet.read.label : `${facet.read.label}°`}</b>
              {isThere ? (
                <span>
                  {width.figure}
                  <span className="unit">{width.unit}</span>
                </span>
              ) : (
                <span className="small soft">{words.stopTaken}</span>
              )}
              {count ? (
                <span className="small soft">
                  {count.isGuess ? words.guess(words.strokes(count.strokes)) : words.strokes(count.strokes)}
                </span>
              ) : null}
            </li>
          );
        })}
      </ol>
    </div>
  );
}
