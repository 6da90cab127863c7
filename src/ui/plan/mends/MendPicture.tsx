/** The piece as a mend would leave it, small, from the side; the outline that it has now dashed around it. No numbers. */
import { memo, useMemo } from "react";
import { type Mend, planWith } from "../../../core/check/mends.ts";
import { cutBall } from "../../../core/geometry/solid.ts";
import type { Plan, Side } from "../../../core/plan/document.ts";
import { solvePlan } from "../../../core/plan/solve.ts";
import { solid } from "../../../state/derived.ts";
import { LOOKS, type Orbit } from "../../piece/camera.ts";
import { drawPiece, pointsOf } from "../../piece/drawing.ts";

/** The ball nearly fills the picture, whose shorter side is wider than it at that distance. */
const SIZE = 56;
/** From the side, leaning over the tier that changes, so that its ring is seen. */
const LEAN_DEG = 24;

const viewOf = (side: Side): Orbit => ({
  ...LOOKS.side,
  elevationDeg: side === "back" ? -LEAN_DEG : LEAN_DEG,
});

export const MendPicture = memo(function MendPicture({ plan, mend }: { plan: Plan; mend: Mend }) {
  const { now, mended } = useMemo(() => {
    const changed = "tierId" in mend.change ? mend.change.tierId : mend.cost.tiers[0];
    const view = viewOf(plan.tiers.find(({ id }) => id === changed)?.side ?? "front");
    const left = cutBall(solvePlan(planWith(plan, mend.steps)).planes);
    return { now: drawPiece(solid(plan), view), mended: drawPiece(left, view) };
  }, [plan, mend]);
  return (
    <svg className="mend-picture" viewBox="-50 -50 100 100" aria-hidden="true">
      <polygon className="mend-skin" points={pointsOf(mended.silhouette, SIZE, 1)} />
      {mended.facets.map(({ index, ring }) => (
        <polygon key={index} className="mend-facet" points={pointsOf(ring, SIZE, 1)} />
      ))}
      <polygon className="mend-now" points={pointsOf(now.silhouette, SIZE, 1)} />
    </svg>
  );
});
