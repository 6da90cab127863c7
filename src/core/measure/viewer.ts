/** Who looks at a piece: far away, so that all rays come in parallel. */
import type { Vec3 } from "../geometry/vec.ts";

/** A viewer far away in direction `view`; `right` and `up` make a right-handed frame with it. All unit. */
export interface Viewer {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly view: Vec3;
}

/** The viewer at a lean of the piece's front about its x axis, degrees. */
export function leaningViewer(leanDeg: number): Viewer {
  const t = (leanDeg * Math.PI) / 180;
  const [s, c] = [Math.sin(t), Math.cos(t)];
  return { right: [1, 0, 0], up: [0, c, -s], view: [0, s, c] };
}
