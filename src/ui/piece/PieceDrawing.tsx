/** The piece in lines and flat tones: what stands before the glass is rendered, and in its place where the device can't. */
import { useMemo } from "react";
import { dot } from "../../core/geometry/vec.ts";
import { useShownSolid, useShownSolved } from "../plan/diary/use-shown.ts";
import { eyeFrame, pictureOf } from "./camera.ts";
import { drawPiece, pointsOf } from "./drawing.ts";
import { inkLine } from "./on-surface.ts";
import { useEye } from "./viewport.ts";

/** Units from the middle of the picture to the end of its shorter side. */
const SIZE = 500;
/** How much whiter the facet is that the light meets squarely, percent. */
const LIGHTEST = 70;

export function PieceDrawing() {
  const view = useEye((view) => view);
  const solid = useShownSolid();
  const { planes, plan } = useShownSolved();
  const { silhouette, facets } = useMemo(() => drawPiece(solid, view), [solid, view]);
  const ink = useMemo(() => {
    const { out } = eyeFrame(view);
    const seen = inkLine(planes, plan.piece.inkMarkDeg ?? 0).filter((p) => dot(p, out) * view.distance > 1);
    return seen.map(pictureOf(view));
  }, [planes, plan, view]);
  return (
    <svg className="piece-drawing" viewBox={`${-SIZE} ${-SIZE} ${2 * SIZE} ${2 * SIZE}`} aria-hidden="true">
      <polygon className="drawn-skin" points={pointsOf(silhouette, SIZE, 1)} />
      {facets.map(({ index, ring, light }) => (
        <polygon
          key={index}
          className="drawn-facet"
          points={pointsOf(ring, SIZE, 1)}
          style={{
            fill: `color-mix(in oklab, var(--ground-lit) ${(light * LIGHTEST).toFixed(0)}%, var(--facet))`,
          }}
        />
      ))}
      <polyline className="drawn-ink" points={pointsOf(ink, SIZE, 1)} />
    </svg>
  );
}
