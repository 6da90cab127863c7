/** The piece as it stands after a stage of a tier: earlier tiers finished, this one at the stage's depth, later ones uncut. */
import { useMemo } from "react";
import { depthsBefore, planeAtDepth, tierFacets } from "../../../core/bench/stages/half-cut.ts";
import { tierStageDepths } from "../../../core/bench/stages/stages.ts";
import { cutBall } from "../../../core/geometry/solid.ts";
import { stageName } from "../../../words/names.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useSolved } from "../../use-studio.ts";
import { tierName } from "../parts/names.ts";
import { pieceSketch, viewFrom } from "../parts/piece-sketch.ts";
import { useStages } from "../use-stages.ts";

/** Seen from a little above the equator of the side that is cut. */
const ELEVATION_DEG = 32;

export function PieceAfter({ index, stage }: { index: number; stage: number }) {
  const words = useWords(benchWords);
  const solved = useSolved();
  const stages = useStages(solved.plan.rig);
  const { side } = solved.plan.tiers[index];
  const sketch = useMemo(() => {
    const tier = solved.tiers[index];
    const depths = depthsBefore(solved, index);
    for (const k of tierFacets(tier)) depths[k] = tierStageDepths(solved, index, stages)[stage];
    const cut = depths.flatMap((depth, k) => (depth > 0 ? [k] : []));
    const solid = cutBall(cut.map((k) => planeAtDepth(solved, k, depths[k])));
    const own = new Set(tierFacets(tier));
    const azimuth = solved.facets[tier.first]?.azimuthDeg ?? 0;
    const view = viewFrom(azimuth, side === "front" ? ELEVATION_DEG : -ELEVATION_DEG);
    return pieceSketch(solid, view, (i) => own.has(cut[i]));
  }, [solved, index, stage, stages, side]);
  return (
    <figure className="bench-sketch">
      <svg
        viewBox="-1.06 -1.06 2.12 2.12"
        role="img"
        aria-label={words.work.pieceAfter(
          tierName(solved.plan, index, words),
          stageName(stages, stages[stage].id),
        )}
      >
        <polygon className="sketch-skin" points={sketch.silhouette} />
        {sketch.faces.map((face) => (
          <polygon
            key={face.points}
            className={face.isOwn ? "sketch-own" : "sketch-face"}
            points={face.points}
          />
        ))}
      </svg>
      <figcaption className="small soft">{words.work.pieceAfterCaption}</figcaption>
    </figure>
  );
}
