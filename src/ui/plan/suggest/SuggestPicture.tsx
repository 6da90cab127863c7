/** A small stretch of the unrolled skin with the tier as it would become and the tiers before it; no numbers. */
import { memo, useMemo } from "react";
import { cutBall } from "../../../core/geometry/solid.ts";
import type { OutlinePiece } from "../../../core/geometry/solid-types.ts";
import type { Plan, Tier } from "../../../core/plan/document.ts";
import { solvePlan } from "../../../core/plan/solve.ts";
import { type Strip, stripOf } from "../skin/projection.ts";
import { pathData, ringOnStrip, strokeOnStrip } from "../skin/strip-path.ts";

const WIDTH_PX = 168;
const HEIGHT_PX = 84;
/** At least this many facets are seen, at most this much of a turn. */
const FACETS_SEEN = 3.4;
const MOST_TURN = 0.5;
/** Part of the picture's height that is kept above the tier's middle. */
const ABOVE = 0.42;

interface Small {
  readonly own: string;
  readonly others: string;
  readonly edges: string;
}

/** A strip so long that the wished part of a turn fills the picture, and the shift that puts the tier into it. */
function frameOf(tier: Tier, firstAzimuthDeg: number): { strip: Strip; top: number } {
  const seen = Math.min(MOST_TURN, FACETS_SEEN / tier.count);
  const width = WIDTH_PX / seen;
  const middle = (firstAzimuthDeg * Math.PI) / 180 + Math.PI / tier.count;
  const strip = stripOf(width, middle - seen * Math.PI);
  const sine = Math.sin((tier.armAngleDeg * Math.PI) / 180) * (tier.side === "front" ? 1 : -1);
  const y = ((1 - sine) / 2) * strip.height;
  const top = Math.max(0, Math.min(strip.height - HEIGHT_PX, y - HEIGHT_PX * ABOVE));
  return { strip, top };
}

function draw(plan: Plan, tierIndex: number, tier: Tier): Small & { top: number } {
  const solved = solvePlan({ ...plan, tiers: [...plan.tiers.slice(0, tierIndex), tier] });
  const solid = cutBall(solved.planes);
  const { first } = solved.tiers[tierIndex];
  const { strip, top } = frameOf(tier, solved.facets[first].azimuthDeg);
  // Rings may lie a turn to either side of the picture.
  const around = (points: (s: Strip) => string) =>
    [-1, 0, 1].map((turn) => points({ ...strip, left: strip.left + turn * 2 * Math.PI })).join("");
  const facets = solid.facets.map((f) =>
    around((s) => pathData(ringOnStrip(s, f.outline, f.plane.n).points, true)),
  );
  const edges = solid.edges.map(({ from, to, b, length }) => {
    const line: OutlinePiece = { kind: "line", from, to, with: b, length };
    return around((s) => pathData(strokeOnStrip(s, line, [0, 0, 1]), false));
  });
  return {
    own: facets.slice(first).join(""),
    others: facets.slice(0, first).join(""),
    edges: edges.join(""),
    top,
  };
}

export const SuggestPicture = memo(function SuggestPicture({
  plan,
  tierIndex,
  tier,
}: {
  plan: Plan;
  tierIndex: number;
  tier: Tier;
}) {
  const small = useMemo(() => draw(plan, tierIndex, tier), [plan, tierIndex, tier]);
  return (
    <svg
      className="offer-picture"
      width={WIDTH_PX}
      height={HEIGHT_PX}
      viewBox={`0 ${small.top} ${WIDTH_PX} ${HEIGHT_PX}`}
      aria-hidden="true"
    >
      <rect className="offer-skin" x={0} y={small.top} width={WIDTH_PX} height={HEIGHT_PX} />
      <path className="offer-other" d={small.others} />
      <path className="offer-own" d={small.own} />
      <path className="offer-edge" d={small.edges} />
    </svg>
  );
});
