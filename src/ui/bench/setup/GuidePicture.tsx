/** The way by hand, to scale from the side: the piece on the lap, its dop against the face of a guide block. */
import type { GuideDrawing, Point } from "../../../core/bench/rig/rig-pose.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";

const LAP_THICK_MM = 8;
const ROOM_MM = 4;

const points = (list: readonly Point[]): string => list.map(([x, z]) => `${x},${-z}`).join(" ");

export function GuidePicture({ drawing, name }: { drawing: GuideDrawing; name: string }) {
  const { rig: words } = useWords(benchWords);
  const { centre, radiusMm, facet, dop, block } = drawing;
  const drawn = [...dop, ...block];
  const left = Math.min(-radiusMm, ...drawn.map(([x]) => x)) - ROOM_MM;
  const right = Math.max(radiusMm, ...drawn.map(([x]) => x)) + ROOM_MM;
  const top = Math.max(centre[1] + radiusMm, ...drawn.map(([, z]) => z)) + ROOM_MM;
  return (
    <figure className="rig-picture rig-guide">
      <svg
        viewBox={`${left} ${-top} ${right - left} ${top + LAP_THICK_MM}`}
        role="img"
        aria-label={words.guideOf(name)}
      >
        <clipPath id="guide-above">
          <rect x={left} y={-top} width={right - left} height={top} />
        </clipPath>
        <rect className="rig-lap" x={left} y={0} width={right - left} height={LAP_THICK_MM} />
        {block.length > 0 ? <polygon className="rig-block" points={points(block)} /> : null}
        <polygon className="rig-dop" points={points(dop)} />
        <circle
          className="rig-piece"
          cx={centre[0]}
          cy={-centre[1]}
          r={radiusMm}
          clipPath="url(#guide-above)"
        />
        <line className="rig-facet" x1={facet[0][0]} x2={facet[1][0]} y1={0} y2={0} />
      </svg>
      <figcaption className="small soft">{words.guideCaption}</figcaption>
    </figure>
  );
}
