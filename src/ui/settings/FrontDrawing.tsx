/** A small true drawing of a plan as one holds it: turned a little to the side, near faces only. */
import { useMemo } from "react";
import { dot, type Vec3 } from "../../core/geometry/vec.ts";
import type { Plan } from "../../core/plan/document.ts";
import { solid } from "../../state/derived.ts";
import { eyeFrame, HOME } from "../piece/camera.ts";
import { outlinePoints } from "../piece/outline-points.ts";

const RADIUS = 46;
const COARSE_RAD = 0.12;

export function FrontDrawing({ plan }: { plan: Plan }) {
  const rings = useMemo(() => {
    const { out, right, up } = eyeFrame(HOME);
    const place = (p: Vec3) => `${(dot(p, right) * RADIUS).toFixed(1)},${(-dot(p, up) * RADIUS).toFixed(1)}`;
    return solid(plan)
      .facets.filter((facet) => !facet.swallowed && dot(facet.plane.n, out) > 0)
      .map((facet) => outlinePoints(facet, COARSE_RAD).map(place).join(" "));
  }, [plan]);
  return (
    <svg className="front-drawing" viewBox="-50 -50 100 100" aria-hidden="true">
      <circle className="drawing-skin" r={RADIUS} />
      {rings.map((points) => (
        <polygon key={points} className="drawing-facet" points={points} />
      ))}
    </svg>
  );
}
