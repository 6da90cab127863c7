/** Points on the surface of the cut piece. Unit sphere. */
import type { Plane } from "../../core/geometry/plane.ts";
import { dot, scale, type Vec3 } from "../../core/geometry/vec.ts";

/** Where a ray from the centre leaves the piece; the centre is assumed inside. */
function onSurface(planes: readonly Plane[], toward: Vec3): Vec3 {
  let reach = 1;
  for (const { n, h } of planes) {
    const along = dot(n, toward);
    if (along > 0) reach = Math.min(reach, h / along);
  }
  return scale(toward, Math.max(0, reach));
}

const INK_HALF_DEG = 26;
const INK_STEPS = 26;

/** The ink line: a stroke along the meridian of the mark, across the waist, as it lies on what is left of the glass. */
export function inkLine(planes: readonly Plane[], inkMarkDeg: number): Vec3[] {
  const t = (inkMarkDeg * Math.PI) / 180;
  return Array.from({ length: INK_STEPS + 1 }, (_, i) => {
    const e = (((2 * i) / INK_STEPS - 1) * INK_HALF_DEG * Math.PI) / 180;
    return onSurface(planes, [Math.cos(e) * Math.cos(t), Math.cos(e) * Math.sin(t), Math.sin(e)]);
  });
}
